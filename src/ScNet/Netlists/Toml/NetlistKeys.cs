namespace ScNet.Netlists.Toml;

/// <summary>The keys of the document, and the one that an unknown key most likely stands for.</summary>
internal static class NetlistKeys
{
    public const string Name = "name";
    public const string Input = "input";
    public const string Output = "output";
    public const string Load = "load";
    public const string Phases = "phases";
    public const string Count = "count";
    public const string Duty = "duty";
    public const string Names = "names";
    public const string Modes = "modes";
    public const string Between = "between";
    public const string On = "on";
    public const string Body = "body";
    public const string Controlled = "controlled";
    public const string UntilZero = "until_zero";

    public static readonly string[] Root = [TomlDocument.VersionKey, Name, Input, Output, Load, Phases, .. ElementShape.All.Select(s => s.Table), Modes];
    public static readonly string[] Phase = [Count, Duty, Names];

    // what else people call the same, without signs and in lower case; the first key that the table has is meant
    private static readonly (string Key, string[] Others)[] s_meanings =
    [
        (QuantityKey.Farads.Key, ["c", "f", "cap", "capacity", "capacitance", "value", "nf", "uf", "pf"]),
        (QuantityKey.Ohms.Key, ["r", "ron", "rdson", "rdon", "resistance", "onresistance", "ohm", "value", "mohm", "mohms", "kohm", "kohms"]),
        (QuantityKey.EsrOhms.Key, ["r", "rs", "rc", "ohms", "ohm", "resistance", "seriesresistance", "esr"]),
        (QuantityKey.Henries.Key, ["l", "h", "ind", "inductance", "value", "nh", "uh", "mh"]),
        (QuantityKey.BottomFarads.Key, ["cbp", "cb", "bottom", "bottomplate", "bottomplatefarads", "plate"]),
        (QuantityKey.TopFarads.Key, ["ctp", "top", "topplate", "topplatefarads"]),
        (QuantityKey.DiodeVolts.Key, ["vf", "diode", "forwardvolts", "bodydiode"]),
        (Body, ["bulk", "substrate", "well"]),
        (On, ["closed", "closedin", "phase", "phases", "when", "active"]),
        (Between, ["node", "nodes", "terminals", "pins", "plates", "ends", "connects"]),
        (Input, ["vin", "in", "source", "supply"]),
        (Output, ["vout", "out"]),
        (ElementShape.Capacitor.Table, ["c", "cap", "caps"]),
        (ElementShape.Switch.Table, ["s", "sw", "transistors", "fets", "mosfets"]),
        (ElementShape.Inductor.Table, ["l", "ind", "coils"]),
        (ElementShape.Parasitic.Table, ["parasitic", "junctions", "strays"]),
        (ElementShape.FurtherOutput.Table, ["loads", "rails", "furtheroutputs", "extraoutputs"]),
        (Modes, ["configurations", "ratios"]),
        (Duty, ["d", "duties", "dutycycle", "dutycycles", "fractions"]),
        (Count, ["n", "number"]),
        (Name, ["title", "id"]),
    ];

    /// <summary>What netlist documents have of their own.</summary>
    public static readonly TomlFormat Format = new()
    {
        Kind = "netlist",
        Version = NetlistReader.FormatVersion,
        Levels = "three",
        IfTooLarge = "Split the converter.",
        HeaderExample = "[switches.s1]",
        Least = "name, input, output and [switches]",
        Nearest = Nearest,
        NamingOf = NamingOf,
    };

    /// <summary>The known key that an unknown one most likely stands for, or null: by meaning first, then by spelling.</summary>
    public static string? Nearest(string key, string[] known) => NearestKey.Of(key, known, s_meanings);

    private static TomlNaming NamingOf(TomlEntry table)
    {
        TomlEntry section = table.Parent is { Parent: not null } above ? above : table;
        return section == table && table.Parent is not null && ElementShape.All.Any(s => s.Table == table.Key) ? TomlNaming.Elements
            : section is { Key: Modes, Parent.Parent: null } ? TomlNaming.Names
            : TomlNaming.Keys;
    }
}
