using Fractions;
using ScNet.Analysis;
using ScNet.Kernel;

namespace ScNet.Stress;

/// <summary>
/// The potential of every node in every phase of a mode, floating ones by the smallest set of bounds that
/// the assumption leads into itself.
/// </summary>
/// <remarks>
/// Rules and proof: docs/theory/stress.md, "Floating nodes". Cost: rounds · phases · (nodes + switches);
/// the rounds are at most the floating components plus a few.
/// </remarks>
internal sealed class NodeSpans
{
    private readonly SwitchedNetwork _network;
    private readonly FloatingAssumption _assumption;
    private readonly int _mode;
    private readonly PhaseNetwork[] _phases;
    private readonly Interval[][] _potentials;
    private readonly bool[][] _isPinned;
    private readonly HashSet<(int Phase, int Component)> _endless = [];

    private NodeSpans(ModeAnalysis analysis, RigidPieces pieces, HeldVoltages held, FloatingAssumption assumption)
    {
        _network = analysis.Converter.Network;
        _assumption = assumption;
        _mode = analysis.Mode.Index;
        int count = _network.PhaseCount;
        _phases = [.. Enumerable.Range(0, count).Select(j => PhaseNetwork.Of(analysis.Converter, pieces, held, _mode, j))];
        _potentials = [.. Enumerable.Range(0, count).Select(_ => new Interval[_network.NodeCount])];
        _isPinned = [.. _phases.Select(p => new bool[p.ComponentCount])];
        for (int j = 0; j < count; j++)
        {
            for (int node = 0; node < _network.NodeCount; node++)
            {
                if (analysis.IdealPoint.NodePotentials[node][j + 1].TryGetFraction(out Fraction potential))
                {
                    _potentials[j][node] = Interval.Point(potential);
                    _isPinned[j][_phases[j].Component(node)] = true;
                }
            }
        }
    }

    /// <summary>Finds the bounds.</summary>
    public static NodeSpans Of(ModeAnalysis analysis, RigidPieces pieces, HeldVoltages held, FloatingAssumption assumption)
    {
        NodeSpans spans = new(analysis, pieces, held, assumption);
        spans.Settle();
        return spans;
    }

    /// <summary>The potential of a node in a phase from 0; empty or unbounded where nothing bounds it.</summary>
    public Interval Potential(int node, int phase) => _potentials[phase][node];

    /// <summary>The hull of a node's potentials over all phases; unbounded if one is.</summary>
    public Interval OverAllPhases(int node)
    {
        Interval hull = default;
        foreach (Interval[] phase in _potentials)
        {
            hull = hull.Hull(phase[node].IsBounded ? phase[node] : Interval.Unbounded);
        }

        return hull;
    }

    public bool IsPinned(int node, int phase) => _isPinned[phase][_phases[phase].Component(node)];

    /// <summary>First minus second potential where it is fixed: both pinned, or floating together.</summary>
    public Fraction? FixedDifference(int first, int second, int phase)
    {
        PhaseNetwork network = _phases[phase];
        return network.Component(first) == network.Component(second) ? network.Potential(first) - network.Potential(second)
            : IsPinned(first, phase) && IsPinned(second, phase) ? Potential(first, phase).Low - Potential(second, phase).Low
            : null;
    }

    public VoltageSpan Span(int node, int phase) =>
        VoltageSpan.Of(_potentials[phase][node], IsPinned(node, phase) ? VoltageBasis.Fixed : VoltageBasis.Floating);

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
            Interval[] roots = Roots(j);
            for (int node = 0; node < _network.NodeCount; node++)
            {
                int component = _phases[j].Component(node);
                if (_isPinned[j][component])
                {
                    continue;
                }

                Interval potential = roots[component] + _phases[j].Potential(node);
                if (!potential.Equals(_potentials[j][node]))
                {
                    changed = true;
                    if (isLate)
                    {
                        _endless.Add((j, component));
                        potential = Interval.Unbounded;
                    }

                    _potentials[j][node] = potential;
                }
            }
        }

        return changed;
    }

    // The potential of the first node of each floating component, from what every member allows.
    private Interval[] Roots(int phase)
    {
        PhaseNetwork network = _phases[phase];
        Interval[] before = _potentials[(phase + _phases.Length - 1) % _phases.Length];
        var roots = new Interval[network.ComponentCount];
        for (int k = 0; k < roots.Length; k++)
        {
            if (network.IsAdrift[k] || network.IsUnknown[k] || _endless.Contains((phase, k)))
            {
                roots[k] = Interval.Unbounded;
            }
        }

        for (int node = 0; node < _network.NodeCount; node++)
        {
            Allow(node, before[node]);
        }

        if (_assumption == FloatingAssumption.HeldOrLeaking)
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

        void Allow(int node, Interval potential)
        {
            int k = network.Component(node);
            roots[k] = roots[k].Hull(potential - network.Potential(node));
        }
    }
}
