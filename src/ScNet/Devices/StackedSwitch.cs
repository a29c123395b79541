namespace ScNet.Devices;

/// <summary>A switch made of equal devices of one sort in series that together have its on-resistance.</summary>
/// <remarks>
/// Each of n devices has 1/n of the on-resistance, hence n times the width of a single one: n² times the
/// width, charge and active area in all. Twice the voltage costs four times the area (common practice, no
/// source; derived in docs/theory/devices.md).
/// </remarks>
public sealed class StackedSwitch
{
    /// <summary>Sizes a stack.</summary>
    /// <param name="device">What each of the devices is.</param>
    /// <param name="count">The devices in series, at least 1.</param>
    /// <param name="ohms">The on-resistance of the whole in ohms (Ω).</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public StackedSwitch(SwitchDevice device, int count, double ohms)
    {
        ArgumentNullException.ThrowIfNull(device);
        Device = device;
        Count = Guard.AtLeastOne(count, nameof(count));
        Ohms = Guard.InRange(ohms, allowZero: false, nameof(ohms));
        WidthOfEachMicrometres = count * device.OnResistanceOhmMicrometres / ohms;
    }

    /// <summary>What each of the devices is.</summary>
    public SwitchDevice Device { get; }

    /// <summary>The devices in series.</summary>
    public int Count { get; }

    /// <summary>The on-resistance of the whole in ohms (Ω).</summary>
    public double Ohms { get; }

    /// <summary>The width of each device in micrometres (µm).</summary>
    public double WidthOfEachMicrometres { get; }

    /// <summary>The width of all devices in micrometres (µm).</summary>
    public double TotalWidthMicrometres => Count * WidthOfEachMicrometres;

    /// <summary>The voltage in volts (V) that the stack withstands, shared equally.</summary>
    public double RatedVolts => Count * Device.RatedVolts;

    /// <summary>The area that all devices take in square metres (m²): with spacing s and factor k of a stack, n (√(k A) + s)², A the active area of each.</summary>
    public double AreaSquareMetres => OccupiedArea.Of(
        WidthOfEachMicrometres * Device.AreaSquareMetresPerMicrometre, Count, Device.StackAreaFactor, Device.GuardMetres);

    /// <summary>The gate charge of all devices in coulombs (C), for one swing of the gate-drive voltage each.</summary>
    public double GateChargeCoulombs => TotalWidthMicrometres * Device.GateChargeCoulombsPerMicrometre;

    /// <summary>The junction charge of all devices in coulombs (C), for one swing of the rated voltage each.</summary>
    public double JunctionChargeCoulombs => TotalWidthMicrometres * Device.JunctionChargeCoulombsPerMicrometre;

    /// <summary>The leakage current in amperes (A) through the open stack with each device at its rated voltage.</summary>
    public double LeakageAmperes => WidthOfEachMicrometres * Device.LeakageAmperesPerMicrometre;

    /// <summary>Count, device and on-resistance.</summary>
    public override string ToString() => FormattableString.Invariant($"{Count} × {Device}, {Ohms:G6} Ω");
}
