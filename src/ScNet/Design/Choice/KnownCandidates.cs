using Fractions;
using ScNet.Analysis;
using ScNet.Reconfiguration;
using ScNet.Topologies;

namespace ScNet.Design.Choice;

/// <summary>What is tried where a requirement names no candidates: a converter of every class for its ratios.</summary>
/// <remarks>
/// Switched-capacitor converters of one ratio: each family at the two least ratios that it has above every ratio that is asked for.
/// Gears: the fractions of up to three flying capacitors within the range, from each of the two least above it downwards, one
/// more at a time; and the recursive cascades. Stages with inductors of every sort that can give the range. A linear regulator.
/// </remarks>
internal static class KnownCandidates
{
    // how many ratios above the range are tried
    private const int CoveringCount = 2;

    private const int LargestSize = 8;

    private static readonly string[] s_families = ["series-parallel", "ladder", "dickson", "fibonacci", "doubler", "cockcroft-walton"];

    /// <summary>Every candidate, without two of the same network in a row of families.</summary>
    public static IEnumerable<Candidate> Of(Interval<Fraction> ratios, IOverlayMethod overlays) =>
        [Candidate.Linear, .. SingleRatios(ratios), .. GearSets(ratios, overlays), .. Recursive(ratios), .. Stages(ratios, overlays)];

    private static IEnumerable<Candidate> SingleRatios(Interval<Fraction> ratios)
    {
        // all families are one and the same network where they halve or double
        HashSet<Fraction> plain = [];
        foreach (string family in s_families)
        {
            var covering = FamilyCandidates.Networks(family, new(1, LargestSize), ratios)
                .Select(n => (Network: n, Ratio: ModeAnalysis.Of(n).Ratio.ToFraction()))
                .Where(n => n.Ratio > ratios.Maximum!.Value)
                .OrderBy(n => n.Ratio).Take(CoveringCount);
            foreach ((Converter network, Fraction ratio) in covering)
            {
                if (network.Capacitors.Count > 1 || plain.Add(ratio))
                {
                    yield return Candidate.Of(network);
                }
            }
        }
    }

    private static IEnumerable<Candidate> GearSets(Interval<Fraction> ratios, IOverlayMethod overlays)
    {
        (Converter Network, Fraction Ratio)[] networks = [.. FamilyCandidates.Networks("fraction", new(2, FractionalDivider.MaximumTerm), ratios)
            .Select(n => (n, ModeAnalysis.Of(n).Ratio.ToFraction()))
            .Where(n => n.Item2 >= ratios.Minimum!.Value)
            .OrderByDescending(n => n.Item2)];
        int inside = networks.Count(n => n.Ratio <= ratios.Maximum!.Value);
        for (int top = networks.Length - inside - 1; top >= Math.Max(0, networks.Length - inside - CoveringCount); top--)
        {
            for (int count = 1; count <= inside; count++)
            {
                yield return Candidate.Of(Gears.Of([networks[top].Network, .. networks[^inside..].Take(count).Select(n => n.Network)], overlays));
            }
        }
    }

    private static IEnumerable<Candidate> Recursive(Interval<Fraction> ratios) =>
        ratios.Maximum!.Value < Fraction.One
            ? FamilyCandidates.Networks("recursive", new(2, 4), ratios).Where(n => n.Modes.Count > 1).Select(n => Candidate.Of(n))
            : [];

    private static IEnumerable<Candidate> Stages(Interval<Fraction> ratios, IOverlayMethod overlays)
    {
        Fraction highest = ratios.Maximum!.Value;
        if (highest >= Fraction.One)
        {
            return [StageCandidates.StepUp()];
        }

        Fraction third = new(1, 3), half = new(1, 2);
        return
        [
            StageCandidates.StepDown(),
            .. Enumerable.Range(3, 3).Select(StageCandidates.FlyingCapacitor),
            .. highest < third ? [StageCandidates.SeriesCharged()] : Array.Empty<Candidate>(),
            .. highest < new Fraction(1, 4) ? [StageCandidates.SeriesCapacitor()] : Array.Empty<Candidate>(),
            .. highest < half ? FamilyCandidates.Of("ladder-fed", new(2, 2), ratios, overlays) : [],
            .. highest < third ? FamilyCandidates.Of("ladder-fed", new(3, 3), ratios, overlays) : [],
            .. highest < third ? FamilyCandidates.Of("dickson-fed", new(3, 3), ratios, overlays) : [],
        ];
    }
}
