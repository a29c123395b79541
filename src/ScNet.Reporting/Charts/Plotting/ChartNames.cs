using ScNet.Design.Regulation;

namespace ScNet.Reporting.Charts.Plotting;

/// <summary>Names as charts show them.</summary>
internal static class ChartNames
{
    /// <summary>A converter, and its mode where it has several.</summary>
    public static string Of(Converter converter, Mode mode) => converter.Modes.Count > 1 ? $"{converter.Name}, mode {mode}" : converter.Name;

    /// <summary>Regulated modes; those of one converter without its name.</summary>
    public static IReadOnlyList<string> Of(IReadOnlyList<RegulatedMode> modes)
    {
        string[] converters = [.. modes.Select(m => m.Model?.Analysis.Converter.Name).OfType<string>().Distinct()];
        string common = converters.Length == 1 ? converters[0] + ", " : string.Empty;
        return [.. modes.Select(m => m.Model is not null && m.Name.StartsWith(common, StringComparison.Ordinal) ? m.Name[common.Length..] : m.Name)];
    }
}
