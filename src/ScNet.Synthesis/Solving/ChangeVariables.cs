using Fractions;
using Google.OrTools.Sat;
using ScNet.Search;
using ScNet.Synthesis.Candidates;

namespace ScNet.Synthesis.Solving;

/// <summary>
/// Which places are wires and which are closed in each phase, and what that means for the voltages right after a change
/// of ratio (docs/theory/smallest-converters.md, "At changes"). What a way over closed places asks for is added when a
/// choice violates it.
/// </summary>
internal sealed class ChangeVariables
{
    private readonly SynthesisModel _model;
    private readonly BoolVar[] _wires;
    private readonly BoolVar[][][] _closed;

    // per ratio the voltages of its networks, each with the variable that says that they are those
    private readonly (IReadOnlyList<long> Voltages, BoolVar Chosen)[][] _voltages;
    private readonly HashSet<string> _known = [];

    private ChangeVariables(SynthesisModel model)
    {
        _model = model;
        _wires = [.. model.Places.Select(_ => model.Model.NewBoolVar(""))];
        _closed = [.. model.Modes.Select(m => m.States.Select(_ => model.Places.Select(_ => model.Model.NewBoolVar("")).ToArray()).ToArray())];
        _voltages = [.. model.Modes.Select(m => m.Candidates.Pairs
            .Select((pair, p) => (m.Candidates.Groups[pair.First].Voltages, Chosen: m.Pairs[p]))
            .GroupBy(x => string.Join(' ', x.Voltages))
            .Select(g => (g.First().Voltages, model.AnyOf(g.Select(x => x.Chosen))))
            .ToArray())];
    }

    /// <summary>Adds them to a model.</summary>
    public static ChangeVariables Of(SynthesisModel model)
    {
        ChangeVariables made = new(model);
        made.TellWires();
        for (int mode = 0; mode < model.Modes.Count; mode++)
        {
            for (int phase = 0; phase < model.Modes[mode].States.Count; phase++)
            {
                made.Close(model.Modes[mode].States[phase], made._closed[mode][phase]);
            }
        }

        return made;
    }

    /// <summary>What is closed in a solution.</summary>
    public Closings Read(CpSolver solver, IReadOnlyList<IReadOnlyList<PhaseState>> modes)
    {
        SwitchPlace[] Chosen(IEnumerable<BoolVar> literals) => [.. literals.Zip(_model.Places).Where(x => solver.BooleanValue(x.First)).Select(x => x.Second)];
        SwitchPlace[] wires = Chosen(_wires);
        return new Closings(
            Array.AsReadOnly(wires),
            Array.AsReadOnly<IReadOnlyList<IReadOnlyList<SwitchPlace>>>([.. modes.Select((states, m) => Array.AsReadOnly<IReadOnlyList<SwitchPlace>>(
                [.. states.Select((state, j) => Closings.Needed(state, wires, [.. Chosen(_closed[m][j]).Except(wires)]))]))]));
    }

    /// <summary>Adds what a choice violates to the model.</summary>
    /// <returns>Whether it violates nothing.</returns>
    /// <exception cref="InvalidOperationException">It violates what was added before: a mistake in this library.</exception>
    public bool Accept(Choice choice, CpSolver solver)
    {
        ChangePath[] violated = [.. Violated(choice, solver).DistinctBy(p => p.Key)];
        foreach (ChangePath path in violated)
        {
            if (!_known.Add(path.Key))
            {
                throw new InvalidOperationException($"The solver returned what was forbidden, which is a mistake of this library: {path.Key}.");
            }

            Add(path);
        }

        return violated.Length == 0;
    }

    // u 0: it is a switch; a stack's devices in their order
    private void TellWires()
    {
        for (int e = 0; e < _wires.Length; e++)
        {
            IReadOnlyList<BoolVar> reaches = _model.Reaches[e];
            _model.Model.AddImplication(_wires[e], _model.Exists[e]);
            _model.Model.AddImplication(_wires[e], reaches[0].Not());
            _model.Model.AddBoolOr([_model.Exists[e].Not(), reaches[0], _wires[e]]);
            for (int step = 1; step < reaches.Count; step++)
            {
                _model.Model.AddImplication(reaches[step], reaches[step - 1]);
            }

            foreach (BoolVar closed in _closed.SelectMany(m => m).Select(phase => phase[e]))
            {
                _model.Model.AddImplication(_wires[e], closed);
                _model.Model.AddImplication(closed, _model.Exists[e]);
            }
        }
    }

