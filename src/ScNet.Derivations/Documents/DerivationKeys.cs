using ScNet.Netlists.Toml;

namespace ScNet.Derivations.Documents;

/// <summary>The keys of the derivation document, and the one that an unknown key most likely stands for.</summary>
internal static class DerivationKeys
{
    public const string Netlist = "netlist";
    public const string Family = "family";
    public const string Mode = "mode";
    public const string Tolerance = "tolerance";
    public const string Ratio = "ratio";
    public const string InputCharge = "input_charge";
    public const string OutputCharge = "output_charge";
    public const string Charges = "charges";
    public const string Voltages = "voltages";
    public const string Blocking = "blocking";
    public const string PeakBlocking = "peak_blocking";
    public const string SlowCoefficients = "slow_coefficients";
    public const string FastCoefficients = "fast_coefficients";
    public const string Formulas = "formulas";
    public const string OutputVoltage = "output_voltage";
    public const string SlowLimit = "slow_switching_limit";
    public const string FastLimit = "fast_switching_limit";
    public const string SlowLoss = "slow_switching_loss";
    public const string FastLoss = "fast_switching_loss";

    /// <summary>The tables whose keys are names of elements.</summary>
    public static readonly string[] Tables = [Charges, Voltages, Blocking, PeakBlocking, SlowCoefficients, FastCoefficients];

    public static readonly string[] Root = [TomlDocument.VersionKey, Netlist, Family, Mode, Tolerance, Ratio, InputCharge, OutputCharge, .. Tables, Formulas];

    public static readonly string[] FormulaKeys = [OutputVoltage, SlowLimit, FastLimit, SlowLoss, FastLoss];

    // what else people call the same, without signs and in lower case
    private static readonly (string Key, string[] Others)[] s_meanings =
    [
        (Netlist, ["file", "converter", "circuit"]),
        (Ratio, ["m", "conversionratio", "idealratio"]),
        (InputCharge, ["input", "qin", "ain", "charge_in"]),
        (OutputCharge, ["output", "qout", "aout"]),
        (Charges, ["charge", "multipliers", "chargemultipliers", "vectors", "a", "ac", "ar", "capacitors", "switches"]),
        (Voltages, ["voltage", "capacitorvoltages", "vc"]),
        (Blocking, ["stress", "blockingvoltages", "vr", "switchvoltages"]),
        (PeakBlocking, ["peak", "peaks", "peakstress", "rating"]),
        (SlowCoefficients, ["ssl", "slow", "slowcoefficient", "sslcoefficients"]),
        (FastCoefficients, ["fsl", "fast", "fastcoefficient", "fslcoefficients"]),
        (Formulas, ["formula", "forms", "closedforms", "expressions"]),
        (OutputVoltage, ["vout", "output"]),
        (SlowLimit, ["ssl", "rssl", "slow"]),
        (FastLimit, ["fsl", "rfsl", "fast"]),
        (SlowLoss, ["pssl"]),
        (FastLoss, ["pfsl"]),
    ];

    /// <summary>What derivation documents have of their own.</summary>
    public static readonly TomlFormat Format = new()
    {
        Kind = "derivation",
        Version = DerivationReader.FormatVersion,
        Levels = "three",
        IfTooLarge = "Split the derivation.",
        HeaderExample = "[charges]",
        Least = "netlist or family and one value, such as ratio",
        Nearest = (key, known) => NearestKey.Of(key, known, s_meanings),
        NamingOf = NamingOf,
    };

    // the elements of a table, and the phases of an element whose values stand in braces
    private static TomlNaming NamingOf(TomlEntry table) => table switch
    {
        { Parent.Parent: null } when Array.IndexOf(Tables, table.Key) >= 0 => TomlNaming.Elements,
        { Parent: { Parent.Parent: null } above } when Array.IndexOf(Tables, above.Key) >= 0 => TomlNaming.Names,
        { Parent.Parent: null, Key: InputCharge or OutputCharge } => TomlNaming.Names,
        _ => TomlNaming.Keys,
    };
}
