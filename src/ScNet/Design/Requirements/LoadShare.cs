namespace ScNet.Design.Requirements;

/// <summary>What the load draws for a share of the time.</summary>
/// <param name="Name">The name of this state of the load, such as "sleep".</param>
/// <param name="Amperes">The current in amperes (A), above 0.</param>
/// <param name="Share">The share of the time, above 0; all shares add up to 1.</param>
/// <param name="OutputVolts">The output voltage in volts (V) then; null for every voltage that is asked for.</param>
/// <exception cref="ArgumentException">The name is empty, or a value is out of its range.</exception>
public sealed record LoadShare(string Name, double Amperes, double Share, double? OutputVolts = null)
{
    /// <summary>The name of this state of the load, such as "sleep".</summary>
    public string Name { get; init => field = Guard.Named(value, nameof(Name)); } = Guard.Named(Name, nameof(Name));

    /// <summary>The current in amperes (A), above 0.</summary>
    public double Amperes { get; init => field = Positive(value, nameof(Amperes)); } = Positive(Amperes, nameof(Amperes));

    /// <summary>The share of the time, above 0; all shares add up to 1.</summary>
    public double Share { get; init => field = Fraction(value); } = Fraction(Share);

    /// <summary>The output voltage in volts (V) then; null for every voltage that is asked for.</summary>
    public double? OutputVolts { get; init => field = value is { } volts ? Positive(volts, nameof(OutputVolts)) : null; }
        = OutputVolts is { } volts ? Positive(volts, nameof(OutputVolts)) : null;

    private static double Positive(double value, string name) => Guard.InRange(value, allowZero: false, name);

    private static double Fraction(double share) => share <= 1
        ? Positive(share, nameof(share))
        : throw new ArgumentOutOfRangeException(nameof(share), share, "Expected a share of the time of at most 1.");
}