    // the nodes of the chosen wiring are joined, and no others of different potential
    private void Close(IReadOnlyList<(PhaseState State, BoolVar Chosen)> states, BoolVar[] closed)
    {
        Dictionary<int, BoolVar> connected = [];
        foreach (IGrouping<Wiring, (PhaseState State, BoolVar Chosen)> wiring in states.GroupBy(s => s.State.Wiring))
        {
            BoolVar isUsed = _model.AnyOf(wiring.Select(s => s.Chosen));
            foreach (int block in wiring.First().State.Blocks)
            {
                if (!connected.TryGetValue(block, out BoolVar? isJoined))
                {
                    connected.Add(block, isJoined = _model.Model.NewBoolVar(""));
                }

                _model.Model.AddImplication(isUsed, isJoined);
            }
        }

        _model.JoinWithin(connected, closed);
        foreach (IGrouping<string, (PhaseState State, BoolVar Chosen)> alike in states.GroupBy(s => string.Join(' ', s.State.Potentials)))
        {
            BoolVar isUsed = _model.AnyOf(alike.Select(s => s.Chosen));
            for (int e = 0; e < closed.Length; e++)
            {
                if (alike.First().State.Potentials[_model.Places[e].First] != alike.First().State.Potentials[_model.Places[e].Second])
                {
                    _model.Model.AddImplication(isUsed, closed[e].Not());
                }
            }
        }
    }

    private IEnumerable<ChangePath> Violated(Choice choice, CpSolver solver)
    {
        int[] positions = [.. Enumerable.Range(0, _model.Places.Count)];
        int[] wires = [.. positions.Where(e => solver.BooleanValue(_wires[e]))];
        int[] switches = [.. positions.Where(e => solver.BooleanValue(_model.Exists[e])).Except(wires)];
        for (int to = 0; to < choice.Modes.Count; to++)
        {
            for (int phase = 0; phase < choice.Modes[to].Count; phase++)
            {
                int[] closed = [.. positions.Where(e => choice.Closings!.Closed[to][phase].Contains(_model.Places[e]))];
                foreach (ChangePath path in ChangePath.All(_model.CapacitorCount, _model.Places, switches, wires, closed))
                {
                    for (int from = 0; from < choice.Modes.Count; from++)
                    {
                        if (from != to && IsViolated(path, from, to, closed.Contains(path.Switch), solver))
                        {
                            yield return path;
                        }
                    }
                }
            }
        }
    }

    private bool IsViolated(ChangePath path, int from, int to, bool isClosed, CpSolver solver)
    {
        ModeVariables mode = _model.Modes[from];
        int pair = Enumerable.Range(0, mode.Pairs.Count).Single(p => solver.BooleanValue(mode.Pairs[p]));
        Fraction volts = path.Volts(mode.Candidates.Groups[mode.Candidates.Pairs[pair].First].Voltages, InputVolts(from, to));
        return _model.Steps.Devices(volts) > Math.Max(1, _model.Reaches[path.Switch].Count(r => solver.BooleanValue(r)))
            || (!isClosed && _model.Blocks.Count > 0 && !volts.IsZero && !solver.BooleanValue(_model.Blocks[path.Switch][volts.IsPositive ? 0 : 1]));
    }

    // for every change, whatever closes the way
    private void Add(ChangePath path)
    {
        for (int from = 0; from < _voltages.Length; from++)
        {
            for (int to = 0; to < _voltages.Length; to++)
            {
                if (from != to)
                {
                    var held = _voltages[from].Select(v => (v.Chosen, Volts: path.Volts(v.Voltages, InputVolts(from, to)))).ToArray();
                    foreach (BoolVar[] closed in _closed[to])
                    {
                        Add(path, closed, held);
                    }
                }
            }
        }
    }

    private void Add(ChangePath path, BoolVar[] closed, (BoolVar Chosen, Fraction Volts)[] held)
    {
        IReadOnlyList<BoolVar> reaches = _model.Reaches[path.Switch];
        for (int step = 1; step <= reaches.Count; step++)
        {
            Forbid(path, closed, held.Where(h => _model.Steps.Devices(h.Volts) > step), step < reaches.Count ? [reaches[step]] : []);
        }

        if (_model.Blocks.Count > 0)
        {
            Forbid(path, closed, held.Where(h => h.Volts.IsPositive), [closed[path.Switch], _model.Blocks[path.Switch][0]]);
            Forbid(path, closed, held.Where(h => h.Volts.IsNegative), [closed[path.Switch], _model.Blocks[path.Switch][1]]);
        }
    }

    // where the way is closed and none of its places is cut short, one of the others must hold
    private void Forbid(ChangePath path, BoolVar[] closed, IEnumerable<(BoolVar Chosen, Fraction Volts)> held, IEnumerable<BoolVar> others)
    {
        BoolVar[] chosen = [.. held.Select(h => h.Chosen)];
        if (chosen.Length > 0)
        {
            _model.Model.AddBoolOr([
                _model.AnyOf(chosen).Not(),
                _model.Exists[path.Switch].Not(),
                _wires[path.Switch],
                .. path.Joined.Select(e => closed[e].Not()),
                .. path.Shortcuts.Select(e => _wires[e]),
                .. others]);
        }
    }

    // as of a change of mode: what both have in common, or what lies between
    private Fraction InputVolts(int from, int to) =>
        ExactDecimal.Of(Math.Max(_model.Modes[from].Candidates.Wanted.HighestInputVolts, _model.Modes[to].Candidates.Wanted.HighestInputVolts));
}
