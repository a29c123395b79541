using System.Globalization;
using ScNet.Devices;

namespace ScNet.Results.Pages;

/// <summary>Every element against the rating of its device.</summary>
internal static class RatingBlocks
{
    public static IEnumerable<PageBlock> Of(ConverterRatings ratings)
    {
        // of ratings alone there is nothing to be said of sizes
        bool hasSizes = ratings.Limits.Switch.Source != RatingLimits.Normalised || ratings.Limits.SwitchDevices.Count > 0;
        (string Element, string Device, RatingVerdict Verdict, string Size, double Area)[] rows =
        [
            .. ratings.Switches.Select(s => (s.Switch.Name, s.Device.Name, s.Overall, $"{EngineeringNumber.Of(1e-6 * s.Stack.TotalWidthMicrometres, "m")} wide", s.Stack.AreaSquareMetres)),
            .. ratings.Capacitors.Select(c => (c.Capacitor.Name, c.Device.Name, c.Overall, string.Create(CultureInfo.InvariantCulture, $"{1e6 * c.Stack.AreaSquareMetres:G4} mm²"), c.Stack.AreaSquareMetres)),
        ];
        yield return new PageTable(
            "Ratings: the largest magnitude over all modes and changes, and how many in series withstand it",
            [
                new("element", IsFigure: false, "element"),
                .. hasSizes ? [new PageColumn("made of", IsFigure: false, "rating.device")] : Array.Empty<PageColumn>(),
                new("voltage", IsFigure: true, "rating.volts"),
                new("rated", IsFigure: true, "rating.ratedVolts"),
                new("in series", IsFigure: true, "rating.inSeries"),
                .. hasSizes ? [new PageColumn("size", IsFigure: true, null, "Width of all devices of a switch; area of a capacitor")] : Array.Empty<PageColumn>(),
                new("verdict", IsFigure: false, "rating.outcome"),
            ],
            rows.Select(r => (IEnumerable<PageCell>)
            [
                r.Element,
                .. hasSizes ? [r.Device] : Array.Empty<PageCell>(),
                new((r.Verdict.IsLowerBound ? "≥ " : string.Empty) + EngineeringNumber.Of(r.Verdict.Volts, "V"), r.Verdict.Volts),
                new(EngineeringNumber.Of(r.Verdict.RatedVolts, "V"), r.Verdict.RatedVolts),
                new((r.Verdict.IsLowerBound ? "≥ " : string.Empty) + r.Verdict.StackCount.ToString(CultureInfo.InvariantCulture), r.Verdict.StackCount),
                .. hasSizes ? [new PageCell(r.Size, r.Area)] : Array.Empty<PageCell>(),
                Words(r.Verdict.Outcome),
            ]));
        yield return new PageRemarks([ratings.IsAllowed
            ? "These devices withstand every voltage"
            : $"Not withstood, or not known to be so: {string.Join(", ", rows.Where(r => r.Verdict.Outcome is RatingOutcome.NotAllowed or RatingOutcome.Undetermined).Select(r => r.Element))}"], isCaution: !ratings.IsAllowed);
    }

    private static string Words(RatingOutcome outcome) => outcome switch
    {
        RatingOutcome.WithinRating => "within rating",
        RatingOutcome.NeedsStack => "stack",
        RatingOutcome.NotAllowed => "not allowed: too many in series",
        _ => "undetermined",
    };
}
