namespace ScNet.Devices;

/// <summary>An inductor that can be had: a part beside the chip or a winding on it.</summary>
public sealed record InductorDevice
{
    /// <summary>The exponents of a ferrite of which nothing else is told; common practice, no source.</summary>
    internal const double DefaultCoreFrequencyExponent = 1.5, DefaultCoreRippleExponent = 2.5;

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

    /// <summary>
    /// Loss of the core in watts (W) at a frequency of 1 MHz and a ripple of 1 A peak to peak; zero for a part without a core, or of which none is told.
    /// </summary>
    /// <remarks>At f and Δi it is this times (f/1 MHz)^a (Δi/1 A)^b: C. P. Steinmetz's law, with current for the field that it drives (from memory).</remarks>
    public double CoreWatts { get; init => field = Guard.InRange(value, allowZero: true, nameof(CoreWatts)); }

    /// <summary>The exponent of the frequency in the loss of the core, without a unit.</summary>
    public double CoreFrequencyExponent { get; init => field = Guard.InRange(value, allowZero: false, nameof(CoreFrequencyExponent)); } = DefaultCoreFrequencyExponent;

    /// <summary>The exponent of the ripple in the loss of the core, without a unit.</summary>
    public double CoreRippleExponent { get; init => field = Guard.InRange(value, allowZero: false, nameof(CoreRippleExponent)); } = DefaultCoreRippleExponent;

    /// <summary>Whether it is a part beside the chip.</summary>
    public bool IsOffChip => AreaSquareMetres == 0;

    /// <summary>The name and the inductance.</summary>
    public override string ToString() => $"{Name} ({UnitText.Of(Henries, "H")})";
}
