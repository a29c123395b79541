using Fractions;

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
    private readonly List<List<int[]>> _loops = [];
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
            Fraction? ratio = LoopEquations.Ratio(_loops[first].Concat(_loops[second]), Capacitors, out bool isTight);
            result = (ratio, isTight);
            _ratios.Add((first, second), result);
        }

        return result;
    }

    // Wirings with the same loops differ in switches only.
    private int KindOf(Wiring wiring)
    {
        List<int[]> loops = wiring.Loops();
        string key = string.Join(';', loops.Select(l => string.Join(',', l)));
        if (!_kinds.TryGetValue(key, out int kind))
        {
            kind = _loops.Count;
            _kinds.Add(key, kind);
            _loops.Add(loops);
        }

        return kind;
    }
}
