using ScNet.Design.Regulation;
using ScNet.SteadyState;

namespace ScNet.Reporting.Charts.Plotting;

/// <summary>Names as charts show them.</summary>
internal static class ChartNames
{
    /// <summary>A converter, and its mode where it has several.</summary>
    public static string Of(Converter converter, Mode mode) => converter.Modes.Count > 1 ? $"{converter.Name}, mode {mode}" : converter.Name;

    /// <summary>An operating point: "3.6 V input, 10 mA load, 2 MHz".</summary>
    public static string Of(OperatingPoint point) =>
        $"{EngineeringNumber.Of(point.InputVoltageVolts, "V")} input, {EngineeringNumber.Of(point.LoadCurrentAmperes, "A")} load, {EngineeringNumber.Of(point.FrequencyHz, "Hz")}";

    /// <summary>Regulated modes; those of one converter without its name.</summary>
    public static IReadOnlyList<string> Of(IReadOnlyList<RegulatedMode> modes)
    {
        string[] converters = [.. modes.Select(m => m.Model?.Analysis.Converter.Name).OfType<string>().Distinct()];
        string common = converters.Length == 1 ? converters[0] + ", " : string.Empty;
        return [.. modes.Select(m => m.Model is not null && m.Name.StartsWith(common, StringComparison.Ordinal) ? m.Name[common.Length..] : m.Name)];
    }
}
