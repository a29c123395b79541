using MathNet.Numerics.Random;

namespace ScNet.Reconfiguration;

/// <summary>Looks for the mapping of capacitors that lets the networks share most switches.</summary>
internal sealed class OverlaySearch(IReadOnlyList<Converter> networks, int seed, IProgress<double>? progress, CancellationToken cancellation)
{
    private const int RefinementCount = 200;

    private readonly OverlayGroups[] _groups = [.. networks.Select(OverlayGroups.Of)];
    private readonly Xoshiro256StarStar _random = new(seed);

    public OverlayPlan Run()
    {
        int capacitors = _groups.Max(g => g.CapacitorCount);
        int terminals = OverlayGroups.PortCount + (2 * capacitors);
        if (capacitors > Overlay.LargestCapacitorCount)
        {
            throw new ArgumentException($"Expected at most {Overlay.LargestCapacitorCount} capacitors, but a network has {capacitors}.", nameof(networks));
        }

        SwitchCover cover = new(terminals);
        OverlayMappings mappings = new(Array.ConvertAll(_groups, g => g.CapacitorCount));
        double all = mappings.Count;
        int count = (int)Math.Min(all, Overlay.LargestTrialCount), trial = 0;
        OverlayPlan? best = null;
        if (all <= Overlay.LargestTrialCount)
        {
            mappings.Visit(Try);
        }
        else
        {
            while (trial < count)
            {
                Try(mappings.Draw(_random));
            }
        }

        // other orders among equally useful pairs, on the best mapping
        for (int k = 0; k < RefinementCount; k++)
        {
            cancellation.ThrowIfCancellationRequested();
            best = Thinned(cover, best!.Networks, _ => _random.NextDouble(), best) ?? best;
        }

        progress?.Report(1);
        return best!;

        void Try(int[][] mapping)
        {
            cancellation.ThrowIfCancellationRequested();
            int[][][][] renamed = [.. _groups.Select((g, k) => g.Renamed(mapping[k]))];
            best = Thinned(cover, renamed, pair => pair, best) ?? best;
            trial++;
            progress?.Report((double)trial / (count + 1));
        }
    }

    // The plan with the switches that thinning leaves; null where they are not fewer than before.
    private OverlayPlan? Thinned(SwitchCover cover, int[][][][] networks, Func<int, double> tieBreak, OverlayPlan? best)
    {
        ulong[] groups = [.. networks.SelectMany(n => n).SelectMany(p => p)
            .Select(g => g.Aggregate(0UL, (set, terminal) => set | (1UL << terminal))).Distinct()];
        return cover.Find(groups, tieBreak, best?.Switches.Length ?? int.MaxValue) is { } switches
            ? new OverlayPlan(_groups.Max(g => g.CapacitorCount), networks, [.. switches.Order()])
            : null;
    }
}
