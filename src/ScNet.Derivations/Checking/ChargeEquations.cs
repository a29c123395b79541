using Fractions;
using ScNet.Kernel;

namespace ScNet.Derivations.Checking;

/// <summary>Kirchhoff's current law, charge balance, and the unit of charge that the load takes.</summary>
internal sealed class ChargeEquations
{
    private readonly EquationSet _set;
    private readonly SwitchedNetwork _network;
    private readonly Unknowns _unknowns;
    private readonly Dictionary<int, Fraction>[] _atNode;

    private ChargeEquations(EquationSet set)
    {
        _set = set;
        _network = set.Network;
        _unknowns = set.Unknowns;
        _atNode = [.. Enumerable.Range(0, _network.NodeCount).Select(_ => new Dictionary<int, Fraction>())];
    }

    public static void AddTo(EquationSet set)
    {
        ChargeEquations equations = new(set);
        equations.AddPeriod();
        for (int phase = 0; phase < set.Network.PhaseCount; phase++)
        {
            equations.AddSwitchStates(phase);
            equations.AddCurrentLaw(phase);
        }
    }

    private void AddPeriod()
    {
        int[] phases = [.. Enumerable.Range(0, _network.PhaseCount)];
        for (int c = 0; c < _network.CapacitorCount; c++)
        {
            _set.Add(EquationKind.Balance, c, 0, phases.Select(j => (_unknowns.Capacitor(c, j), Fraction.One)), 0);
        }

        _set.Add(EquationKind.Period, 0, 0, phases.Select(j => (_unknowns.Output(j), Fraction.One)), 1);
        _set.Add(EquationKind.Power, 0, 0, [(_unknowns.Ratio, Fraction.One), .. phases.Select(j => (_unknowns.Input(j), Fraction.MinusOne))], 0);
        if (_network.Load == LoadKind.Current)
        {
            foreach (int j in phases)
            {
                _set.Add(EquationKind.LoadShare, 0, j, [(_unknowns.Output(j), Fraction.One)], _network.Duties[j]);
            }
        }

        if (_set.Topology.Loops!.Repeats is { } repeats)
        {
            foreach (int c in Enumerable.Range(0, repeats.Count).Select(l => repeats.Branches(l)[0]).Distinct())
            {
                foreach (int j in phases)
                {
                    _set.Add(EquationKind.Held, c, j, [(_unknowns.Capacitor(c, j), Fraction.One)], 0);
                }
            }
        }
    }

    private void AddSwitchStates(int phase)
    {
        ReadOnlySpan<bool> closed = _network.ClosedIn(_set.Topology.Mode.Index, phase);
        for (int s = 0; s < closed.Length; s++)
        {
            (EquationKind kind, int unknown) = closed[s]
                ? (EquationKind.ClosedSwitch, _unknowns.Blocking(s, phase))
                : (EquationKind.OpenSwitch, _unknowns.Switch(s, phase));
            _set.Add(kind, s, phase, [(unknown, Fraction.One)], 0);
        }
    }

    // At every node, and over every contracted node of several, where the charges of the switches cancel.
    private void AddCurrentLaw(int phase)
    {
        Array.ForEach(_atNode, terms => terms.Clear());
        for (int c = 0; c < _network.CapacitorCount; c++)
        {
            Flow(_unknowns.Capacitor(c, phase), _network.BranchFirst[c], _network.BranchSecond[c]);
        }

        ReadOnlySpan<bool> closed = _network.ClosedIn(_set.Topology.Mode.Index, phase);
        for (int s = 0; s < closed.Length; s++)
        {
            if (closed[s])
            {
                Flow(_unknowns.Switch(s, phase), _network.SwitchFirst[s], _network.SwitchSecond[s]);
            }
        }

        Flow(_unknowns.Input(phase), SwitchedNetwork.Reference, _network.Input);
        Flow(_unknowns.Output(phase), _network.Output, SwitchedNetwork.Reference);
        PhaseForest forest = _set.Forests[phase];
        for (int group = 0; group < forest.GroupCount; group++)
        {
            ReadOnlySpan<int> members = forest.Members(group);
            if (members.Length > 1)
            {
                Emit(group == 0 ? EquationKind.ReferenceGroup : EquationKind.Group, group, phase, Sum(members));
            }
        }

        for (int node = 0; node < _network.NodeCount; node++)
        {
            EquationKind kind = node == SwitchedNetwork.Reference ? EquationKind.ReferenceNode : EquationKind.Node;
            Emit(kind, node, phase, _atNode[node]);
        }
    }

    private void Flow(int unknown, int from, int to)
    {
        if (from != to)
        {
            _atNode[from].Add(unknown, Fraction.One);
            _atNode[to].Add(unknown, Fraction.MinusOne);
        }
    }

    private Dictionary<int, Fraction> Sum(ReadOnlySpan<int> members)
    {
        Dictionary<int, Fraction> sum = [];
        foreach (int node in members)
        {
            foreach ((int unknown, Fraction coefficient) in _atNode[node])
            {
                if (!sum.TryAdd(unknown, coefficient))
                {
                    sum.Remove(unknown);
                }
            }
        }

        return sum;
    }

    private void Emit(EquationKind kind, int place, int phase, Dictionary<int, Fraction> terms)
    {
        if (terms.Count > 0)
        {
            _set.Add(kind, place, phase, terms.OrderBy(t => t.Key).Select(t => (t.Key, t.Value)), 0);
        }
    }
}
