using Fractions;
using ScNet.Results.Pages;
using ScNet.Search.Queries;

namespace ScNet.Search.Pages;

/// <summary>The answer of the atlas as a person reads it: the networks with what each asks for, or why there is none.</summary>
public static class FindPage
{
    /// <summary>The most networks that are listed where nothing else is asked for.</summary>
    public const int UsualCount = 10;

    private const string OfInput = ", as a share of the input's";

    /// <summary>The columns of the table of networks.</summary>
    public static IReadOnlyList<PageColumn> Columns { get; } =
    [
        new("network", false, "name"),
        new("ratio", true, "ratio"),
        new("C", true, "capacitorCount", "flying capacitors"),
        new("P", true, "phaseCount", "phases"),
        new("S", true, "switchCount", "switches"),
        new("switch V", true, "highestSwitchVoltage", $"highest voltage of a switch that is open{OfInput}"),
        new("cap V", true, "highestCapacitorVoltage", $"highest voltage of a capacitor{OfInput}"),
        new("switch qV", true, "switchChargeVoltage", "charge times blocking voltage, all switches together, per charge and voltage of the output"),
        new("cap qV", true, "capacitorChargeVoltage", "charge times voltage, all capacitors together, per charge and voltage of the output"),
        new("swing", true, "plateSwing", "mean square of the swing of the plates in shares of the input's voltage, weighted by the best capacitances"),
        new("cap q", true, "capacitorCharge", "charge of all capacitors per charge of the output: its square over total capacitance and frequency is the slow-switching limit"),
        new("switch q", true, "switchCharge", "charge of all switches per charge of the output: its square times the phases over total conductance is the fast-switching limit"),
    ];

    /// <summary>The page.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="most">The most networks that are listed, the best first.</param>
    /// <param name="order">The positions of the listed networks in the order of the rows; null for the order of the objective.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of networks is below 1, or a position is none of those listed.</exception>
    public static Page Of(AtlasAnswer answer, int most = UsualCount, IReadOnlyList<int>? order = null)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        string title = answer.Query.ToString();
        if (answer.Networks.Count == 0)
        {
            return new Page(title, [new PageRemarks([answer.Statement, .. answer.Reasons, .. answer.Unproved])], isComplete: false);
        }

        FoundNetwork[] listed = [.. answer.Networks.Take(most)];
        FoundNetwork[] rows = order is null ? listed : [.. order.Select(i => (uint)i < (uint)listed.Length
            ? listed[i] : throw new ArgumentOutOfRangeException(nameof(order), i, $"Expected positions below {listed.Length}."))];
        int phases = rows.Select(r => r.Network.Phases.Count).DefaultIfEmpty().Max();
        string count = answer.Networks.Count > most ? FormattableString.Invariant($"The first {most} of them") : "All of them";
        return new Page(title, [
            new PageRemarks([answer.Statement, .. answer.Unproved]),
            new PageTable($"{count}, least {QueryWords.Of(answer.Query.Objective)} first", Columns, rows.Select(Row), hasLegend: true),
            new PageTable(
                "Terminals that closed switches join in each phase: p1 and n1 are the plates of capacitor c1",
                [new("network", false), .. Enumerable.Range(1, phases).Select(p => new PageColumn(FormattableString.Invariant($"phase {p}"), false)), new("loops of the family", false)],
                rows.Select(r => (IEnumerable<PageCell>)[r.Name, .. Enumerable.Range(0, phases).Select(p => (PageCell)(p < r.Network.Phases.Count ? r.Network.Phases[p].ToString() : "-")), r.Families.Count > 0 ? string.Join(", ", r.Families) : "-"])),
        ]);
    }

    private static IEnumerable<PageCell> Row(FoundNetwork found)
    {
        NetworkMeasures measures = found.Network.Measures;
        return
        [
            found.Name, Share(found.Network.Ratio), Cells.Count(found.Network.CapacitorCount), Cells.Count(found.Network.Phases.Count), Cells.Count(measures.SwitchCount),
            Share(measures.HighestSwitchVoltage), Share(measures.HighestCapacitorVoltage), Sum(measures.SwitchChargeVoltage), Sum(measures.CapacitorChargeVoltage),
            Sum(measures.PlateSwing), Sum(measures.CapacitorCharge), Sum(measures.SwitchCharge),
        ];
    }

    private static PageCell Share(Fraction value) => Cells.Of(Quantity.Exact(value));

    private static PageCell Sum(Fraction value) => Quantity.Exact(value) is var exact ? Cells.Of(exact, QuantityText.Decimal(exact)) : default;
}
