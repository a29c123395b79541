using System.Globalization;
using ScNet.Analysis;
using ScNet.Design.Requirements;
using ScNet.Devices;
using ScNet.Stress;

namespace ScNet.Design.Choice;

/// <summary>Every element of a candidate against every kind of device that it may be made of, over the whole input range.</summary>
internal sealed class DeviceFit
{
    private DeviceFit(ConverterStress stress, IReadOnlyList<ElementFit> elements)
    {
        Stress = stress;
        Elements = elements;
    }

    public ConverterStress Stress { get; }

    /// <summary>The switches, then the capacitors, in the order of the converter.</summary>
    public IReadOnlyList<ElementFit> Elements { get; }

    /// <summary>Why no kinds of devices can make it, one text per group of alike elements; empty where some can.</summary>
    public IReadOnlyList<string> Rejections => [.. Grouped(e => !e.IsPossible, e => e.Rejection)];

    /// <summary>What takes more than one device in series whatever the kind, one text per group of alike elements.</summary>
    public IReadOnlyList<string> Stacks => [.. Grouped(e => e.IsPossible && e.LeastCount > 1, e => e.StackText)];

    public static DeviceFit Of(ConverterAnalysis analysis, Requirement requirement)
    {
        ConverterStress stress = ConverterStress.Of(analysis, requirement.InputVolts);
        Process process = requirement.Process;
        int kinds = Math.Max(process.Switches.Count, process.Capacitors.Count);
        ConverterRatings[] ratings = [.. Enumerable.Range(0, kinds).Select(k => ConverterRatings.Of(stress, new RatingLimits
        {
            Switch = process.Switches[Math.Min(k, process.Switches.Count - 1)],
            Capacitor = process.Capacitors[Math.Min(k, process.Capacitors.Count - 1)],
            MaximumSwitchesInSeries = process.MaximumSwitchesInSeries,
            MaximumCapacitorsInSeries = process.MaximumCapacitorsInSeries,
        }))];
        return new DeviceFit(stress,
        [
            .. analysis.Converter.Switches.Select((s, i) => new ElementFit(
                s.Name, process.MaximumSwitchesInSeries, [.. ratings.Take(process.Switches.Count).Select(r => (r.Switches[i].Device.Name, r.Switches[i].Overall))])),
            .. analysis.Converter.Capacitors.Select((c, i) => new ElementFit(
                c.Name, process.MaximumCapacitorsInSeries, [.. ratings.Take(process.Capacitors.Count).Select(r => (r.Capacitors[i].Device.Name, r.Capacitors[i].Overall))])),
        ]);
    }

    private IEnumerable<string> Grouped(Func<ElementFit, bool> counts, Func<ElementFit, string> text) =>
        Elements.Where(counts).GroupBy(text).Select(alike =>
            $"{string.Join(", ", alike.Select(e => e.Name))} {(alike.Count() > 1 ? "each need" : "needs")} {alike.Key}");
}

/// <summary>One element against every kind of device.</summary>
/// <param name="Name">The element.</param>
/// <param name="MaximumInSeries">The most devices in series.</param>
/// <param name="Kinds">Per kind of device its name and the verdict.</param>
internal sealed record ElementFit(string Name, int MaximumInSeries, IReadOnlyList<(string Device, RatingVerdict Verdict)> Kinds)
{
    /// <summary>The kind that can be, else may be, else comes nearest, with the fewest devices in series; the first of equal ones.</summary>
    public (string Device, RatingVerdict Verdict) Best => Kinds.MinBy(k => (
        k.Verdict.Outcome switch { RatingOutcome.NotAllowed => 2, RatingOutcome.Undetermined => 1, _ => 0 }, k.Verdict.StackCount));

    public bool IsPossible => Kinds.Any(k => k.Verdict.Outcome is RatingOutcome.WithinRating or RatingOutcome.NeedsStack);

    public int LeastCount => Best.Verdict.StackCount;

    /// <summary>"2.8 V: DEVICE stands 1.8 V, 1 is allowed in series".</summary>
    public string Rejection => Best.Verdict.Outcome == RatingOutcome.Undetermined
        ? $"a rating for any voltage, which nothing bounds: {string.Join("; ", Best.Verdict.Undetermined.Take(1))}"
        : $"{Need}, {InSeries(MaximumInSeries)} allowed in series";

    /// <summary>"2.8 V: DEVICE stands 1.8 V, 2 in series: area × 4".</summary>
    public string StackText => string.Create(
        CultureInfo.InvariantCulture, $"{Need}, {LeastCount} in series: area × {(long)LeastCount * LeastCount}");

    private string Need => $"{EngineeringNumber.Of(Best.Verdict.Volts ?? 0, "V")}: {Best.Device} stands {EngineeringNumber.Of(Best.Verdict.RatedVolts, "V")}";

    private static string InSeries(int count) => count == 1 ? "1 is" : string.Create(CultureInfo.InvariantCulture, $"{count} are");
}
