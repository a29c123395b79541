using Fractions;
using ScNet.Kernel;

namespace ScNet.TwoPhaseSearch;

/// <summary>Two wirings that give a ratio.</summary>
/// <param name="First">The wiring of phase 1.</param>
/// <param name="Second">The wiring of phase 2.</param>
/// <param name="Switches">The fewest switches that make them, see <see cref="TwoPhaseNetworks.SwitchCount"/>.</param>
internal sealed record WiringPair(Wiring First, Wiring Second, int Switches);

/// <summary>Every two-phase network of a number of flying capacitors, up to the names of capacitors and plates.</summary>
internal sealed class TwoPhaseNetworks
{
    private readonly Wiring[] _all;
    private readonly Dictionary<string, int> _kinds = [];
    private readonly List<int[]> _loops = [];
    private readonly CandidateNetwork _network = new();
    private readonly CandidateSolver _solver = new();
    private readonly int[] _kindOf;
    private readonly Dictionary<(int First, int Second), (Fraction? Ratio, bool IsTight)> _ratios = [];

    public TwoPhaseNetworks(int capacitors)
    {
        Capacitors = capacitors;
        _all = [.. Wiring.All(capacitors)];
        _kindOf = [.. _all.Select(KindOf)];
    }

    public int Capacitors { get; }

    /// <summary>
    /// Every ratio but zero that any network has, also those whose loops are more than needed or leave a
    /// capacitor's voltage open.
    /// </summary>
    public SortedSet<Fraction> Ratios()
    {
        SortedSet<Fraction> ratios = [];
        Visit((_, _, ratio, _) => ratios.Add(ratio));
        return ratios;
    }

    /// <summary>For each ratio the networks with the fewest switches among those in which topology decides all.</summary>
    public Dictionary<Fraction, List<WiringPair>> FewestSwitches(Predicate<Fraction> wanted)
    {
        Dictionary<Fraction, List<WiringPair>> found = [];
        Visit((first, second, ratio, isTight) =>
        {
            if (!isTight || !wanted(ratio))
            {
                return;
            }

            int switches = SwitchCount(first, second);
            if (!found.TryGetValue(ratio, out List<WiringPair>? best) || switches < best[0].Switches)
            {
                found[ratio] = best = [];
            }

            if (best.Count == 0 || switches == best[0].Switches)
            {
                best.Add(new WiringPair(first, second, switches));
            }
        });
        return found;
    }

    /// <summary>
    /// What is joined in both phases is a wire; then a block of n separate nodes takes n - 1 switches.
    /// </summary>
    public static int SwitchCount(Wiring first, Wiring second)
    {
        int nodes = first.Blocks.Zip(second.Blocks).Distinct().Count();
        return (2 * nodes) - first.BlockCount - second.BlockCount;
    }

    private void Visit(Action<Wiring, Wiring, Fraction, bool> action)
    {
        for (int i = 0; i < _all.Length; i++)
        {
            if (!_all[i].IsFirstOfItsKind())
            {
                continue;
            }

            for (int j = 0; j < _all.Length; j++)
            {
                (Fraction? ratio, bool isTight) = RatioOf(_kindOf[i], _kindOf[j]);
                if (ratio is { IsZero: false } value)
                {
                    action(_all[i], _all[j], value, isTight);
                }
            }
        }
    }

    private (Fraction? Ratio, bool IsTight) RatioOf(int first, int second)
    {
        if (!_ratios.TryGetValue((first, second), out (Fraction? Ratio, bool IsTight) result))
        {
            result = Solve([.. _loops[first], .. _loops[second]]);
            _ratios.Add((first, second), result);
        }

        return result;
    }

    // The ratio, or null where the loops contradict each other or leave the output open. Tight is what gives every
    // capacitor its voltage without a loop too many, so that topology decides the flow too.
    private (Fraction? Ratio, bool IsTight) Solve(int[] rows)
    {
        int width = Capacitors + 2, output = Capacitors, input = Capacitors + 1;
        if (!EchelonForm.TryReduce(rows, width, width - 1, out int rank))
        {
            throw new OverflowException("The loops of two phases take larger numbers than expected.");
        }

        ReadOnlySpan<int> last = rank > 0 ? rows.AsSpan((rank - 1) * width, width) : [];
        bool isFixed = rank > 0 && EchelonForm.Leading(last) == output;
        bool isTight = (isFixed ? rank - 1 : rank) == Capacitors && rows.Length == (Capacitors + 1) * width;
        return isFixed && !rows.AsSpan(rank * width).ContainsAnyExcept(0)
            ? (new Fraction(-last[input], last[output]), isTight)
            : (null, isTight);
    }

    // Wirings with the same loop space differ in switches only.
    private int KindOf(Wiring wiring)
    {
        int[] loops = wiring.Loops(_network, _solver);
        string key = string.Join(',', loops);
        if (!_kinds.TryGetValue(key, out int kind))
        {
            kind = _loops.Count;
            _kinds.Add(key, kind);
            _loops.Add(loops);
        }

        return kind;
    }
}
