using System.Globalization;
using ScNet.Design.Choice;
using ScNet.Design.Losses;
using ScNet.Reporting.Charts.Plotting;

namespace ScNet.Reporting.Charts;

/// <summary>
/// Where the input power goes: the losses of each kind, stacked, as shares of the input power, so that states of a load that
/// are decades apart can be compared.
/// </summary>
public static class LossChart
{
    private const double RowPixels = 46, BarPixels = 22;

    // so many candidates of a choice are legible in one picture
    private const int MostCandidates = 12;

    /// <summary>Draws the losses at one operating point.</summary>
    /// <param name="budget">The losses.</param>
    /// <param name="appearance">The ground.</param>
    public static Picture Of(LossBudget budget, Appearance appearance = Appearance.Light)
    {
        ArgumentNullException.ThrowIfNull(budget);
        return Of([(ChartNames.Of(budget.Point), budget)], $"Losses of {budget.Sized.Converter.Name}", appearance);
    }

    /// <summary>Draws the losses of several converters or at several operating points, one row each.</summary>
    /// <param name="budgets">Each row's name and losses, from the top downwards.</param>
    /// <param name="title">The title; "Losses" where it is null.</param>
    /// <param name="appearance">The ground.</param>
    /// <exception cref="ArgumentException">There is no row, or no input power in one.</exception>
    public static Picture Of(IReadOnlyList<(string Name, LossBudget Budget)> budgets, string? title = null, Appearance appearance = Appearance.Light)
    {
        ArgumentNullException.ThrowIfNull(budgets);
        if (budgets.Any(b => b.Name is null || b.Budget is null))
        {
            throw new ArgumentException("Expected a name and a budget in every item, but got null.", nameof(budgets));
        }

        return Draw(title ?? "Losses", [.. budgets.Select(b => new LossRow(b.Name, b.Budget.OutputWatts, [.. LossRow.Kinds.Select(b.Budget.WattsOf)]))], appearance);
    }

    /// <summary>Draws the losses of a candidate in each state of the load.</summary>
    /// <param name="candidate">The candidate.</param>
    /// <param name="appearance">The ground.</param>
    public static Picture Of(RankedCandidate candidate, Appearance appearance = Appearance.Light)
    {
        ArgumentNullException.ThrowIfNull(candidate);
        return Draw(
            $"Losses of {candidate.Candidate}",
            [.. candidate.Loads.Select(l => new LossRow($"{l.Load.Name}, {EngineeringNumber.Of(l.Load.Amperes, "A")}", l.OutputWatts, [.. LossRow.Kinds.Select(l.WattsOf)]))],
            appearance);
    }

    /// <summary>Draws the average losses of the candidates of a choice, the best first.</summary>
    /// <param name="choice">The choice.</param>
    /// <param name="appearance">The ground.</param>
    /// <exception cref="ArgumentException">No candidate does what is required.</exception>
    public static Picture Of(RankedChoice choice, Appearance appearance = Appearance.Light)
    {
        ArgumentNullException.ThrowIfNull(choice);
        return Draw($"Losses of the best candidates, {choice.Requirement.Name}", [.. choice.Ranked.Take(MostCandidates).Select(AverageOf)], appearance);
    }

    // the states of the load by their shares of the time
    private static LossRow AverageOf(RankedCandidate candidate) => new(
        $"{candidate.Rank}. {candidate.Candidate}", candidate.OutputWatts, [.. LossRow.Kinds.Select(kind => candidate.Loads.Sum(l => l.Load.Share * l.WattsOf(kind)))]);

    private static Picture Draw(string title, LossRow[] rows, Appearance appearance)
    {
        if (rows.Length == 0 || rows.Any(r => !(r.OutputWatts + r.LossWatts > 0)))
        {
            throw new ArgumentException("Expected at least one row, each with input power.", nameof(rows));
        }

        Figure figure = new(title, string.Empty, Figure.UsualWidthPixels, appearance);
        LossKind[] kinds = [.. LossRow.Kinds.Where(k => rows.Any(r => r.Watts[(int)k] > 0))];
        Ink[] inks = [.. LossRow.Kinds.Select(k => new Ink($"loss-{(int)k}", Palette.Kinds[(int)k]))];
        figure.AddLegend([.. kinds.Select(k => (inks[(int)k], LossBudget.Formulas[(int)k].Name))], areFilled: true);

        string[] totals = [.. rows.Select(r => $"{Percent(r.LossShare)}, {EngineeringNumber.Of(r.LossWatts, "W")}")];
        double right = figure.WidthPixels - Figure.MarginPixels - totals.Max(t => PictureFont.WidthPixels(t, TextSpot.UsualPixels)) - 8;
        Box area = new(Figure.MarginPixels + 6, figure.HeadPixels + 8, right, figure.HeadPixels + 8 + (RowPixels * rows.Length));
        ChartAxis share = ChartAxis.Linear("Loss per input power", 0, 100 * rows.Max(r => r.LossShare), "%", 5);
        Panel panel = figure.AddPanel(area, share, ChartAxis.Of(0, rows.Length), grid: (true, false), ticks: (true, false));
        foreach ((LossRow row, int i) in rows.Select((r, i) => (r, i)))
        {
            double bottom = rows.Length - i - 0.96, top = bottom + (BarPixels / RowPixels), from = 0;
            figure.Add(new TextSpot("row", area.Left + 4, panel.PixelY(top) - 6, FittingText.Of(row.Name, figure.WidthPixels - area.Left - 20)));
            foreach (LossKind kind in kinds)
            {
                double to = from + (100 * row.ShareOf(kind));
                if (to > from)
                {
                    panel.Rectangle(inks[(int)kind], from, to, bottom, top);
                    AddName(figure, panel, inks[(int)kind], kind, row, (from, to), (bottom + top) / 2);
                    from = to;
                }
            }

            figure.Add(new TextSpot("total", figure.WidthPixels - Figure.MarginPixels, panel.PixelY((bottom + top) / 2) + 4, totals[i], TextAnchor.End));
        }

        return figure.ToPicture(Description(title, rows, kinds), area.Bottom + PanelTexts.HeightOf(share) + 4);
    }

    // the longest of these texts that the bar holds
    private static void AddName(Figure figure, Panel panel, Ink ink, LossKind kind, LossRow row, (double From, double To) bar, double middle)
    {
        (double left, double right) = (panel.PixelX(bar.From), panel.PixelX(bar.To));
        string percent = Percent(row.ShareOf(kind));
        foreach (string text in (string[])[$"{LossBudget.Formulas[(int)kind].Name} {percent}", percent])
        {
            TextSpot spot = new("bar", (left + right) / 2, panel.PixelY(middle) + 4, text, TextAnchor.Middle) { SizePixels = TextSpot.SmallPixels, Colour = Palette.TextOn(ink.Colour) };
            if (spot.WidthPixels + 6 <= right - left)
            {
                figure.Add(spot);
                return;
            }
        }
    }

    private static string Percent(double share) => (100 * share).ToString("0.0", CultureInfo.InvariantCulture) + " %";

    private static string Description(string title, LossRow[] rows, LossKind[] kinds) => $"{title}, as shares of the input power. "
        + string.Join("; ", rows.Select(r => $"{r.Name}: {Percent(r.LossShare)} or {EngineeringNumber.Of(r.LossWatts, "W")} lost, of which "
            + string.Join(", ", kinds.Where(k => r.Watts[(int)k] > 0).Select(k => $"{LossBudget.Formulas[(int)k].Name} {Percent(r.ShareOf(k))}")))) + ".";
}
