using System.Globalization;
using ScNet.Design.Choice;
using ScNet.Design.Maps;
using ScNet.Design.Requirements;
using ScNet.Reporting.Charts;
using ScNet.Reporting.Drawings;
using ScNet.Results.Pages;

namespace ScNet.Reporting.Html;

/// <summary>What a report of a ranked choice says: the order and its reasons, the winner in pictures, sizes, what would change it.</summary>
internal static class DesignReport
{
    // points of the map each way: enough for its borders, few enough for seconds
    private const int MapPoints = 24;

    // how far below the only load a map begins
    private const double LoadDecade = 10;

    public static ReportContent Of(RankedChoice choice, ChoiceSensitivity? sensitivity, DateOnly? date)
    {
        Requirement requirement = choice.Requirement;
        (string? Title, PageBlock[] Blocks)[] pieces = [.. Pieces(ChoicePage.Of(choice, sensitivity))];
        return new ReportContent(
            "Report of a design",
            requirement.Name,
            string.Join("; ", new[] { $"{choice.Ranked.Count} candidates ranked, {choice.Rejected.Count} rejected", date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) }.OfType<string>()),
            Glance(choice),
            [
                Closing.Dangers(),
                new ReportSection("Ranking", [
                    new PagePart(new Page("Order", pieces.First(p => p.Title is null).Blocks)),
                    .. choice.Ranked.Count > 0 ? [new PicturesPart([PicturePair.Of(a => LossChart.Of(choice, a))])] : Array.Empty<ReportPart>(),
                ]),
                .. choice.Winner is { } winner ? [Pictures(requirement, winner)] : Array.Empty<ReportPart>(),
                .. pieces.Where(p => p.Title is not null).Select(p => new PagePart(new Page(p.Title!, p.Blocks))),
                Closing.Assumptions([.. Cautions.OfDesign, .. Cautions.OfModel, .. Cautions.OfLosses, .. Cautions.OfStress]),
                Closing.Origins([.. Origins.OfDesign(), .. Origins.OfLosses(), .. Origins.OfTopology(hasInductors: true), .. Origins.OfImpedance(), .. Origins.OfStress()]),
            ]);
    }

    private static GlanceFigure[] Glance(RankedChoice choice) => choice.Winner is not { } winner
        ? [new("Winner", "none", "no candidate does what is required")]
        :
        [
            new("Winner", winner.Candidate.Name),
            .. winner.LifeHours is { } hours ? [new GlanceFigure("Life of the cell", string.Create(CultureInfo.InvariantCulture, $"{hours:F0} h"))] : Array.Empty<GlanceFigure>(),
            new("Efficiency", string.Create(CultureInfo.InvariantCulture, $"{100 * winner.Efficiency:F1} %"), "over discharge and time"),
            new("Average loss", EngineeringNumber.Of(winner.LossWatts, "W")),
            .. choice.Ranked.Count > 1 ? [new GlanceFigure("Second", choice.Ranked[1].Candidate.Name, string.Create(CultureInfo.InvariantCulture, $"{100 * choice.Ranked[1].Efficiency:F1} %"))] : Array.Empty<GlanceFigure>(),
        ];

    private static ReportSection Pictures(Requirement requirement, RankedCandidate winner)
    {
        List<PicturePair> networks = [], charts = [PicturePair.Of(a => LossChart.Of(winner, a))];
        if (winner.Sized is { Converter: var converter })
        {
            networks.AddRange(converter.Modes.Select(m => PicturePair.Of(a => NetworkDrawing.OfConverter(converter, m, a))));
        }

        if (!requirement.InputVolts.IsPoint)
        {
            charts.AddRange(requirement.Loads.Select(load => PicturePair.Of(a => EfficiencyChart.Of(winner.Modes, requirement.InputVolts, VoltsOf(requirement, load), load.Amperes, a))));
            OperatingMap map = Map(requirement, winner);
            charts.Add(PicturePair.Of(a => MapChart.OfLoads(map, 0, a)));
        }

        return new ReportSection($"The winner: {winner.Candidate.Name}", [
            .. networks.Count > 0 ? [new PicturesPart(networks)] : Array.Empty<ReportPart>(),
            new PicturesPart(charts),
        ]);
    }

    // at the voltage of the state that draws the most
    private static OperatingMap Map(Requirement requirement, RankedCandidate winner)
    {
        LoadShare largest = requirement.Loads.MaxBy(l => l.Amperes)!;
        double least = requirement.Loads.Min(l => l.Amperes);
        double from = least < largest.Amperes ? least : largest.Amperes / LoadDecade;
        return OperatingMap.Of(
            winner.Modes,
            Between(requirement.InputVolts.Minimum!.Value, requirement.InputVolts.Maximum!.Value, (a, b, x) => a + ((b - a) * x)),
            [VoltsOf(requirement, largest)],
            Between(from, largest.Amperes, (a, b, x) => a * Math.Pow(b / a, x)));
    }

    private static double[] Between(double from, double to, Func<double, double, double, double> at) =>
        [.. Enumerable.Range(0, MapPoints).Select(i => i == MapPoints - 1 ? to : at(from, to, i / (MapPoints - 1.0)))];

    private static double VoltsOf(Requirement requirement, LoadShare load) => load.OutputVolts ?? requirement.OutputVolts[^1];

    // a page by its first headings; what stands before them has none
    private static IEnumerable<(string? Title, PageBlock[] Blocks)> Pieces(Page page)
    {
        string? title = null;
        List<PageBlock> blocks = [];
        foreach (PageBlock block in page.Blocks)
        {
            if (block is PageHeading { Level: 1 } heading)
            {
                yield return (title, [.. blocks]);
                (title, blocks) = (heading.Text, []);
            }
            else
            {
                blocks.Add(block is PageHeading deeper ? new PageHeading(deeper.Text, deeper.Level - 1) : block);
            }
        }

        yield return (title, [.. blocks]);
    }
}
