using Fractions;
using ScNet.Kernel;

namespace ScNet.Stress;

/// <summary>The first instant of one phase of a new mode, with the capacitor voltages of the old one.</summary>
internal sealed class ChangedPhase
{
    private readonly Converter _converter;
    private readonly PhaseNetwork _network;
    private readonly ModeStress _from;
    private ILookup<int, int>? _members;
    private Interval<Fraction>?[]? _roots;

    /// <summary>Contracts the phase.</summary>
    /// <param name="from">The old mode.</param>
    /// <param name="corner">The voltages of its idle capacitors.</param>
    /// <param name="to">The new mode.</param>
    /// <param name="phase">The phase of the new mode, from 0.</param>
    public ChangedPhase(ModeStress from, HeldCorner corner, Mode to, int phase)
    {
        _converter = from.Analysis.Converter;
        _from = from;
        _network = PhaseNetwork.Of(_converter, corner.Pieces, corner.Held, to.Index, phase);
    }

    public bool IsExact => _network.IsExact;

    /// <summary>The voltage across a switch, open or closed.</summary>
    public VoltageSpan Across(int @switch)
    {
        int first = _converter.Network.SwitchFirst[@switch], second = _converter.Network.SwitchSecond[@switch];
        if (_network.Component(first) == _network.Component(second))
        {
            Interval<Fraction> difference = _network.Difference(first, second);
            return new VoltageSpan(difference, difference.IsPoint ? VoltageBasis.Fixed : VoltageBasis.Surge);
        }

        return new VoltageSpan(Potential(first).Minus(Potential(second)), VoltageBasis.Floating);
    }

    /// <summary>The loops that conflict: the edge that closes each, the surge, its switches and its capacitors.</summary>
    public IEnumerable<(int Chord, Fraction Surge, IReadOnlyList<int> Switches, IReadOnlyList<int> Capacitors)> Surges()
    {
        foreach ((int chord, Fraction surge, List<ResistiveEdge> edges, HashSet<int> branches) in _network.Conflicts())
        {
            yield return (
                chord,
                surge,
                [.. edges.Where(e => e.IsSwitch).Select(e => e.Element).Order()],
                [.. branches.Where(b => b < _converter.Network.CapacitorCount).Concat(edges.Where(e => !e.IsSwitch).Select(e => e.Element)).Order()]);
        }
    }

    /// <summary>The capacitors of unknown voltage on which the voltage across a switch depends, and its ends that nothing bounds.</summary>
    public (IReadOnlyList<Capacitor> Idle, IReadOnlyList<string> Floating) ReasonOf(int @switch)
    {
        int first = _converter.Network.SwitchFirst[@switch], second = _converter.Network.SwitchSecond[@switch];
        int[] ends = [.. new[] { first, second }.Where(node => !Potential(node).IsDetermined).Distinct()];
        IEnumerable<int> idle = ends.SelectMany(_network.UnknownCapacitors).Distinct().Order();
        return ([.. idle.Select(c => _converter.Capacitors[c])],
            [.. ends.Select(node => _converter.Nodes[node])]);
    }

    // few phases need the nodes of a floating component
    private ILookup<int, int> Members => _members ??= Enumerable.Range(0, _converter.Network.NodeCount).ToLookup(_network.Component);

    private Interval<Fraction> Potential(int node)
    {
        int component = _network.Component(node);
        return component == 0 ? _network.Difference(node, SwitchedNetwork.Reference)
            : _network.IsAdrift[component] ? default
            : _network.Spread[component].IsZero ? Root(component).Plus(_network.Potential(node))
            : Held(node, component);
    }

    private Interval<Fraction> Root(int component) => (_roots ??= new Interval<Fraction>?[_network.ComponentCount])[component] ??= RootOf(component);

    // A floating component starts from the charge that its parasitics held in whichever phase the change ends.
    private Interval<Fraction> RootOf(int component)
    {
        Interval<Fraction> hull = Intervals.Empty<Fraction>();
        foreach (int member in Members[component])
        {
            hull = hull.Hull(_from.OverAllPhases[member].Minus(_network.Potential(member)));
        }

        return hull;
    }

    // where its own loops conflict, its nodes do not move as one
    private Interval<Fraction> Held(int node, int component)
    {
        Interval<Fraction> hull = Intervals.Empty<Fraction>();
        foreach (int member in Members[component])
        {
            hull = hull.Hull(_from.OverAllPhases[member].Plus(_network.Difference(node, member)));
        }

        return hull;
    }
}
