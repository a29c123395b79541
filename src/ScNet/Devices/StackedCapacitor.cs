namespace ScNet.Devices;

/// <summary>A capacitor made of equal ones of one sort in series that together have its capacitance.</summary>
/// <remarks>
/// Each of n capacitors has n times the capacitance, hence n² times the area in all: four times the area
/// for twice the voltage (common practice, no source; derived in docs/theory/devices.md). Where the density depends on
/// the voltage, each has the one at its share of the voltage at which the stack is held.
/// </remarks>
public sealed class StackedCapacitor
{
    /// <summary>Sizes a stack.</summary>
    /// <param name="device">What each of the capacitors is.</param>
    /// <param name="count">The capacitors in series, at least 1.</param>
    /// <param name="farads">The capacitance of the whole in farads (F), at the held voltage.</param>
    /// <param name="heldVolts">The voltage of the whole in volts (V), positive minus bottom plate; null for the nominal density.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public StackedCapacitor(CapacitorDevice device, int count, double farads, double? heldVolts = null)
    {
        ArgumentNullException.ThrowIfNull(device);
        Device = device;
        Count = Guard.AtLeastOne(count, nameof(count));
        Farads = Guard.InRange(farads, allowZero: false, nameof(farads));
        HeldVolts = heldVolts;
        AreaOfEachSquareMetres = CapacitanceOfEachFarads / DensityAt(heldVolts);
    }

    /// <summary>What each of the capacitors is.</summary>
    public CapacitorDevice Device { get; }

    /// <summary>The capacitors in series.</summary>
    public int Count { get; }

    /// <summary>The capacitance of the whole in farads (F), at <see cref="HeldVolts"/>.</summary>
    public double Farads { get; }

    /// <summary>The voltage of the whole in volts (V) at which it has its capacitance; null where the nominal density counts.</summary>
    public double? HeldVolts { get; }

    /// <summary>The capacitance of each in farads (F).</summary>
    public double CapacitanceOfEachFarads => Count * Farads;

    /// <summary>The voltage in volts (V) that the stack withstands, shared equally.</summary>
    public double RatedVolts => Count * Device.RatedVolts;

    /// <summary>The active area of each in square metres (m²).</summary>
    public double AreaOfEachSquareMetres { get; }

    /// <summary>The area that all take in square metres (m²): with spacing s and factor k of a stack, n (√(k A) + s)², A the active area of each.</summary>
    public double AreaSquareMetres => OccupiedArea.Of(AreaOfEachSquareMetres, Count, Device.StackAreaFactor, Device.GuardMetres);

    /// <summary>The series resistance of the whole in ohms (Ω); at one density it does not depend on the count, as each is n times as large.</summary>
    public double EsrOhms => Count * Device.EsrOhmSquareMetres / AreaOfEachSquareMetres;

    /// <summary>
    /// The capacitance in farads (F) from the bottom plates to the substrate, of all of them together: n²
    /// times that of a single one. Inner plates swing less than the outer one, so it is an upper bound of
    /// what the bottom plate carries. It goes with the area, not with the voltage.
    /// </summary>
    public double BottomPlateFarads => Count * NominalOfEachFarads * Device.BottomPlateFraction;

    /// <summary>The same from the top plates.</summary>
    public double TopPlateFarads => Count * NominalOfEachFarads * Device.TopPlateFraction;

    /// <summary>The leakage current in amperes (A) through the stack with each at its rated voltage.</summary>
    public double LeakageAmperes => AreaOfEachSquareMetres * Device.LeakageAmperesPerSquareMetre;

    /// <summary>The capacitance in farads (F) that the same stack has when it is held at another voltage.</summary>
    /// <param name="heldVolts">The voltage of the whole in volts (V), positive minus bottom plate.</param>
    /// <exception cref="ArgumentOutOfRangeException">The voltage is not finite.</exception>
    public double FaradsAt(double heldVolts) => Farads * (DensityAt(heldVolts) / DensityAt(HeldVolts));

    /// <summary>Count, device and capacitance.</summary>
    public override string ToString() => FormattableString.Invariant($"{Count} × {Device}, {Farads:G6} F");

    // what plates are a fraction of: without a table this is the capacitance itself, to the last digit
    private double NominalOfEachFarads => HeldVolts is null || Device.DensityAgainstBias.Count == 0
        ? CapacitanceOfEachFarads
        : AreaOfEachSquareMetres * Device.FaradsPerSquareMetre;

    private double DensityAt(double? heldVolts) => heldVolts is { } volts ? Device.FaradsPerSquareMetreAt(volts / Count) : Device.FaradsPerSquareMetre;
}
