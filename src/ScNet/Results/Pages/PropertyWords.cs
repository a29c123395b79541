namespace ScNet.Results.Pages;

/// <summary>What the name of a property says: the words of a heading, and the unit of its number.</summary>
internal static class PropertyWords
{
    // an area has no prefixes: the square of a prefix would be read as the prefix of a square
    private static readonly (string Word, string Unit)[] s_units =
    [
        ("SquareMetres", SquareMetre), ("Micrometres", Micrometre), ("Volts", "V"), ("Amperes", "A"), ("Ohms", "Ω"), ("Farads", "F"), ("Henries", "H"), ("Watts", "W"),
        ("Hz", "Hz"), ("Hertz", "Hz"), ("Seconds", "s"), ("Hours", "h"), ("Coulombs", "C"), ("Metres", "m"), ("Joules", "J"), ("Siemens", "S"),
    ];

    private const string SquareMetre = "m²", Micrometre = "µm", AtOneHertz = "OhmsAtOneHertz";

    /// <summary>"OutputVolts" is "Output" in "V"; a name that is a unit keeps it as its words.</summary>
    public static (string Words, string? Unit) Split(string name)
    {
        if (name.EndsWith(AtOneHertz, StringComparison.Ordinal))
        {
            return (name.Length > AtOneHertz.Length ? $"{Of(name[..^AtOneHertz.Length])} at 1 Hz" : "At 1 Hz", "Ω");
        }

        (string word, string? unit) = name.Contains("Per", StringComparison.Ordinal) ? default : s_units.FirstOrDefault(u => name.EndsWith(u.Word, StringComparison.Ordinal));
        return unit is not null && name.Length > word.Length ? (Of(name[..^word.Length]), unit) : (Of(name), unit);
    }

    /// <summary>A number with the unit that the name of its property gives it.</summary>
    public static PageCell Number(double number, string? unit) => unit switch
    {
        null => Cells.Plain(number),
        SquareMetre => AreaText.Of(number),
        Micrometre => Cells.Of(number * 1e-6, "m"),
        _ => Cells.Of(number, unit),
    };

    /// <summary>"OutputNode" is "Output node".</summary>
    public static string Of(string name) =>
        string.Concat(name.Select((c, i) => i > 0 && char.IsUpper(c) ? " " + char.ToLowerInvariant(c) : c.ToString()));
}
