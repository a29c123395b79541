using ScNet.Kernel;

namespace ScNet.TwoPhaseSearch;

/// <summary>
/// What is joined with what in one phase: a partition of the reference, the input, the output and the
/// plates of the capacitors. Places 0, 1, 2 are the ports, 3 + 2c and 4 + 2c the plates of capacitor c.
/// No two ports are joined and no capacitor is shorted.
/// </summary>
internal sealed class Wiring
{
    public const int PortCount = 3;

    private Wiring(int[] blocks)
    {
        Blocks = blocks;
        BlockCount = blocks.Max() + 1;
    }

    /// <summary>The block of each place, numbered in the order in which they first appear.</summary>
    public IReadOnlyList<int> Blocks { get; }

    public int BlockCount { get; }

    public int CapacitorCount => (Blocks.Count - PortCount) / 2;

    /// <summary>Every wiring of a number of capacitors, in the order of their block lists.</summary>
    public static IEnumerable<Wiring> All(int capacitors)
    {
        int[] blocks = new int[PortCount + (2 * capacitors)];
        (blocks[1], blocks[2]) = (1, 2);
        return Extend(blocks, PortCount, PortCount).Select(b => new Wiring(b));
    }

    /// <summary>
    /// Whether no exchange of capacitors or of the plates of one gives a wiring that comes earlier in the
    /// order: one of each set that differs in names only.
    /// </summary>
    public bool IsFirstOfItsKind() => Renamings(CapacitorCount).All(r => Compare(Renamed(r), Blocks) >= 0);

    /// <summary>
    /// Kirchhoff's voltage law round every independent loop, reduced: rows of coefficients of the capacitors'
    /// voltages, then of the output's and the input's, that sum to zero.
    /// </summary>
    public int[] Loops(CandidateNetwork network, CandidateSolver solver)
    {
        NodePair[] capacitors = [.. Enumerable.Range(0, CapacitorCount)
            .Select(c => new NodePair(Blocks[PortCount + (2 * c)], Blocks[PortCount + (2 * c) + 1]))];
        NetworkPort[] ports = [new NetworkPort(new NodePair(2, 0), IsGiven: false), new NetworkPort(new NodePair(1, 0), IsGiven: true)];
        network.Wire(BlockCount, capacitors, ports, []);
        return solver.PhaseEquations(network, []).ToArray();
    }

    private static IEnumerable<int[]> Extend(int[] blocks, int place, int count)
    {
        if (place == blocks.Length)
        {
            yield return [.. blocks];
            yield break;
        }

        for (int b = 0; b <= count; b++)
        {
            bool isBottomPlate = (place - PortCount) % 2 == 1;
            if (isBottomPlate && blocks[place - 1] == b)
            {
                continue;
            }

            blocks[place] = b;
            foreach (int[] full in Extend(blocks, place + 1, Math.Max(count, b + 1)))
            {
                yield return full;
            }
        }
    }

    // Each gives the old place of every new one.
    private static IEnumerable<int[]> Renamings(int capacitors) =>
        from order in Orders(capacitors)
        from flips in Enumerable.Range(0, 1 << capacitors)
        select Enumerable.Range(0, PortCount).Concat(order.SelectMany((old, c) => Plates(old, (flips >> c) % 2))).ToArray();

    private static int[] Plates(int capacitor, int flip) =>
        [PortCount + (2 * capacitor) + flip, PortCount + (2 * capacitor) + 1 - flip];

    private static IEnumerable<int[]> Orders(int count) => count == 0
        ? [[]]
        : Orders(count - 1).SelectMany(o => Enumerable.Range(0, count).Select(i => o.Take(i).Append(count - 1).Concat(o.Skip(i)).ToArray()));

    private int[] Renamed(int[] renaming)
    {
        Dictionary<int, int> numbers = [];
        return [.. renaming.Select(old =>
        {
            numbers.TryAdd(Blocks[old], numbers.Count);
            return numbers[Blocks[old]];
        })];
    }

    private static int Compare(int[] left, IReadOnlyList<int> right)
    {
        for (int i = 0; i < left.Length; i++)
        {
            if (left[i] != right[i])
            {
                return left[i] - right[i];
            }
        }

        return 0;
    }
}
