using Fractions;
using ScNet.Kernel;

namespace ScNet.Stress;

/// <summary>The first instant of one phase of a new mode, with the capacitor voltages of the old one.</summary>
internal sealed class ChangedPhase
{
    private readonly Converter _converter;
    private readonly PhaseNetwork _network;
    private readonly ModeStress _from;
    private readonly int _phase;

    public ChangedPhase(ModeStress from, Mode to, int phase)
    {
        _converter = from.Analysis.Converter;
        _from = from;
        _phase = phase;
        _network = PhaseNetwork.Of(_converter, from.Pieces, from.Held, to.Index, phase);
    }

    public bool IsExact => _network.IsExact;

    /// <summary>The voltage across a switch, open or closed.</summary>
    public VoltageSpan Across(int @switch)
    {
        int first = _converter.Network.SwitchFirst[@switch], second = _converter.Network.SwitchSecond[@switch];
        int a = _network.Component(first), b = _network.Component(second);
        if (a == b)
        {
            Interval difference = _network.Difference(first, second);
            return VoltageSpan.Of(difference, difference.IsBounded && difference.Low == difference.High ? VoltageBasis.Fixed : VoltageBasis.Surge);
        }

        return VoltageSpan.Of(Potential(first) - Potential(second), VoltageBasis.Floating);
    }

    public IEnumerable<LoopSurge> Surges(InputVoltageRange input)
    {
        foreach ((Fraction surge, List<ResistiveEdge> edges, HashSet<int> branches) in _network.Conflicts())
        {
            IEnumerable<int> capacitors = branches.Where(b => b < _converter.Network.CapacitorCount)
                .Concat(edges.Where(e => !e.IsSwitch).Select(e => e.Element)).Order();
            yield return new LoopSurge(
                _phase + 1,
                surge,
                (surge * input.ExactMaximum).ToDouble(),
                [.. edges.Where(e => e.IsSwitch).Select(e => e.Element).Order().Select(s => _converter.Switches[s])],
                [.. capacitors.Select(c => _converter.Capacitors[c])]);
        }
    }

    // A floating component starts from the charge that its parasitics held in whichever phase the change ends.
    private Interval Potential(int node)
    {
        int component = _network.Component(node);
        if (component == 0)
        {
            return _network.Difference(node, SwitchedNetwork.Reference);
        }

        if (_network.IsAdrift[component] || _network.IsUnknown[component])
        {
            return Interval.Unbounded;
        }

        Interval hull = default;
        for (int other = 0; other < _converter.Network.NodeCount; other++)
        {
            if (_network.Component(other) == component)
            {
                hull = hull.Hull(_from.Spans.OverAllPhases(other) + _network.Difference(node, other));
            }
        }

        return hull;
    }
}
