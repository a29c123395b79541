using ScNet.Reconfiguration;

namespace ScNet.Results;

/// <summary>The ratios that a set of switches reaches as a document for other programs: one row per ratio with its three best patterns.</summary>
internal static class ReachTable
{
    /// <summary>The table.</summary>
    /// <param name="file">The file of the converter as the caller named it, or null where there is none.</param>
    /// <param name="converter">The converter whose switches were searched.</param>
    /// <param name="reachable">What they reach.</param>
    /// <param name="hasPatterns">Whether to say in which phases each switch is closed.</param>
    public static ResultTable Of(string? file, Converter converter, ReachableRatios reachable, bool hasPatterns = false)
    {
        ArgumentNullException.ThrowIfNull(converter);
        ArgumentNullException.ThrowIfNull(reachable);
        return ResultTable.OfAny(
            [new("switchCount", converter.Switches.Count), new("patternCount", reachable.PatternCount)], Figures(file, converter.Name, hasPatterns), reachable.Ratios);
    }

    /// <summary>The columns of the CSV text without patterns.</summary>
    public static IReadOnlyList<string> Columns { get; } = [.. Figures(null, string.Empty, hasPatterns: false).Where(f => f.HasColumn).Select(f => f.Path)];

    private static Figure<ReachableRatio>[] Figures(string? file, string name, bool hasPatterns) =>
    [
        new("file", _ => file),
        new("converter", _ => name),
        new("ratio", r => Quantity.Exact(r.Ratio)),
        new("patternCount", r => r.PatternCount),
        .. Pattern("bestBySlowLimit", r => r.BestBySlowLimit, hasPatterns),
        .. Pattern("bestByFastLimit", r => r.BestByFastLimit, hasPatterns),
        .. Pattern("bestByStress", r => r.BestByStress, hasPatterns),
    ];

    private static Figure<ReachableRatio>[] Pattern(string key, Func<ReachableRatio, GatePattern> pattern, bool hasPatterns) =>
    [
        new($"{key}.slowSwitchingLimit.ohmsAtOneHertz", r => pattern(r).SlowOhmsAtOneHertz),
        new($"{key}.fastSwitchingLimit.ohms", r => pattern(r).FastOhms),
        new($"{key}.peakBlocking", r => pattern(r).PeakBlocking),
        new($"{key}.undeterminedSwitchCount", r => pattern(r).UndeterminedSwitchCount),
        .. hasPatterns
            ? [new($"{key}.pattern", r => pattern(r).ToString()), new($"{key}.on", r => ClosedPhases(pattern(r)), HasColumn: false)]
            : Array.Empty<Figure<ReachableRatio>>(),
    ];

    private static KeyValuePair<string, object?>[] ClosedPhases(GatePattern pattern) => [.. pattern.ClosedPhases.Select(
        (phases, s) => new KeyValuePair<string, object?>(pattern.Analysis.Converter.Switches[s].Name, phases))];
}
