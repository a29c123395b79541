using System.Globalization;
using ScNet.Design.Losses;
using ScNet.Results.Pages;

namespace ScNet.Cli.Rendering;

/// <summary>A loss budget for people: one line per kind of loss, the largest elements of each, and what the budget rests on.</summary>
internal static class LossText
{
    private const int ShownElements = 4;

    public static void Write(TextWriter output, LossBudget budget)
    {
        output.WriteLine();
        output.WriteLine(
            $"  Losses with devices: efficiency {budget.Efficiency?.ToString("0.00 %", CultureInfo.InvariantCulture) ?? "none"}, "
            + $"{EngineeringNumber.Of(budget.InputWatts, "W")} in, {EngineeringNumber.Of(budget.OutputWatts, "W")} out, {EngineeringNumber.Of(budget.TotalLossWatts, "W")} lost");
        TextTable table = new TextTable(indent: "  ").Words("kind").Figures("power").Figures("of input").Words("elements");
        foreach (IGrouping<LossKind, Loss> kind in budget.Losses.GroupBy(l => l.Kind))
        {
            table.Row([
                NameOf(kind.Key),
                EngineeringNumber.Of(budget.WattsOf(kind.Key), "W"),
                budget.InputWatts > 0 ? (budget.WattsOf(kind.Key) / budget.InputWatts).ToString("0.00 %", CultureInfo.InvariantCulture) : "-",
                Elements([.. kind.Where(l => l.Element.Length > 0).OrderByDescending(l => l.Watts)]),
            ]);
        }

        table.Write(output);
        output.WriteLine(Printable.Of($"  Devices: {string.Join("; ", Devices(budget.Sized))}"));
        foreach (LossNote note in budget.Notes)
        {
            output.WriteLine(Printable.Of($"  {NameOf(note.Kind)}{(note.Element.Length > 0 ? " of " + note.Element : string.Empty)}: {(note.IsCounted ? "counted" : "not counted")} {note.Reason}"));
        }
    }

    /// <summary>What a kind of loss is called.</summary>
    public static string NameOf(LossKind kind) => LossBudget.Formulas[(int)kind].Name;

    private static string Elements(Loss[] losses) =>
        string.Join(", ", losses.Take(ShownElements).Select(l => $"{l.Element} {EngineeringNumber.Of(l.Watts, "W")}"))
        + (losses.Length > ShownElements ? string.Create(CultureInfo.InvariantCulture, $" and {losses.Length - ShownElements} more") : string.Empty);

    private static IEnumerable<string> Devices(SizedConverter sized) =>
        sized.Converter.Switches.Zip(sized.Switches, (s, stack) => (s.Name, Text: $"{stack.Count} × {stack.Device.Name}"))
            .Concat(sized.Converter.Capacitors.Zip(sized.Capacitors, (c, stack) => (c.Name, Text: $"{stack.Count} × {stack.Device.Name}")))
            .GroupBy(d => d.Text).Select(g => $"{g.Key} for {string.Join(", ", g.Select(d => d.Name))}");
}
