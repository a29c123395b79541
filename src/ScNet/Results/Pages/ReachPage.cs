using ScNet.Reconfiguration;

namespace ScNet.Results.Pages;

/// <summary>The ratios that a set of switches reaches as a page: one row per ratio, and the best gate patterns where they are asked for.</summary>
public static class ReachPage
{
    // the frequency at which the slow-switching limit is shown
    private const double FrequencyHz = 1e6;

    private const string Limits = "slow-switching limit at 1 MHz and fast-switching limit, with the values of the netlist";
    private const string Blocks = "highest blocking voltage of a switch per volt of input; ≥: a lower bound, as some switch sees a floating node";

    /// <summary>The columns of the table of ratios.</summary>
    public static IReadOnlyList<PageColumn> Columns { get; } =
    [
        new("ratio", true, "ratio"),
        new("patterns", true, "patternCount"),
        new("least SSL", true, "bestBySlowLimit.slowSwitchingLimit.ohmsAtOneHertz", Limits),
        new("least FSL", true, "bestByFastLimit.fastSwitchingLimit.ohms", Limits),
        new("least blocking", true, "bestByStress.peakBlocking", Blocks),
    ];

    /// <summary>The page.</summary>
    /// <param name="converter">The converter whose switches were searched.</param>
    /// <param name="reachable">What they reach.</param>
    /// <param name="hasPatterns">Whether to say in which phases each switch is closed.</param>
    /// <param name="file">The file of the converter as the caller named it; null where there is none.</param>
    /// <param name="order">The positions of the ratios in the order of the rows; null for the order they have.</param>
    public static Page Of(Converter converter, ReachableRatios reachable, bool hasPatterns = false, string? file = null, IReadOnlyList<int>? order = null)
    {
        ArgumentNullException.ThrowIfNull(converter);
        ArgumentNullException.ThrowIfNull(reachable);
        ReachableRatio[] ratios = [.. (order ?? [.. Enumerable.Range(0, reachable.Ratios.Count)]).Select(i => reachable.Ratios[i])];
        List<PageBlock> blocks = [new PageRemarks([
            $"{Counts.Of(converter.Switches.Count, "switch", "switches")}, {FormattableString.Invariant($"{reachable.PatternCount}")} gate patterns in two phases, {Counts.Of(ratios.Length, "ratio", "ratios")}",
        ])];
        if (ratios.Length > 0)
        {
            blocks.Add(new PageTable(
                string.Empty,
                Columns,
                ratios.Select(r => (IEnumerable<PageCell>)[Ratio(r), Cells.Count(r.PatternCount), Slow(r.BestBySlowLimit), Fast(r.BestByFastLimit), Blocking(r.BestByStress)]),
                hasLegend: true));
        }

        if (ratios.Length > 0 && hasPatterns)
        {
            blocks.Add(new PageTable(
                "Gate patterns: the phases in which each switch is closed; those not named stay open",
                [new("ratio", true), new("least", false), new("SSL", true), new("FSL", true), new("blocking", true), new("pattern", false)],
                ratios.SelectMany(r => Patterns(r).GroupBy(p => p.Pattern.ToString()).Select(same => (IEnumerable<PageCell>)
                [
                    Ratio(r), string.Join(", ", same.Select(p => p.Least)), Slow(same.First().Pattern), Fast(same.First().Pattern), Blocking(same.First().Pattern), same.Key,
                ]))));
        }

        return new Page(file is null ? converter.Name : $"{converter.Name} ({file})", blocks);
    }

    private static (string Least, GatePattern Pattern)[] Patterns(ReachableRatio ratio) =>
        [("SSL", ratio.BestBySlowLimit), ("FSL", ratio.BestByFastLimit), ("blocking", ratio.BestByStress)];

    private static PageCell Ratio(ReachableRatio ratio) => Quantity.Exact(ratio.Ratio) is var exact ? Cells.Of(exact, QuantityText.WithDecimal(exact)) : default;

    private static PageCell Slow(GatePattern pattern) => Cells.Of(pattern.Analysis.SlowSwitchingLimit.Ohms(FrequencyHz), "Ω");

    private static PageCell Fast(GatePattern pattern) => Cells.Of(pattern.FastOhms, "Ω");

    private static PageCell Blocking(GatePattern pattern) => !pattern.PeakBlocking.IsDetermined ? "?"
        : Cells.Of(pattern.PeakBlocking.Abs(), (pattern.UndeterminedSwitchCount > 0 ? "≥" : string.Empty) + QuantityText.Short(pattern.PeakBlocking.Abs()));
}
