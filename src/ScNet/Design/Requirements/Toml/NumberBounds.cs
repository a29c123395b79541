namespace ScNet.Design.Requirements.Toml;

/// <summary>What a number of a requirement may be.</summary>
internal sealed record NumberBounds(string Expected, bool AllowsZero = false, double Maximum = Guard.MaximumValue)
{
    public static NumberBounds Positive => new("a positive number from 1e-60 to 1e60");

    public static NumberBounds ZeroOrMore => new("zero, or a positive number from 1e-60 to 1e60,", AllowsZero: true);

    public static NumberBounds Share => new("a number above 0 and at most 1", Maximum: 1);

    public bool Contains(double value) => Guard.IsInRange(value, AllowsZero) && value <= Maximum;
}
