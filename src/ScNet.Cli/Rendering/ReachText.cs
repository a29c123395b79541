using System.Globalization;
using ScNet.Reconfiguration;
using ScNet.Results.Pages;

namespace ScNet.Cli.Rendering;

/// <summary>Reachable ratios for people: one row per ratio, and the patterns where they are asked for.</summary>
internal static class ReachText
{
    /// <summary>The frequency at which the slow-switching limit is shown: 1 MHz.</summary>
    private const double FrequencyHz = 1e6;

    public static void Write(TextWriter output, string path, Converter converter, ReachableRatios reachable, bool hasPatterns)
    {
        int count = reachable.Ratios.Count;
        string patterns = reachable.PatternCount.ToString(CultureInfo.InvariantCulture);
        output.WriteLine(Printable.Of($"{converter.Name} ({path})"));
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"{converter.Switches.Count} switches, {patterns} gate patterns in two phases, {count} {(count == 1 ? "ratio" : "ratios")}"));
        if (count == 0)
        {
            return;
        }

        output.WriteLine();
        TextTable table = new TextTable(string.Empty).Figures("ratio").Figures("patterns").Figures("least SSL").Figures("least FSL").Figures("least blocking");
        foreach (ReachableRatio ratio in reachable.Ratios)
        {
            table.Row([
                QuantityText.WithDecimal(Quantity.Exact(ratio.Ratio)),
                ratio.PatternCount.ToString(CultureInfo.InvariantCulture),
                Slow(ratio.BestBySlowLimit),
                Fast(ratio.BestByFastLimit),
                Blocking(ratio.BestByStress),
            ]);
        }

        table.Write(output);
        if (hasPatterns)
        {
            WritePatterns(output, reachable);
        }

        output.WriteLine();
        output.WriteLine("SSL, FSL      slow-switching limit at 1 MHz and fast-switching limit, with the values of the netlist");
        output.WriteLine("blocking      highest blocking voltage of a switch per volt of input; ≥: a lower bound, as some switch sees a floating node");
    }

    private static void WritePatterns(TextWriter output, ReachableRatios reachable)
    {
        output.WriteLine();
        output.WriteLine("Gate patterns: the phases in which each switch is closed; those not named stay open");
        TextTable table = new TextTable(string.Empty).Figures("ratio").Words("least").Figures("SSL").Figures("FSL").Figures("blocking").Words("pattern");
        foreach (ReachableRatio ratio in reachable.Ratios)
        {
            foreach (IGrouping<string, (string Least, GatePattern Pattern)> same in Patterns(ratio).GroupBy(p => p.Pattern.ToString()))
            {
                GatePattern pattern = same.First().Pattern;
                table.Row([
                    QuantityText.WithDecimal(Quantity.Exact(ratio.Ratio)), string.Join(", ", same.Select(p => p.Least)), Slow(pattern), Fast(pattern), Blocking(pattern), same.Key,
                ]);
            }
        }

        table.Write(output);
    }

    private static (string Least, GatePattern Pattern)[] Patterns(ReachableRatio ratio) =>
        [("SSL", ratio.BestBySlowLimit), ("FSL", ratio.BestByFastLimit), ("blocking", ratio.BestByStress)];

    private static string Slow(GatePattern pattern) => EngineeringNumber.Of(pattern.Analysis.SlowSwitchingLimit.Ohms(FrequencyHz), "Ω");

    private static string Fast(GatePattern pattern) => EngineeringNumber.Of(pattern.FastOhms, "Ω");

    private static string Blocking(GatePattern pattern) => !pattern.PeakBlocking.IsDetermined ? "?"
        : (pattern.UndeterminedSwitchCount > 0 ? "≥" : string.Empty) + QuantityText.Short(pattern.PeakBlocking.Abs());
}
