using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Reporting.Charts;
using ScNet.Results;
using ScNet.Results.Pages;
using ScNet.SteadyState;

namespace ScNet.Reporting.Html;

/// <summary>A converter at an operating point: waveforms, currents, and the losses with devices where these are known.</summary>
/// <param name="Sections">The sections.</param>
/// <param name="HasLosses">Whether losses with devices are among them.</param>
internal sealed record OperationPart(IReadOnlyList<ReportSection> Sections, bool HasLosses)
{
    // a period of every mode takes room; the figures of the others are there
    private const int DrawnModes = 8;

    public static OperationPart Of(ConverterAnalysis analysis, OperatingPoint point, ReportConditions conditions)
    {
        ResultRow<OperatedMode>[] rows = [.. analysis.Modes.Select(m => ResultRow.At(null, m, point, conditions.Sized))];
        (string Name, LossBudget Budget)[] budgets = [.. rows.Where(r => r.Result?.Budget is { } b && b.OutputWatts + b.TotalLossWatts > 0).Select(r => (r.Outcome!.Mode.Name, r.Result!.Budget!))];
        PicturePair[] periods = [.. rows.Select(r => r.Result?.Steady).OfType<PeriodicSteadyState>().Take(DrawnModes).Select(s => PicturePair.Of(a => WaveformChart.Of(s, null, a)))];
        return new OperationPart(
            [
                new ReportSection("At an operating point", [
                    .. periods.Length == 0 ? Array.Empty<ReportPart>() : [new PicturesPart(periods)],
                    .. budgets.Length == 0 ? Array.Empty<ReportPart>() : [new PicturesPart([PicturePair.Of(a => LossChart.Of(budgets, null, a))])],
                    new PagePart(new Page("Voltages, currents and losses", OperationPage.Of(point, 0, rows).Blocks)),
                ]),
            ],
            budgets.Length > 0);
    }
}
