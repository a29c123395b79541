using ScNet.Search.LoopSpaces;
using ScNet.Search.Networks;

namespace ScNet.Search.Triples;

/// <summary>What the switches of each choice of wirings of a triple must block at least, two phases at a time.</summary>
/// <remarks>
/// A node of a phase is joined up by switches that in another phase span the gaps between its terminals' potentials there, so that one of them blocks the widest gap. In the scale
/// of the triple's voltages.
/// </remarks>
internal sealed class TripleBlocking
{
    private readonly long[][][] _potentials;
    private readonly int[,] _firstSecond;
    private readonly int[,] _firstThird;
    private readonly int[,] _secondThird;

    private TripleBlocking(Wiring[][] phases, NetworkSolution solution)
    {
        Scale = solution.Voltages[LoopSpace.InputColumn];
        Most = (int)solution.Voltages.Sum(Math.Abs);
        _potentials = [.. phases.Select(p => p.Select(w => NetworkQuantities.TerminalPotentials(w, BranchForest.Of(w), solution)).ToArray())];
        _firstSecond = Gaps(phases, 0, 1);
        _firstThird = Gaps(phases, 0, 2);
        _secondThird = Gaps(phases, 1, 2);
        Least = Math.Max(_firstSecond.Cast<int>().Min(), Math.Max(_firstThird.Cast<int>().Min(), _secondThird.Cast<int>().Min()));
    }

    /// <summary>The input's voltage.</summary>
    public long Scale { get; }

    /// <summary>The least that any choice must block.</summary>
    public int Least { get; }

    /// <summary>More than any switch can block.</summary>
    public int Most { get; }

    /// <summary>The triple of some wirings.</summary>
    /// <param name="phases">The wirings of each phase.</param>
    /// <param name="spaces">The spaces of the phases, which fix all voltages.</param>
    public static TripleBlocking Of(Wiring[][] phases, LoopSpace[] spaces) => NetworkSolution.TrySolve(spaces, out NetworkSolution? solution)
        ? new TripleBlocking(phases, solution)
        : throw new InvalidOperationException("The spaces of the search are no network.");

    /// <summary>What some switch of a choice must block at least.</summary>
    public int LeastOf((int First, int Second, int Third) choice) => Math.Max(
        _firstSecond[choice.First, choice.Second], Math.Max(_firstThird[choice.First, choice.Third], _secondThird[choice.Second, choice.Third]));

    /// <summary>Per phase the potential of each terminal.</summary>
    public long[][] Potentials((int First, int Second, int Third) choice) => [_potentials[0][choice.First], _potentials[1][choice.Second], _potentials[2][choice.Third]];

    private int[,] Gaps(Wiring[][] phases, int one, int other)
    {
        int[,] gaps = new int[phases[one].Length, phases[other].Length];
        for (int a = 0; a < phases[one].Length; a++)
        {
            for (int b = 0; b < phases[other].Length; b++)
            {
                gaps[a, b] = (int)Math.Max(WidestGap(phases[one][a], _potentials[other][b]), WidestGap(phases[other][b], _potentials[one][a]));
            }
        }

        return gaps;
    }

    // between neighbours of a node in the order of another phase's potentials
    private static long WidestGap(Wiring wiring, long[] potentials)
    {
        Span<(long Potential, byte Node)> sorted = stackalloc (long, byte)[potentials.Length];
        for (int t = 0; t < potentials.Length; t++)
        {
            int place = t;
            for (; place > 0 && sorted[place - 1].Potential > potentials[t]; place--)
            {
                sorted[place] = sorted[place - 1];
            }

            sorted[place] = (potentials[t], wiring.Nodes[t]);
        }

        Span<long> last = stackalloc long[wiring.NodeCount];
        last.Fill(long.MaxValue);
        long widest = 0;
        foreach ((long potential, byte node) in sorted)
        {
            widest = last[node] == long.MaxValue ? widest : Math.Max(widest, potential - last[node]);
            last[node] = potential;
        }

        return widest;
    }
}
