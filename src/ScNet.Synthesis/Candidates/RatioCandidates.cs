using Fractions;
using ScNet.Search.LoopSpaces;

namespace ScNet.Synthesis.Candidates;

/// <summary>
/// Every labelled network of a ratio: pairs of loop spaces that together fix all voltages, each capacitor in its place
/// and direction.
/// </summary>
/// <remarks>
/// Capacitors may be idle, which means that they carry no charge: they rest beside another one, the output or the
/// input. So the networks of fewer capacitors are among them (docs/theory/smallest-converters.md). Phases are
/// exchanged at will, so that each pair stands there once.
/// </remarks>
internal sealed class RatioCandidates
{
    private readonly List<StateGroup> _groups = [];
    private readonly List<(int First, int Second)> _pairs = [];
    private readonly Dictionary<(int Space, string Voltages), int> _positions = [];

    private RatioCandidates(Fraction ratio) => Ratio = ratio;

    /// <summary>Output voltage over input voltage.</summary>
    public Fraction Ratio { get; }

    /// <summary>The largest numerator or denominator of any ratio that the loop spaces make.</summary>
    public long LargestTerm { get; private set; }

    /// <summary>The loop spaces that occur, each under the voltages that it occurs with.</summary>
    public IReadOnlyList<StateGroup> Groups => _groups;

    /// <summary>The pairs of groups, positions in <see cref="Groups"/>; both have the same voltages.</summary>
    public IReadOnlyList<(int First, int Second)> Pairs => _pairs;

    /// <summary>The candidates of several ratios, from one pass over all pairs of loop spaces.</summary>
    /// <param name="spaces">The loop spaces, see <see cref="PhaseSpace.All"/>.</param>
    /// <param name="ratios">The ratios, each once.</param>
    /// <param name="cancellation">Stops it.</param>
    public static IReadOnlyList<RatioCandidates> Of(IReadOnlyList<PhaseSpace> spaces, IReadOnlyList<Fraction> ratios, CancellationToken cancellation)
    {
        RatioCandidates[] found = [.. ratios.Select(r => new RatioCandidates(r))];
        int width = spaces[0].Space.BranchCount;
        long largest = 0;
        long[] equations = new long[(width - 1) * width], voltages = new long[width];
        for (int first = 0; first < spaces.Count; first++)
        {
            cancellation.ThrowIfCancellationRequested();
            for (int second = 0; second <= first; second++)
            {
                LoopSpace a = spaces[first].Space, b = spaces[second].Space;
                if (a.Dimension + b.Dimension != width - 1)
                {
                    continue;
                }

                Write(a, equations);
                Write(b, equations.AsSpan(a.Dimension * width));
                if (!NullVector.TryFind(equations, width, voltages) || voltages.Contains(0))
                {
                    continue;
                }

                Fraction ratio = new(voltages[LoopSpace.OutputColumn], voltages[LoopSpace.InputColumn]);
                largest = Math.Max(largest, Math.Max(Math.Abs((long)ratio.Numerator), (long)ratio.Denominator));
                found.FirstOrDefault(f => f.Ratio == ratio)?.Add(spaces[first], spaces[second], voltages);
            }
        }

        foreach (RatioCandidates candidates in found)
        {
            candidates.LargestTerm = largest;
        }

        return Array.AsReadOnly(found);
    }

    private void Add(PhaseSpace first, PhaseSpace second, long[] voltages) =>
        _pairs.Add((GroupOf(first, voltages), GroupOf(second, voltages)));

    private int GroupOf(PhaseSpace space, long[] voltages)
    {
        var key = (space.Position, string.Join(' ', voltages));
        if (!_positions.TryGetValue(key, out int position))
        {
            _positions.Add(key, position = _groups.Count);
            _groups.Add(new StateGroup(position, space, Array.AsReadOnly((long[])voltages.Clone())));
        }

        return position;
    }

    private static void Write(LoopSpace space, Span<long> rows)
    {
        for (int row = 0; row < space.Dimension; row++)
        {
            for (int c = 0; c < space.BranchCount; c++)
            {
                rows[(row * space.BranchCount) + c] = space.Row(row)[c];
            }
        }
    }
}
