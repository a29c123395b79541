namespace ScNet.Devices;

/// <summary>An inductor that can be had: a part beside the chip or a winding on it.</summary>
public sealed record InductorDevice
{
    /// <summary>The name, for people.</summary>
    public required string Name { get; init => field = Guard.Named(value, nameof(Name)); }

    /// <summary>Where the values come from; "invented" for a demonstration.</summary>
    public required string Source { get; init => field = Guard.Named(value, nameof(Source)); }

    /// <summary>Inductance in henries (H).</summary>
    public required double Henries { get; init => field = Guard.InRange(value, allowZero: false, nameof(Henries)); }

    /// <summary>Resistance of the winding in ohms (Ω).</summary>
    public required double Ohms { get; init => field = Guard.InRange(value, allowZero: true, nameof(Ohms)); }

    /// <summary>Area that it takes on the chip in square metres (m²); zero for a part beside the chip.</summary>
    public double AreaSquareMetres { get; init => field = Guard.InRange(value, allowZero: true, nameof(AreaSquareMetres)); }

    /// <summary>The largest current in amperes (A) that it carries; null where none is told.</summary>
    public double? MaximumAmperes { get; init => field = value is { } amperes ? Guard.InRange(amperes, allowZero: false, nameof(MaximumAmperes)) : null; }

    /// <summary>Whether it is a part beside the chip.</summary>
    public bool IsOffChip => AreaSquareMetres == 0;

    /// <summary>The name and the inductance.</summary>
    public override string ToString() => $"{Name} ({UnitText.Of(Henries, "H")})";
}
