using Fractions;
using ScNet.Analysis;
using ScNet.Kernel;
using ScNet.Stress;

namespace ScNet.Design.Losses;

/// <summary>
/// How nodes and open switches swing over the phases of a mode without load, also where a node floats in some phase.
/// </summary>
/// <remarks>
/// In this order: the potentials that the ideal point fixes; the bounds of floating nodes that do not leak, which are
/// one value where a node keeps its potential of the phase before; across a capacitor, whose own voltage does not move,
/// the swing of its other plate; no swing at all for a node that only open switches and capacitors touch. What is left is
/// unknown. Rules of bounds: docs/theory/stress.md, "Floating nodes".
/// </remarks>
internal sealed class IdealVoltages
{
    private readonly ModeAnalysis _analysis;
    private readonly SwitchedNetwork _network;
    private readonly Lazy<ModeStress> _stress;
    private readonly VoltageProfile?[] _nodes;
    private readonly bool[] _isIsolated;

    private IdealVoltages(ModeAnalysis analysis)
    {
        _analysis = analysis;
        _network = analysis.Converter.Network;
        _stress = new(() => ModeStress.Of(analysis, new Interval<double>(1, 1), openSwitchesLeak: false));
        _isIsolated = Isolated();
        _nodes = [.. Enumerable.Range(0, _network.NodeCount).Select(n => OfValues(analysis.IdealPoint.NodePotentials[n]) ?? OfSpans(_stress.Value.NodePotentials[n]))];
        SpreadOverCapacitors();
        for (int node = 0; node < _nodes.Length; node++)
        {
            _nodes[node] ??= _isIsolated[node] ? new VoltageProfile(new (double, double)[_network.PhaseCount], isRelative: true, floats: true) : null;
        }
    }

    /// <summary>Finds the swings of a mode.</summary>
    public static IdealVoltages Of(ModeAnalysis analysis) => new(analysis);

    /// <summary>The potential of one node against another; null where it is unknown.</summary>
    public VoltageProfile? Between(int first, int second) => VoltageProfile.Difference(_nodes[first], _nodes[second]);

    /// <summary>The voltage across a switch, zero while it is closed; null where it is unknown.</summary>
    public VoltageProfile? Across(int @switch) => OfValues(_analysis.BlockingVoltages.Switches[@switch])
        ?? OfSpans(_stress.Value.Switches[@switch].Phases)
        ?? (IsAlwaysOpen(@switch) ? Between(_network.SwitchFirst[@switch], _network.SwitchSecond[@switch]) : null);

    /// <summary>Whether nothing but open switches and capacitors touches an end of a switch, so that no current can come from there.</summary>
    public bool EndsInTheAir(int @switch) => _isIsolated[_network.SwitchFirst[@switch]] || _isIsolated[_network.SwitchSecond[@switch]];

    private static VoltageProfile? OfValues(PhaseValues values) => values.All(v => v.IsDetermined)
        ? new VoltageProfile([.. values.Select(v => (v.ToDouble(), v.ToDouble()))])
        : null;

    private static VoltageProfile? OfSpans(PerPhase<VoltageSpan> spans) => spans.All(s => s.IsDetermined)
        ? new VoltageProfile([.. spans.Select(s => Ends(s.PerVoltOfInput))], floats: true)
        : null;

    private static (double Low, double High) Ends(Interval<Fraction> span) => (span.Minimum!.Value.ToDouble(), span.Maximum!.Value.ToDouble());

    private bool IsAlwaysOpen(int @switch)
    {
        bool isOpen = true;
        for (int j = 0; j < _network.PhaseCount; j++)
        {
            isOpen &= !_network.ClosedIn(_analysis.Mode.Index, j)[@switch];
        }

        return isOpen;
    }

    // nodes that only capacitors and switches which never close touch, and so do all that capacitors join them to
    private bool[] Isolated()
    {
        DisjointSets joined = new(_network.NodeCount);
        for (int c = 0; c < _network.CapacitorCount; c++)
        {
            joined.Join(_network.BranchFirst[c], _network.BranchSecond[c]);
        }

        var isTouched = new bool[_network.NodeCount];
        for (int branch = _network.CapacitorCount; branch < _network.BranchCount; branch++)
        {
            isTouched[joined.Find(_network.BranchFirst[branch])] = isTouched[joined.Find(_network.BranchSecond[branch])] = true;
        }

        for (int s = 0; s < _network.SwitchCount; s++)
        {
            if (!IsAlwaysOpen(s))
            {
                isTouched[joined.Find(_network.SwitchFirst[s])] = isTouched[joined.Find(_network.SwitchSecond[s])] = true;
            }
        }

        return [.. Enumerable.Range(0, _network.NodeCount).Select(n => !isTouched[joined.Find(n)])];
    }

    private void SpreadOverCapacitors()
    {
        for (bool changed = true; changed;)
        {
            changed = false;
            for (int c = 0; c < _network.CapacitorCount; c++)
            {
                int first = _network.BranchFirst[c], second = _network.BranchSecond[c];
                bool isFirstKnown = _nodes[first] is not null;
                if (isFirstKnown != _nodes[second] is not null)
                {
                    (int known, int other) = isFirstKnown ? (first, second) : (second, first);
                    _nodes[other] = _nodes[known]!.ButForAConstant();
                    changed = true;
                }
            }
        }
    }
}
