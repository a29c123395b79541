namespace ScNet.Design.Requirements.Toml;

/// <summary>A key whose value is one number.</summary>
/// <param name="Key">The key; its last words are the unit, where it has one.</param>
/// <param name="Unit">The unit in the plural; "without a unit" is empty.</param>
/// <param name="Bounds">What it may be.</param>
/// <param name="Default">Its value where it is not there; null for none.</param>
/// <param name="IsRequired">Whether it must be there.</param>
internal sealed record NumberKey(string Key, string Unit, NumberBounds Bounds, double? Default = null, bool IsRequired = false)
{
    /// <summary>A positive number that must be there.</summary>
    public static NumberKey Required(string key, string unit, NumberBounds? bounds = null) => new(key, unit, bounds ?? NumberBounds.Positive, IsRequired: true);

    /// <summary>A number that is zero where it is not there.</summary>
    public static NumberKey OrZero(string key, string unit) => new(key, unit, NumberBounds.ZeroOrMore, 0);

    /// <summary>A positive number that has a value where it is not there.</summary>
    public static NumberKey Or(double value, string key, string unit, NumberBounds? bounds = null) => new(key, unit, bounds ?? NumberBounds.Positive, value);

    /// <summary>A positive number that may be left out.</summary>
    public static NumberKey Optional(string key, string unit) => new(key, unit, NumberBounds.Positive);
}
