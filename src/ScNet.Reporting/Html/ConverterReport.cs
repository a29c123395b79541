using System.Globalization;
using ScNet.Analysis;
using ScNet.Reporting.Charts;
using ScNet.Reporting.Charts.Plotting;
using ScNet.Reporting.Drawings;
using ScNet.Results.Pages;
using ScNet.SteadyState;

namespace ScNet.Reporting.Html;

/// <summary>What a report of one converter says.</summary>
internal static class ConverterReport
{
    // what is drawn of every mode takes room; the figures of the others are there
    private const int DrawnModes = 12;

    private const double LowestHertz = 1e-6, HighestHertz = 1e12;

    public static ReportContent Of(ConverterAnalysis analysis, ReportConditions conditions)
    {
        Converter converter = analysis.Converter;
        OperationPart? operation = conditions.Point is { } point ? OperationPart.Of(analysis, point, conditions) : null;
        return new ReportContent(
            "Report of a converter",
            converter.Name,
            string.Join("; ", new[] { conditions.Origin, Parts(converter), conditions.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) }.OfType<string>()),
            Glance(analysis),
            [
                Closing.Dangers(),
                new ReportSection("The converter", [
                    new PicturesPart([PicturePair.Of(a => NetworkDrawing.OfConverter(converter, converter.Modes.Count == 1 ? converter.Modes[0] : null, a))]),
                    .. Introduction(analysis),
                ]),
                .. analysis.Modes.Select((m, i) => OfMode(m, isOnly: analysis.Modes.Count == 1, isDrawn: i < DrawnModes)),
                .. StressPart.Of(analysis, conditions),
                .. operation?.Sections ?? [],
                Closing.Assumptions([.. Cautions.OfModel, .. Cautions.OfStress, .. operation is null ? [] : Cautions.OfOperation, .. operation?.HasLosses == true ? Cautions.OfLosses : []]),
                Closing.Origins([
                    .. Origins.OfTopology(converter.Inductors.Count > 0), .. Origins.OfImpedance(), .. Origins.OfStress(),
                    .. operation is null ? [] : Origins.OfOperation(), .. operation?.HasLosses == true ? Origins.OfLosses() : [],
                ]),
            ]);
    }

    /// <summary>What is said of a mode: the network of each phase, its figures, its impedance.</summary>
    private static ReportSection OfMode(ModeOutcome outcome, bool isOnly, bool isDrawn)
    {
        List<ReportPart> parts = [];
        if (outcome.Analysis is { } analysis)
        {
            if (isDrawn)
            {
                parts.Add(new PicturesPart([
                    .. isOnly ? Array.Empty<PicturePair>() : [PicturePair.Of(a => NetworkDrawing.OfConverter(analysis.Converter, analysis.Mode, a))],
                    .. analysis.Converter.Phases.Select(p => PicturePair.Of(a => NetworkDrawing.OfPhase(analysis, p.Number, a))),
                ]));
            }

            if (isDrawn && analysis.CarriesLoad && Impedance(analysis) is { } impedance)
            {
                parts.Add(new PicturesPart([impedance]));
            }
        }

        Page page = AnalysisPage.Of(outcome.Converter, [outcome], outcome.Analysis is { CarriesLoad: true } loaded ? Decades(loaded) : []);
        parts.Add(new PagePart(new Page("Figures", page.Blocks.SkipWhile(b => b is not PageHeading).Skip(1))));
        return new ReportSection($"Mode {outcome.Mode.Name}", parts);
    }

    // what stands before the first mode: counts, nodes, phases and warnings
    private static IEnumerable<ReportPart> Introduction(ConverterAnalysis analysis) =>
        [new PagePart(new Page("Nodes and phases", AnalysisPage.Of(analysis.Converter, [], []).Blocks))];

    private static PicturePair? Impedance(ModeAnalysis analysis)
    {
        double[] decades = Decades(analysis);
        try
        {
            Interval<double>? range = ChartFrequencies.Corner(OutputImpedance.Of(analysis)) is null ? new(decades[0], decades[^1]) : null;
            return PicturePair.Of(a => ImpedanceChart.Of(analysis, range, a));
        }
        catch (ScNetException)
        {
            // the page says why there is no impedance
            return null;
        }
    }

    // four decades round the corner, or where there is none round 1 MHz
    private static double[] Decades(ModeAnalysis analysis)
    {
        double corner = analysis.FastSwitchingLimit.Ohms > 0 ? (analysis.ChargeSharing?.OhmsAtOneHertz ?? analysis.SlowSwitchingLimit.OhmsAtOneHertz) / analysis.FastSwitchingLimit.Ohms : 0;
        int middle = (int)Math.Round(Math.Log10(corner is >= LowestHertz and <= HighestHertz ? corner : 1e6));
        return [.. Enumerable.Range(middle - 2, 5).Select(e => Math.Pow(10, e))];
    }

    private static string Parts(Converter converter) => string.Join(", ", new[]
    {
        Count(converter.Capacitors.Count, "capacitor", "capacitors"), Count(converter.Inductors.Count, "inductor", "inductors"),
        Count(converter.Switches.Count, "switch", "switches"), Count(converter.Phases.Count, "phase", "phases"), Count(converter.Modes.Count, "mode", "modes"),
    }.OfType<string>());

    private static string? Count(int count, string one, string many) =>
        count == 0 ? null : string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many)}");

    private static GlanceFigure[] Glance(ConverterAnalysis analysis)
    {
        ModeAnalysis[] modes = [.. analysis.Results];
        return modes.Length == 1
            ?
            [
                new("Ideal ratio", $"{modes[0].Ratio} V/V"),
                .. modes[0].CarriesLoad
                    ?
                    [
                        new(modes[0].ChargeSharing is null ? "Slow-switching limit" : "Charge sharing", EngineeringNumber.Of((modes[0].ChargeSharing?.OhmsAtOneHertz ?? modes[0].SlowSwitchingLimit.OhmsAtOneHertz) / 1e6, "Ω"), "at 1 MHz, falling as 1/f"),
                        new GlanceFigure("Fast-switching limit", EngineeringNumber.Of(modes[0].FastSwitchingLimit.Ohms, "Ω")),
                    ]
                    : Array.Empty<GlanceFigure>(),
            ]
            : [.. modes.Take(8).Select(m => new GlanceFigure($"Mode {m.Mode.Name}", $"{m.Ratio} V/V", m.CarriesLoad ? $"{EngineeringNumber.Of(m.FastSwitchingLimit.Ohms, "Ω")} at high frequency" : string.Empty))];
    }
}
