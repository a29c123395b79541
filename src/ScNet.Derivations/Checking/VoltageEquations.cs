using Fractions;
using ScNet.Kernel;

namespace ScNet.Derivations.Checking;

/// <summary>Kirchhoff's voltage law: round every fundamental loop of every phase, and across open switches.</summary>
internal sealed class VoltageEquations
{
    private readonly EquationSet _set;
    private readonly SwitchedNetwork _network;

    private VoltageEquations(EquationSet set)
    {
        _set = set;
        _network = set.Network;
    }

    public static void AddTo(EquationSet set, IEnumerable<(int Switch, int Phase)> blocking)
    {
        VoltageEquations equations = new(set);
        for (int phase = 0; phase < set.Network.PhaseCount; phase++)
        {
            for (int branch = 0; branch < set.Network.BranchCount; branch++)
            {
                bool isHeld = branch != set.Network.OutputBranch || set.Network.Load == LoadKind.Stiff;
                if (isHeld && !set.Forests[phase].IsTreeBranch(branch))
                {
                    equations.AddLoop(phase, branch);
                }
            }
        }

        if (set.Network.Load == LoadKind.Current)
        {
            equations.AddAverage();
        }

        foreach ((int s, int phase) in blocking.Distinct())
        {
            equations.AddAcross(s, phase);
        }
    }

    // Through the tree from the branch's first terminal to its second, and back through the branch; from the input on where it takes part.
    private void AddLoop(int phase, int branch)
    {
        List<(int Branch, int Sign)> loop = Path(phase, _network.BranchFirst[branch], _network.BranchSecond[branch]);
        loop.Add((branch, -1));
        int input = loop.FindIndex(step => step.Branch == _network.InputBranch);
        Add(EquationKind.Loop, branch, phase, loop.Skip(input).Concat(loop.Take(input)).Select(step => (step.Branch, new Fraction(step.Sign))));
    }

    private void AddAverage() => Add(
        EquationKind.AverageLoop,
        0,
        0,
        [
            .. Enumerable.Range(0, _network.PhaseCount).SelectMany(j => Path(j, _network.Output, SwitchedNetwork.Reference)
                .Select(step => (step.Branch, _network.Duties[j] * step.Sign))),
            (_network.OutputBranch, Fraction.MinusOne),
        ]);

    private void AddAcross(int s, int phase)
    {
        PhaseForest forest = _set.Forests[phase];
        int first = _network.SwitchFirst[s], second = _network.SwitchSecond[s];
        bool isOpen = !_network.ClosedIn(_set.Topology.Mode.Index, phase)[s];
        if (isOpen && forest.Component[forest.Group[first]] == forest.Component[forest.Group[second]])
        {
            Add(
                EquationKind.Across,
                s,
                phase,
                Path(phase, first, second).Select(step => (step.Branch, new Fraction(-step.Sign))),
                _set.Unknowns.Blocking(s, phase));
        }
    }

    // The branches from one node to another, with the signs that make their voltages the difference of potential.
    private List<(int Branch, int Sign)> Path(int phase, int from, int to)
    {
        List<(int Branch, int Sign)> up = [], down = [];
        TreePath path = _set.Forests[phase].Path(from, to);
        while (path.MoveNext())
        {
            (path.IsUp ? up : down).Add((path.Edge, path.Sign));
        }

        down.Reverse();
        return [.. up, .. down];
    }

    // The input is the unit of voltage, so what it adds on the left is a constant on the right.
    private void Add(EquationKind kind, int place, int phase, IEnumerable<(int Branch, Fraction Sign)> steps, int subject = Unknowns.None)
    {
        List<int> order = [];
        Dictionary<int, Fraction> terms = [];
        Fraction constant = Fraction.Zero;
        if (subject != Unknowns.None)
        {
            Collect(subject, Fraction.One);
        }

        foreach ((int branch, Fraction sign) in steps)
        {
            if (branch == _network.InputBranch)
            {
                constant -= sign;
            }
            else
            {
                Collect(branch == _network.OutputBranch ? _set.Unknowns.Ratio : _set.Unknowns.Voltage(branch), sign);
            }
        }

        (int, Fraction)[] left = [.. order.Select(u => (u, terms[u])).Where(t => !t.Item2.IsZero)];
        if (left.Length > 0)
        {
            _set.Add(kind, place, phase, left, constant);
        }

        void Collect(int unknown, Fraction coefficient)
        {
            if (terms.TryGetValue(unknown, out Fraction before))
            {
                terms[unknown] = before + coefficient;
            }
            else
            {
                terms.Add(unknown, coefficient);
                order.Add(unknown);
            }
        }
    }
}
