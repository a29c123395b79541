using System.Globalization;
using ScNet.Design.Choice;
using ScNet.Design.Losses;

namespace ScNet.Results.Pages;

/// <summary>The winner of a choice in detail: its losses, the time in each mode, its sizes.</summary>
internal static class ChosenBlocks
{
    public static IEnumerable<PageBlock> Of(RankedCandidate winner) =>
    [
        new PageHeading(winner.Candidate.Name),
        Budget(winner),
        .. winner.Modes.Count > 1 ? [Modes(winner)] : Array.Empty<PageBlock>(),
        .. winner.Sized is { } sized ? [Sizes(winner, sized)] : Array.Empty<PageBlock>(),
    ];

    private static PageTable Budget(RankedCandidate winner)
    {
        LossKind[] kinds = [.. Enum.GetValues<LossKind>().Where(k => winner.Loads.Any(l => l.WattsOf(k) > 0))];
        return new PageTable(
            "Power in each state of the load, on average over the discharge",
            [
                new("state", false), new("time", true), new("output", true), .. kinds.Select(k => new PageColumn(LossPage.NameOf(k), true)), new("efficiency", true),
            ],
            winner.Loads.Select(load => (IEnumerable<PageCell>)
            [
                load.Load.Name, Cells.Percent(load.Load.Share), Cells.Of(load.OutputWatts, "W"), .. kinds.Select(k => Cells.Of(load.WattsOf(k), "W")), Cells.Percent(load.Efficiency),
            ]));
    }

    private static PageTable Modes(RankedCandidate winner) => new(
        "Share of the time in each mode", [new("mode", false), new("time", true)], winner.Modes.Select((m, i) => (IEnumerable<PageCell>)[m.Name, Cells.Percent(winner.SharesOfModes[i])]));

    private static PageTable Sizes(RankedCandidate winner, SizedConverter sized) => new(
        winner.RelativeGap is { } gap
            ? string.Create(CultureInfo.InvariantCulture, $"Sizes; no sizes near by, of the same kinds, lose less by more than {gap:G1} of the loss")
            : "Sizes",
        [new("element", false), new("made of", false), new("in series", true), new("value", true), new("each", true), new("area", true)],
        [
            .. sized.Capacitors.Select((c, i) => (IEnumerable<PageCell>)
                [sized.Converter.Capacitors[i].Name, c.Device.Name, Cells.Count(c.Count), Cells.Of(sized.Converter.Capacitors[i].Farads, "F"), AreaText.OfSmall(c.AreaOfEachSquareMetres), AreaText.Of(c.AreaSquareMetres)]),
            .. sized.Switches.Select((s, i) => (IEnumerable<PageCell>)
            [
                sized.Converter.Switches[i].Name, s.Device.Name, Cells.Count(s.Count), Cells.Of(sized.Converter.Switches[i].Ohms, "Ω"),
                string.Create(CultureInfo.InvariantCulture, $"{s.WidthOfEachMicrometres:G4} µm wide"), AreaText.Of(s.AreaSquareMetres),
            ]),
            .. sized.Inductors.Select((l, i) => (IEnumerable<PageCell>)
            [
                sized.Converter.Inductors[i].Name, l.Name, Cells.Count(1), Cells.Of(sized.Converter.Inductors[i].Henries, "H"), Cells.Of(l.Ohms, "Ω"),
                l.IsOffChip ? "beside the chip" : AreaText.Of(l.AreaSquareMetres),
            ]),
        ]);
}
