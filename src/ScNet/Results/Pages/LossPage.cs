using ScNet.Design.Losses;

namespace ScNet.Results.Pages;

/// <summary>A loss budget as a page: one row per kind of loss with the elements that lose the most, and what the budget rests on.</summary>
public static class LossPage
{
    private const int ShownElements = 4;

    /// <summary>The page.</summary>
    /// <param name="budget">The budget.</param>
    public static Page Of(LossBudget budget)
    {
        ArgumentNullException.ThrowIfNull(budget);
        return new Page($"{budget.Sized.Converter.Name}: losses with devices", Blocks(budget, string.Empty));
    }

    /// <summary>What a kind of loss is called.</summary>
    internal static string NameOf(LossKind kind) => LossBudget.Formulas[(int)kind].Name;

    /// <summary>The blocks of the page.</summary>
    internal static IEnumerable<PageBlock> Blocks(LossBudget budget, string caption) =>
    [
        new PageTable(
            caption + $"efficiency {Cells.Percent(budget.Efficiency).Text}, {EngineeringNumber.Of(budget.InputWatts, "W")} in, {EngineeringNumber.Of(budget.OutputWatts, "W")} out, {EngineeringNumber.Of(budget.TotalLossWatts, "W")} lost",
            [new("kind", false), new("power", true, "budget.lossWatts"), new("of input", true), new("elements", false)],
            budget.Losses.GroupBy(l => l.Kind).Select(kind => (IEnumerable<PageCell>)
            [
                NameOf(kind.Key),
                Cells.Of(budget.WattsOf(kind.Key), "W"),
                Cells.Percent(budget.InputWatts > 0 ? budget.WattsOf(kind.Key) / budget.InputWatts : null),
                Elements([.. kind.Where(l => l.Element.Length > 0).OrderByDescending(l => l.Watts)]),
            ])),
        new PageRemarks([
            $"Devices: {string.Join("; ", Devices(budget.Sized))}",
            .. budget.Notes.Select(n => $"{NameOf(n.Kind)}{(n.Element.Length > 0 ? " of " + n.Element : string.Empty)}: {(n.IsCounted ? "counted" : "not counted")} {n.Reason}"),
        ]),
    ];

    private static string Elements(Loss[] losses) =>
        string.Join(", ", losses.Take(ShownElements).Select(l => $"{l.Element} {EngineeringNumber.Of(l.Watts, "W")}"))
        + (losses.Length > ShownElements ? FormattableString.Invariant($" and {losses.Length - ShownElements} more") : string.Empty);

    private static IEnumerable<string> Devices(SizedConverter sized) =>
        sized.Converter.Switches.Zip(sized.Switches, (s, stack) => (s.Name, Text: $"{stack.Count} × {stack.Device.Name}"))
            .Concat(sized.Converter.Capacitors.Zip(sized.Capacitors, (c, stack) => (c.Name, Text: $"{stack.Count} × {stack.Device.Name}")))
            .GroupBy(d => d.Text).Select(g => $"{g.Key} for {string.Join(", ", g.Select(d => d.Name))}");
}
