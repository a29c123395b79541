using System.Globalization;
using ScNet.Reconfiguration;

namespace ScNet.Cli.Rendering;

/// <summary>Reachable ratios as comma-separated values: one header line, one line per ratio.</summary>
internal static class ReachCsv
{
    private static readonly (string Header, Func<ReachableRatio, string> Value)[] s_figures =
    [
        ("ratio", r => CsvText.Number(Quantity.Exact(r.Ratio).ToDouble())),
        ("exact_ratio", r => Quantity.Exact(r.Ratio).ToString()),
        ("patterns", r => r.PatternCount.ToString(CultureInfo.InvariantCulture)),
        ("least_ssl_ohms_at_one_hertz", r => CsvText.Number(r.BestBySlowLimit.SlowOhmsAtOneHertz)),
        ("least_fsl_ohms", r => CsvText.Number(r.BestByFastLimit.FastOhms)),
        ("least_blocking_per_volt_of_input", r => r.BestByStress.PeakBlocking.IsDetermined
            ? CsvText.Number(Math.Abs(r.BestByStress.PeakBlocking.ToDouble()))
            : string.Empty),
        ("switches_undetermined", r => r.BestByStress.UndeterminedSwitchCount.ToString(CultureInfo.InvariantCulture)),
    ];

    private static readonly (string Header, Func<ReachableRatio, string> Value)[] s_patterns =
    [
        ("ssl_pattern", r => r.BestBySlowLimit.ToString()),
        ("fsl_pattern", r => r.BestByFastLimit.ToString()),
        ("blocking_pattern", r => r.BestByStress.ToString()),
    ];

    public static void Write(TextWriter output, string path, Converter converter, ReachableRatios reachable, bool hasPatterns)
    {
        (string Header, Func<ReachableRatio, string> Value)[] columns = hasPatterns ? [.. s_figures, .. s_patterns] : s_figures;
        CsvText.WriteLine(output, ["file", "converter", .. columns.Select(c => c.Header)]);
        foreach (ReachableRatio ratio in reachable.Ratios)
        {
            CsvText.WriteLine(output, [path, converter.Name, .. columns.Select(c => c.Value(ratio))]);
        }
    }
}
