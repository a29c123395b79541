using Fractions;
using ScNet.Analysis;
using ScNet.Kernel;

namespace ScNet.Stress;

/// <summary>
/// The potential of every node in every phase of a mode, floating ones by the smallest set of bounds that
/// the rules lead into themselves.
/// </summary>
/// <remarks>
/// Rules and proof: docs/theory/stress.md, "Floating nodes". Cost: rounds · phases · (nodes + switches);
/// the rounds are at most the floating components plus a few.
/// </remarks>
internal sealed class NodeSpans
{
    private readonly SwitchedNetwork _network;
    private readonly bool _openSwitchesLeak;
    private readonly int _mode;
    private readonly PhaseNetwork[] _phases;
    private readonly Interval<Fraction>[][] _potentials;
    private readonly bool[][] _isPinned;
    private readonly HashSet<(int Phase, int Component)> _endless = [];

    private NodeSpans(ModeAnalysis analysis, RigidPieces pieces, HeldVoltages held, bool openSwitchesLeak)
    {
        _network = analysis.Converter.Network;
        _openSwitchesLeak = openSwitchesLeak;
        _mode = analysis.Mode.Index;
        int count = _network.PhaseCount;
        _phases = [.. Enumerable.Range(0, count).Select(j => PhaseNetwork.Of(analysis.Converter, pieces, held, _mode, j))];
        _potentials = [.. Enumerable.Range(0, count).Select(_ => EmptyRow(_network.NodeCount))];
        _isPinned = [.. _phases.Select(p => new bool[p.ComponentCount])];
        for (int j = 0; j < count; j++)
        {
            Pin(j, analysis.IdealPoint.NodePotentials);
        }
    }

    /// <summary>Finds the bounds.</summary>
    public static NodeSpans Of(ModeAnalysis analysis, RigidPieces pieces, HeldVoltages held, bool openSwitchesLeak)
    {
        NodeSpans spans = new(analysis, pieces, held, openSwitchesLeak);
        spans.Settle();
        return spans;
    }

    /// <summary>Whether in some phase a loop does not sum to zero: not with the mode's own voltages.</summary>
    public bool HasConflict => _phases.Any(p => p.HasConflict);

    /// <summary>The potential of a node in a phase from 0; empty or undetermined where nothing bounds it.</summary>
    public Interval<Fraction> Potential(int node, int phase) => _potentials[phase][node];

    public bool IsPinned(int node, int phase) => _isPinned[phase][_phases[phase].Component(node)];

    /// <summary>First minus second potential where it is fixed: both pinned, or floating together.</summary>
    public Fraction? FixedDifference(int first, int second, int phase)
    {
        PhaseNetwork network = _phases[phase];
        return network.Component(first) == network.Component(second) ? network.Potential(first) - network.Potential(second)
            : IsPinned(first, phase) && IsPinned(second, phase) ? Potential(first, phase).Minimum!.Value - Potential(second, phase).Minimum!.Value
            : null;
    }

    /// <summary>What moves as one with a node in a phase: 0 for all that is pinned, else the floating component.</summary>
    public int Frame(int node, int phase) => IsPinned(node, phase) ? 0 : _phases[phase].Component(node);

    /// <summary>The potential of a node against what moves as one with it.</summary>
    public Fraction Offset(int node, int phase) => IsPinned(node, phase) ? Potential(node, phase).Minimum!.Value : _phases[phase].Potential(node);

    /// <summary>The capacitors of unknown voltage that a node is joined to in a phase.</summary>
    public IReadOnlyList<int> UnknownCapacitors(int node, int phase) => _phases[phase].UnknownCapacitors(node);

    private static Interval<Fraction>[] EmptyRow(int count)
    {
        var row = new Interval<Fraction>[count];
        row.AsSpan().Fill(Intervals.Empty<Fraction>());
        return row;
    }

    // A component with one pinned node is pinned as a whole, idle capacitors of given voltage included.
    private void Pin(int phase, PhaseTable ideal)
    {
        PhaseNetwork network = _phases[phase];
        var roots = new Fraction?[network.ComponentCount];
        for (int node = 0; node < _network.NodeCount; node++)
        {
            if (ideal[node][phase + 1].TryGetFraction(out Fraction potential))
            {
                _potentials[phase][node] = Intervals.Point(potential);
                roots[network.Component(node)] ??= potential - network.Potential(node);
            }
        }

        for (int node = 0; node < _network.NodeCount; node++)
        {
            int component = network.Component(node);
            if (roots[component] is { } root)
            {
                _isPinned[phase][component] = true;
                if (_potentials[phase][node].IsEmpty)
                {
                    _potentials[phase][node] = Intervals.Point(root + network.Potential(node));
                }
            }
        }
    }

    private void Settle()
    {
        int floating = _isPinned.Sum(p => p.Count(pinned => !pinned));
        for (int round = 0; Step(isLate: round > floating + 2); round++)
        {
        }
    }

    // Once every component had its turn to hand its bounds on, whatever still grows would grow for ever.
    private bool Step(bool isLate)
    {
        bool changed = false;
        for (int j = 0; j < _phases.Length; j++)
        {
            Interval<Fraction>[] roots = Roots(j);
            for (int node = 0; node < _network.NodeCount; node++)
            {
                int component = _phases[j].Component(node);
                if (_isPinned[j][component])
                {
                    continue;
                }

                Interval<Fraction> potential = roots[component].Plus(_phases[j].Potential(node));
                if (!potential.Equals(_potentials[j][node]))
                {
                    changed = true;
                    if (isLate)
                    {
                        _endless.Add((j, component));
                        potential = default;
                    }

                    _potentials[j][node] = potential;
                }
            }
        }

        return changed;
    }

    // The potential of the first node of each floating component, from what every member allows.
    private Interval<Fraction>[] Roots(int phase)
    {
        PhaseNetwork network = _phases[phase];
        Interval<Fraction>[] before = _potentials[(phase + _phases.Length - 1) % _phases.Length];
        Interval<Fraction>[] roots = EmptyRow(network.ComponentCount);
        for (int k = 0; k < roots.Length; k++)
        {
            if (network.IsAdrift[k] || _endless.Contains((phase, k)))
            {
                roots[k] = default;
            }
        }

        for (int node = 0; node < _network.NodeCount; node++)
        {
            Allow(node, before[node]);
        }

        if (_openSwitchesLeak)
        {
            ReadOnlySpan<bool> closed = _network.ClosedIn(_mode, phase);
            for (int s = 0; s < closed.Length; s++)
            {
                int first = _network.SwitchFirst[s], second = _network.SwitchSecond[s];
                if (!closed[s] && network.Component(first) != network.Component(second))
                {
                    Allow(first, _potentials[phase][second]);
                    Allow(second, _potentials[phase][first]);
                }
            }
        }

        return roots;

        void Allow(int node, Interval<Fraction> potential)
        {
            int k = network.Component(node);
            roots[k] = roots[k].Hull(potential.Minus(network.Potential(node)));
        }
    }
}
