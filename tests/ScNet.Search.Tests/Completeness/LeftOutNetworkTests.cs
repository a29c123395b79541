using Fractions;
using ScNet.Kernel;
using ScNet.Search.LoopSpaces;
using ScNet.Search.Networks;

namespace ScNet.Search.Tests.Completeness;

/// <summary>
/// Networks that are no part of the atlas although they fix every voltage: loops too many, or a capacitor without charge.
/// Whether they get by with lower voltages than those that are.
/// </summary>
public class LeftOutNetworkTests
{
    public static IEnumerable<object[]> Sizes => AtlasCampaign.UpTo(2, 3, [[1, ""], [2, "1"], [3, "-1 1/2 1 2"]]);

    public static IEnumerable<object[]> Capacitors => Sizes.Select(row => row[..1]);

    [Theory]
    [MemberData(nameof(Sizes))]
    public void They_lower_the_highest_capacitor_voltage_of_those_ratios_only_and_no_switch_voltage(int capacitors, string ratios)
    {
        Dictionary<Fraction, (Fraction Capacitor, Fraction Switch)> inside = [], outside = [];
        foreach ((Wiring first, Wiring second) in WiringPairs.Of(capacitors, inOnePiece: true))
        {
            LoopSpace a = LoopSpace.Of(first), b = LoopSpace.Of(second);
            if (Voltages(a, b) is not { } voltages)
            {
                continue;
            }

            Fraction input = Math.Abs(voltages[LoopSpace.InputColumn]), ratio = new Fraction(voltages[LoopSpace.OutputColumn], voltages[LoopSpace.InputColumn]).Reduce();
            Fraction highest = voltages.Skip(LoopSpace.FirstCapacitorColumn).Max(Math.Abs) / input;
            Fraction blocking = Math.Max(HighestGap(first, second, voltages), HighestGap(second, first, voltages)) / input;
            Dictionary<Fraction, (Fraction Capacitor, Fraction Switch)> best = NetworkSolution.TrySolve([a, b], out _) ? inside : outside;
            best[ratio] = best.TryGetValue(ratio, out (Fraction Capacitor, Fraction Switch) old)
                ? (highest < old.Capacitor ? highest : old.Capacitor, blocking < old.Switch ? blocking : old.Switch)
                : (highest, blocking);
        }

        Assert.All(outside.Keys, ratio => Assert.True(inside.ContainsKey(ratio)));
        Assert.All(outside, o => Assert.True(o.Value.Switch >= inside[o.Key].Switch, $"{o.Key}"));
        Assert.Equal(ratios, string.Join(' ', outside.Where(o => o.Value.Capacitor < inside[o.Key].Capacitor).Select(o => o.Key).Order()));
    }

    // in the switch count a floating piece counts as a node of its own
    [Theory]
    [MemberData(nameof(Capacitors))]
    public void A_floating_piece_saves_no_switch(int capacitors)
    {
        Dictionary<Fraction, int> inOnePiece = [], any = [];
        foreach ((Wiring first, Wiring second) in WiringPairs.Of(capacitors, inOnePiece: false))
        {
            if (NetworkSolution.TrySolve([LoopSpace.Of(first), LoopSpace.Of(second)], out NetworkSolution? solution))
            {
                Fraction ratio = new Fraction(solution.Voltages[LoopSpace.OutputColumn], solution.Voltages[LoopSpace.InputColumn]).Reduce();
                int groups = SwitchPlan.PermanentGroups([first, second]).Distinct().Count();
                int switches = (2 * groups) - first.NodeCount - second.NodeCount;
                any[ratio] = Math.Min(any.GetValueOrDefault(ratio, int.MaxValue), switches);
                if (BranchForest.Of(first).PieceCount == 1 && BranchForest.Of(second).PieceCount == 1)
                {
                    inOnePiece[ratio] = Math.Min(inOnePiece.GetValueOrDefault(ratio, int.MaxValue), switches);
                }
            }
        }

        Assert.NotEmpty(any);
        Assert.Equal(any.OrderBy(r => r.Key), inOnePiece.OrderBy(r => r.Key));
    }

    // whatever the number of loops; null where they leave a voltage open or make one zero
    private static long[]? Voltages(LoopSpace first, LoopSpace second)
    {
        int width = first.BranchCount, loops = first.Dimension + second.Dimension;
        if (loops < width - 1)
        {
            return null;
        }

        int[] rows = new int[loops * width];
        for (int row = 0; row < loops; row++)
        {
            ReadOnlySpan<sbyte> loop = row < first.Dimension ? first.Row(row) : second.Row(row - first.Dimension);
            for (int c = 0; c < width; c++)
            {
                rows[(row * width) + c] = loop[c];
            }
        }

        Assert.True(EchelonForm.TryReduce(rows, width, width, out int rank));
        long[] voltages = new long[width];
        return rank == width - 1
            && NullVector.TryFind(rows.Take(rank * width).Select(r => (long)r).ToArray(), width, voltages)
            && !voltages.Contains(0)
            ? voltages
            : null;
    }

    // the row of switches of each node blocks the differences of neighbours in the other phase
    private static long HighestGap(Wiring own, Wiring other, long[] voltages)
    {
        long[] potentials = new long[other.NodeCount];
        foreach ((int node, int from, int branch, int sign) in BranchForest.Of(other).Steps())
        {
            potentials[node] = potentials[from] + (sign * voltages[branch]);
        }

        long highest = 0;
        for (int node = 0; node < own.NodeCount; node++)
        {
            long[] sorted = [.. Enumerable.Range(0, own.TerminalCount).Where(t => own.Nodes[t] == node).Select(t => potentials[other.Nodes[t]]).Order()];
            highest = Math.Max(highest, sorted.Zip(sorted.Skip(1), (low, high) => high - low).DefaultIfEmpty().Max());
        }

        return highest;
    }
}
