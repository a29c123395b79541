namespace ScNet.Devices;

/// <summary>A capacitor made of equal ones of one sort in series that together have its capacitance.</summary>
/// <remarks>
/// Each of n capacitors has n times the capacitance, hence n² times the area in all: four times the area
/// for twice the voltage (common practice, no source; derived in docs/theory/stress.md).
/// </remarks>
public sealed class StackedCapacitor
{
    /// <summary>Sizes a stack.</summary>
    /// <param name="device">What each of the capacitors is.</param>
    /// <param name="count">The capacitors in series, at least 1.</param>
    /// <param name="farads">The capacitance of the whole in farads (F).</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public StackedCapacitor(CapacitorDevice device, int count, double farads)
    {
        ArgumentNullException.ThrowIfNull(device);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        Device = device;
        Count = count;
        Farads = Guard.InRange(farads, allowZero: false, nameof(farads));
    }

    /// <summary>What each of the capacitors is.</summary>
    public CapacitorDevice Device { get; }

    /// <summary>The capacitors in series.</summary>
    public int Count { get; }

    /// <summary>The capacitance of the whole in farads (F).</summary>
    public double Farads { get; }

    /// <summary>The capacitance of each in farads (F).</summary>
    public double CapacitanceOfEachFarads => Count * Farads;

    /// <summary>The voltage in volts (V) that the stack withstands, shared equally.</summary>
    public double RatedVolts => Count * Device.RatedVolts;

    /// <summary>The area of each in square metres (m²).</summary>
    public double AreaOfEachSquareMetres => CapacitanceOfEachFarads / Device.FaradsPerSquareMetre;

    /// <summary>The area of all in square metres (m²).</summary>
    public double AreaSquareMetres => Count * AreaOfEachSquareMetres;

    /// <summary>The series resistance of the whole in ohms (Ω); it does not depend on the count, as each is n times as large.</summary>
    public double EsrOhms => Count * Device.EsrOhmSquareMetres / AreaOfEachSquareMetres;

    /// <summary>
    /// The capacitance in farads (F) from the bottom plates to the substrate, of all of them together: n²
    /// times that of a single one. Inner plates swing less than the outer one, so it is an upper bound of
    /// what the bottom plate carries.
    /// </summary>
    public double BottomPlateFarads => Count * CapacitanceOfEachFarads * Device.BottomPlateFraction;

    /// <summary>The leakage current in amperes (A) through the stack with each at its rated voltage.</summary>
    public double LeakageAmperes => AreaOfEachSquareMetres * Device.LeakageAmperesPerSquareMetre;

    /// <summary>Count, device and capacitance.</summary>
    public override string ToString() => FormattableString.Invariant($"{Count} × {Device}, {Farads:G6} F");
}
