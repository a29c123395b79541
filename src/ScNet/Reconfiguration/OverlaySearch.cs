using MathNet.Numerics.Random;

namespace ScNet.Reconfiguration;

/// <summary>Looks for the mapping of capacitors that lets the networks share most switches.</summary>
internal sealed class OverlaySearch(IReadOnlyList<Converter> networks, int seed, IProgress<double>? progress, CancellationToken cancellation)
{
    private const int LargestSample = 20_000;
    private const int LargestTerminalCount = 64;
    private const int RefinementCount = 200;

    private readonly OverlayGroups[] _groups = [.. networks.Select(OverlayGroups.Of)];
    private readonly Xoshiro256StarStar _random = new(seed);

    public OverlayPlan Run()
    {
        int capacitors = _groups.Max(g => g.CapacitorCount);
        int terminals = OverlayGroups.PortCount + (2 * capacitors);
        if (terminals > LargestTerminalCount)
        {
            throw new ArgumentException($"Expected at most {(LargestTerminalCount - OverlayGroups.PortCount) / 2} capacitors, but a network has {capacitors}.", nameof(networks));
        }

        SwitchCover cover = new(terminals);
        int[][][] choices = [.. _groups.Select((g, k) => k == 0 ? [Identity(g.CapacitorCount)] : Mappings(g.CapacitorCount, capacitors).ToArray())];
        double all = choices.Aggregate(1.0, (product, c) => product * c.Length);
        bool isExhaustive = all <= LargestSample;
        int count = isExhaustive ? (int)all : LargestSample;
        OverlayPlan? best = null;
        for (int trial = 0; trial < count; trial++)
        {
            cancellation.ThrowIfCancellationRequested();
            int[][] mapping = isExhaustive ? Pick(choices, trial) : [.. choices.Select(c => c[_random.Next(c.Length)])];
            best = Better(best, Plan(cover, capacitors, mapping, pair => pair));
            progress?.Report((double)(trial + 1) / (count + 1));
        }

        // other orders among equally useful pairs, on the best mapping
        for (int k = 0; k < RefinementCount; k++)
        {
            cancellation.ThrowIfCancellationRequested();
            best = Better(best, best! with { Switches = Cover(cover, best.Networks, _ => _random.NextDouble()) });
        }

        progress?.Report(1);
        return best!;
    }

    private OverlayPlan Plan(SwitchCover cover, int capacitors, int[][] mapping, Func<int, double> tieBreak)
    {
        int[][][][] renamed = [.. _groups.Select((g, k) => g.Renamed(mapping[k]))];
        return new OverlayPlan(capacitors, renamed, Cover(cover, renamed, tieBreak));
    }

    private static (int First, int Second)[] Cover(SwitchCover cover, int[][][][] networks, Func<int, double> tieBreak)
    {
        ulong[] groups = [.. networks.SelectMany(n => n).SelectMany(p => p)
            .Select(g => g.Aggregate(0UL, (set, terminal) => set | (1UL << terminal))).Distinct()];
        return [.. cover.Find(groups, tieBreak).Order()];
    }

    private static OverlayPlan Better(OverlayPlan? best, OverlayPlan candidate) =>
        best is null || candidate.Switches.Length < best.Switches.Length ? candidate : best;

    private static int[][] Pick(int[][][] choices, int trial)
    {
        var picked = new int[choices.Length][];
        for (int k = 0; k < picked.Length; k++)
        {
            picked[k] = choices[k][trial % choices[k].Length];
            trial /= choices[k].Length;
        }

        return picked;
    }

    private static int[] Identity(int capacitors) => [.. Enumerable.Range(0, OverlayGroups.PortCount + (2 * capacitors))];

    // Every way to lay own capacitors onto distinct shared ones, each in either direction.
    private static IEnumerable<int[]> Mappings(int own, int shared)
    {
        return Extend([], 0UL);

        IEnumerable<int[]> Extend(int[] chosen, ulong used)
        {
            if (chosen.Length == own)
            {
                for (int turned = 0; turned < 1 << own; turned++)
                {
                    yield return [0, 1, 2, .. chosen.SelectMany((c, i) => Plates(c, ((turned >> i) & 1) != 0))];
                }

                yield break;
            }

            for (int c = 0; c < shared; c++)
            {
                if (((used >> c) & 1) == 0)
                {
                    foreach (int[] mapping in Extend([.. chosen, c], used | (1UL << c)))
                    {
                        yield return mapping;
                    }
                }
            }
        }
    }

    private static int[] Plates(int capacitor, bool isTurned)
    {
        int first = OverlayGroups.PortCount + (2 * capacitor);
        return isTurned ? [first + 1, first] : [first, first + 1];
    }
}
