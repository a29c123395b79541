using Fractions;

namespace ScNet.Devices;

/// <summary>A capacitor of a process: what it withstands, and what an area of it gives.</summary>
public sealed class CapacitorDevice
{
    /// <summary>The name, for people.</summary>
    public required string Name { get; init; }

    /// <summary>Where the values come from; "invented" for a demonstration.</summary>
    public required string Source { get; init; }

    /// <summary>The voltage in volts (V) that it withstands, either way round.</summary>
    public required double RatedVolts { get; init => field = SwitchDevice.Positive(value, nameof(RatedVolts)); }

    /// <summary>Capacitance per area in farads per square metre (F/m²); 1 fF/µm² is 1e-3 F/m².</summary>
    public required double FaradsPerSquareMetre { get; init => field = SwitchDevice.Positive(value, nameof(FaradsPerSquareMetre)); }

    /// <summary>The capacitance from the bottom plate to the substrate as a fraction of the capacitance, without a unit.</summary>
    public double BottomPlateFraction { get; init => field = Guard.InRange(value, allowZero: true, nameof(BottomPlateFraction)); }

    /// <summary>The capacitance from the top plate to the substrate as a fraction of the capacitance, without a unit.</summary>
    public double TopPlateFraction { get; init => field = Guard.InRange(value, allowZero: true, nameof(TopPlateFraction)); }

    /// <summary>Series resistance times area in ohm square metres (Ω·m²).</summary>
    public double EsrOhmSquareMetres { get; init => field = Guard.InRange(value, allowZero: true, nameof(EsrOhmSquareMetres)); }

    /// <summary>Leakage at the rated voltage per area in amperes per square metre (A/m²).</summary>
    public double LeakageAmperesPerSquareMetre { get; init => field = Guard.InRange(value, allowZero: true, nameof(LeakageAmperesPerSquareMetre)); }

    internal Fraction ExactRating => ExactDecimal.Of(RatedVolts);

    /// <summary>The name and the rating.</summary>
    public override string ToString() => FormattableString.Invariant($"{Name} ({RatedVolts:G6} V)");
}
