using ScNet.Netlists.Toml;

namespace ScNet.Design.Requirements.Toml;

/// <summary>The keys of the requirement document, and the one that an unknown key most likely stands for.</summary>
internal static class RequirementKeys
{
    public const string Name = "name";
    public const string Input = "input_volts";
    public const string Discharge = "discharge_volts";
    public const string Output = "output_volts";
    public const string OutputRange = "output_range_volts";
    public const string Frequency = "frequency_hertz";
    public const string LoadRange = "load_range_amperes";
    public const string Loads = "loads";
    public const string Process = "process";
    public const string Candidates = "candidates";
    public const string File = "file";
    public const string Family = "family";
    public const string Families = "families";
    public const string Sizes = "sizes";
    public const string Ratios = "ratios";
    public const string Gears = "gears";
    public const string Source = "source";
    public const string SwitchesInSeries = "maximum_switches_in_series";
    public const string CapacitorsInSeries = "maximum_capacitors_in_series";
    public const string Switches = "switches";
    public const string Capacitors = "capacitors";
    public const string Inductors = "inductors";
    public const string Control = "control";
    public const string Corners = "corners";
    public const string Polarity = "polarity";
    public const string DensityAtVolts = "farads_per_square_metre_at_volts";

    /// <summary>The value of <see cref="Candidates"/> that asks for all.</summary>
    public const string All = "all";

    // what else people call the same, without signs and in lower case
    private static readonly (string Key, string[] Others)[] s_meanings =
    [
        (Input, ["vin", "input", "inputvoltage", "cellvolts", "batteryvolts"]),
        (Output, ["vout", "output", "outputvoltage", "outputs"]),
        (Frequency, ["f", "fsw", "frequency", "frequencies", "hertz", "hz"]),
        (Discharge, ["discharge", "dischargecurve", "dischargeprofile", "soc", "curve"]),
        (RootNumbers.Ripple.Key, ["ripple", "vripple", "outputripplevolts"]),
        (RootNumbers.OutputFarads.Key, ["cout", "outputcapacitance", "loadfarads"]),
        (RootNumbers.Cell.Key, ["cell", "capacity", "cellcapacity", "battery", "batterycoulombs"]),
        (RootNumbers.SourceOhms.Key, ["rsource", "sourceresistance", "esr"]),
        (RootNumbers.Area.Key, ["area", "totalarea", "chiparea"]),
        (LoadNumbers.Amperes.Key, ["i", "current", "load", "amps", "a", "ma", "ua", "amp", "milliamps", "microamps", "milliamperes", "microamperes"]),
        (LoadNumbers.Share.Key, ["duty", "time", "fraction", "weight", "shareoftime"]),
        (Loads, ["load", "profile", "loadprofile"]),
        (Candidates, ["candidate", "topologies", "netlists"]),
        (SwitchNumbers.Resistance.Key, ["ron", "onresistance", "ohms", "onohmmicrometres", "onresistanceohmmicrometres"]),
        (SwitchNumbers.GateCharge.Key, ["qg", "gatecharge"]),
        (SwitchNumbers.JunctionCharge.Key, ["qj", "junctioncharge"]),
        (SwitchNumbers.Threshold.Key, ["vth", "vt", "threshold"]),
        (SwitchNumbers.Rated.Key, ["rating", "vmax", "maximumvolts"]),
        (SwitchNumbers.Area.Key, ["area", "areapermicrometre"]),
        (CapacitorNumbers.Density.Key, ["density", "c", "capacitance", "farads"]),
        (CapacitorNumbers.BottomPlate.Key, ["bottomplate", "alpha", "plate", "platefraction"]),
        (CapacitorNumbers.TopPlate.Key, ["topplate"]),
        (Polarity, ["type", "channel"]),
    ];

    private static readonly HashSet<string> s_units =
    [
        "square", "metre", "metres", "m2", "mm2", "um2", "m", "mm", "um", "nm", "micrometre", "micrometres", "per",
        "volt", "volts", "v", "mv", "uv", "kv", "ampere", "amperes", "amp", "amps", "a", "ma", "ua", "na",
        "farad", "farads", "f", "pf", "nf", "uf", "ff", "ohm", "ohms", "mohm", "mohms", "kohm", "kohms", "henry", "henries", "h", "nh", "uh",
        "coulomb", "coulombs", "c", "fc", "pc", "ah", "mah", "uah", "watt", "watts", "w", "mw", "uw", "nw",
        "second", "seconds", "s", "ms", "us", "ns", "ps", "hertz", "hz", "khz", "mhz", "ghz",
    ];

    private static readonly string[] s_prefixes = ["milli", "micro", "nano", "pico", "femto", "kilo", "mega", "giga"];

    /// <summary>What requirement documents have of their own.</summary>
    public static readonly TomlFormat Format = new()
    {
        Kind = "requirement",
        Version = RequirementReader.FormatVersion,
        Levels = "four",
        IfTooLarge = "Leave out what is not needed.",
        HeaderExample = "[process.switches.thin]",
        Least = "name, input_volts, output_volts, frequency_hertz, an area, [[loads]] and [process]",
        Nearest = Nearest,
        NamingOf = table => table is { Parent: { Key: Process, Parent.Parent: null }, Key: Switches or Capacitors or Inductors or Corners } ? TomlNaming.Elements : TomlNaming.Keys,
    };

    // by meaning, then the same quantity in another unit, then by spelling
    private static string? Nearest(string key, string[] known)
    {
        string plain = NearestKey.Plain(key), stem = Stem(key);
        return s_meanings.Any(m => Array.IndexOf(known, m.Key) >= 0 && Array.IndexOf(m.Others, plain) >= 0) || stem.Length == 0
            ? NearestKey.Of(key, known, s_meanings)
            : known.Where(k => Stem(k) == stem).OrderByDescending(k => SharesUnit(key, k)).FirstOrDefault() ?? NearestKey.Of(key, known, s_meanings);
    }

    // "area" of "area_mm2" and of "area_square_metres"
    private static string Stem(string key)
    {
        string[] words = key.ToLowerInvariant().Split('_');
        int count = words.Length;
        while (count > 0 && IsUnit(words[count - 1]))
        {
            count--;
        }

        return string.Join('_', words[..count]);
    }

    // "output_uF" and "output_millifarad" are meant to be "output_farads", not "output_volts"
    private static bool SharesUnit(string key, string known)
    {
        string unit = key.ToLowerInvariant().Split('_')[^1], own = known.Split('_')[^1];
        return unit.Length <= 2 ? unit[^1] == own[0] : unit.TrimEnd('s').EndsWith(own.TrimEnd('s'), StringComparison.Ordinal);
    }

    private static bool IsUnit(string word) => s_units.Contains(word)
        || s_prefixes.Any(p => word.StartsWith(p, StringComparison.Ordinal) && s_units.Contains(word[p.Length..]));
}
