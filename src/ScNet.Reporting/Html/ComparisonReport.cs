using System.Globalization;
using ScNet.Design;
using ScNet.Reporting.Drawings;
using ScNet.Results;
using ScNet.Results.Pages;

namespace ScNet.Reporting.Html;

/// <summary>What a report of converters side by side says.</summary>
internal static class ComparisonReport
{
    // a drawing takes room; the figures of the others are there
    private const int DrawnConverters = 24;

    public static ReportContent Of(
        ComparisonConditions conditions, IReadOnlyList<ResultRow<ComparedMode>> rows, bool hasSilicon, double? loadAmperes, DateOnly? date)
    {
        Page page = ComparisonPage.Of(conditions, rows, hasSilicon, loadAmperes);
        Converter[] converters = [.. rows.Select(r => r.Outcome?.Converter).OfType<Converter>().Distinct()];
        return new ReportContent(
            "Report of a comparison",
            string.Join(", ", converters.Take(4).Select(c => c.Name)) + (converters.Length > 4 ? " and others" : string.Empty),
            string.Join("; ", new[] { page.Title, date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) }.OfType<string>()),
            [
                .. Least("Least impedance, slowly", rows, m => m.Comparison.LowFrequencyLimit.BestSplitOhms),
                .. Least("Least impedance, fast", rows, m => m.Comparison.FastSwitchingLimit.BestSplitOhms),
                .. loadAmperes is null ? [] : Best(rows),
            ],
            [
                Closing.Dangers(),
                new ReportSection("Side by side", [new PagePart(new Page("All modes", page.Blocks))]),
                .. converters.Length == 0 ? Array.Empty<ReportPart>()
                    : [new ReportSection("The converters", [new PicturesPart([.. converters.Take(DrawnConverters).Select(c => PicturePair.Of(a => NetworkDrawing.OfConverter(c, null, a)))])])],
                Closing.Assumptions([.. Cautions.OfComparison, .. Cautions.OfModel, .. Cautions.OfStress, .. loadAmperes is null ? [] : Cautions.OfOperation]),
                Closing.Origins([
                    .. Origins.OfComparison(hasSilicon), .. Origins.OfTopology(converters.Any(c => c.Inductors.Count > 0)),
                    .. loadAmperes is null ? [] : Origins.OfOperation(),
                ]),
            ]);
    }

    private static IEnumerable<GlanceFigure> Least(string name, IReadOnlyList<ResultRow<ComparedMode>> rows, Func<ComparedMode, double?> ohms) =>
        rows.Where(r => r.Result is { } result && ohms(result) is not null).OrderBy(r => ohms(r.Result!)).Take(1)
            .Select(r => new GlanceFigure(name, EngineeringNumber.Of(ohms(r.Result!), "Ω"), $"{NameOf(r)}, at the best split"));

    private static IEnumerable<GlanceFigure> Best(IReadOnlyList<ResultRow<ComparedMode>> rows) =>
        rows.Where(r => r.Result?.Load is { Steady.IsOverloaded: false, ResistiveEfficiency: not null }).OrderByDescending(r => r.Result!.Load!.ResistiveEfficiency).Take(1)
            .Select(r => new GlanceFigure("Best efficiency at the load", r.Result!.Load!.ResistiveEfficiency!.Value.ToString("0.00 %", CultureInfo.InvariantCulture), NameOf(r)));

    private static string NameOf(ResultRow<ComparedMode> row) => $"{row.Outcome!.Converter.Name}, mode {row.Outcome.Mode.Name}";
}
