using Fractions;
using ScNet.Results;

namespace ScNet.Search.Pages;

/// <summary>The answer of the atlas as a document for other programs: a row per network.</summary>
public static class FindTable
{
    private static readonly Figure<FoundNetwork>[] s_figures =
    [
        new("name", f => f.Name),
        new("ratio", f => Quantity.Exact(f.Network.Ratio)),
        new("capacitorCount", f => f.Network.CapacitorCount),
        new("phaseCount", f => f.Network.Phases.Count),
        new("switchCount", f => f.Network.Measures.SwitchCount),
        Measure("highestSwitchVoltage", NetworkMeasure.HighestSwitchVoltage),
        Measure("highestCapacitorVoltage", NetworkMeasure.HighestCapacitorVoltage),
        Measure("switchChargeVoltage", NetworkMeasure.SwitchChargeVoltage),
        Measure("capacitorChargeVoltage", NetworkMeasure.CapacitorChargeVoltage),
        Measure("plateSwing", NetworkMeasure.PlateSwing),
        Measure("capacitorCharge", NetworkMeasure.CapacitorCharge),
        Measure("switchCharge", NetworkMeasure.SwitchCharge),
        new("families", f => f.Families, HasColumn: false),
        new("phases", f => f.Network.Phases.Select(p => p.ToString()), HasColumn: false),
        new("switches", f => f.Network.Switches.Select(Switch), HasColumn: false),
    ];

    /// <summary>The headers of the CSV text.</summary>
    public static IReadOnlyList<string> Columns { get; } = [.. s_figures.Where(f => f.HasColumn).Select(f => f.Path)];

    /// <summary>The table: statement and reasons among its conditions, a row per network.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="most">The most networks that are listed, the best first.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of networks is below 1.</exception>
    public static ResultTable Of(AtlasAnswer answer, int most = FindPage.UsualCount)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        AtlasQuery query = answer.Query;
        return ResultTable.OfAny(
            [
                new("lowestRatio", Quantity.Exact(query.Ratios.Minimum!.Value)),
                new("highestRatio", Quantity.Exact(query.Ratios.Maximum!.Value)),
                new("capacitorCount", query.CapacitorCount),
                new("phaseCount", query.PhaseCount),
                new("highestSwitchVoltage", Limit(query.HighestSwitchVoltage)),
                new("highestCapacitorVoltage", Limit(query.HighestCapacitorVoltage)),
                new("mostSwitches", query.MostSwitches),
                new("statement", answer.Statement),
                new("reasons", answer.Reasons),
                new("unproved", answer.Unproved),
                new("searchedCount", answer.Atlas.NetworkCount),
                new("triedTripleCount", answer.ThreePhases?.TripleCount),
                new("unbeatenCount", answer.UnbeatenCount),
                new("foundCount", answer.Networks.Count),
            ],
            s_figures,
            answer.Networks.Take(most));
    }

    private static Figure<FoundNetwork> Measure(string key, NetworkMeasure measure) => new(key, f => Quantity.Exact(f.Network.Measures.Value(measure)));

    private static Quantity? Limit(Fraction? share) => share is { } limit ? Quantity.Exact(limit) : null;

    private static KeyValuePair<string, object?>[] Switch(NetworkSwitch planned) =>
    [
        new("first", Terminals.NameOf(planned.First)),
        new("second", Terminals.NameOf(planned.Second)),
        new("closedPhases", planned.ClosedPhases),
        new("peakVoltage", Quantity.Exact(planned.PeakVoltage)),
    ];
}
