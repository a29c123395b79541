using Fractions;
using Google.OrTools.Sat;
using ScNet.Search;
using ScNet.Synthesis.Candidates;

namespace ScNet.Synthesis.Solving;

/// <summary>
/// The choice of a network per ratio and of places for switches as a model of whole numbers
/// (docs/theory/smallest-converters.md).
/// </summary>
internal sealed class SynthesisModel
{
    private readonly Dictionary<int, BoolVar> _connected = [];
    private readonly List<ModeVariables> _modes = [];
    private readonly DeviceSteps _steps;

    // step 0: it is opened at some voltage, so that it is a switch and no wire; step n: more than n devices are needed
    private readonly BoolVar[][] _reaches;
    private readonly BoolVar[][] _blocks;
    private readonly Dictionary<string, BoolVar> _anyOf = [];
    private readonly Causes? _causes;

    // per place the states in which it may be closed
    private readonly List<BoolVar>[] _closable;

    private SynthesisModel(int capacitors, DeviceSteps steps, bool blocksOneWay, bool isForListing)
    {
        _causes = isForListing ? new Causes(Model) : null;
        _steps = steps;
        CapacitorCount = capacitors;
        Places = SwitchPlace.All(capacitors);
        _closable = [.. Places.Select(_ => new List<BoolVar>())];
        Exists = [.. Places.Select(p => Model.NewBoolVar($"x{p.First}.{p.Second}"))];
        _reaches = [.. Places.Select(p => Enumerable.Range(0, steps.Costs.Count).Select(n => Model.NewBoolVar($"d{p.First}.{p.Second}.{n}")).ToArray())];
        _blocks = blocksOneWay ? [.. Places.Select(p => new[] { Model.NewBoolVar($"f{p.First}.{p.Second}"), Model.NewBoolVar($"b{p.First}.{p.Second}") })] : [];
        Cost = LinearExpr.WeightedSum(_reaches.SelectMany(r => r), _reaches.SelectMany(_ => steps.Costs));
    }

    /// <summary>The model.</summary>
    public CpModel Model { get; } = new();

    /// <summary>The number of flying capacitors.</summary>
    public int CapacitorCount { get; }

    /// <summary>The pairs of terminals.</summary>
    public IReadOnlyList<SwitchPlace> Places { get; }

    /// <summary>Per place whether there is a switch or a wire.</summary>
    public IReadOnlyList<BoolVar> Exists { get; }

    /// <summary>The choice of each ratio.</summary>
    public IReadOnlyList<ModeVariables> Modes => _modes;

    /// <summary>Per place and number of devices whether it needs more of them.</summary>
    public IReadOnlyList<IReadOnlyList<BoolVar>> Reaches => _reaches;

    /// <summary>Per place whether it blocks forwards and backwards; empty where switches may block both ways.</summary>
    public IReadOnlyList<IReadOnlyList<BoolVar>> Blocks => _blocks;

    /// <summary>How many devices a switch needs.</summary>
    public DeviceSteps Steps => _steps;

    /// <summary>What holds right after changes of ratio; null where nothing is asked of them.</summary>
    public ChangeVariables? Changes { get; private set; }

    /// <summary>The cost.</summary>
    public LinearExpr Cost { get; }

    /// <summary>What every solution costs at most.</summary>
    public int LargestCost => Places.Count * _steps.Costs.Sum();

    /// <summary>Makes the model.</summary>
    public static SynthesisModel Of(int capacitors, IReadOnlyList<ModeCandidates> modes, DeviceSteps steps, bool blocksOneWay, bool holdsAtChanges = false) =>
        Made(new(capacitors, steps, blocksOneWay, isForListing: false), modes, holdsAtChanges);

    /// <summary>
    /// The same, without places that are open throughout, and with every variable settled by places and states, so that no two solutions are one choice;
    /// for changes of ratio nothing is asked.
    /// </summary>
    public static SynthesisModel ForListing(int capacitors, IReadOnlyList<ModeCandidates> modes, DeviceSteps steps, bool blocksOneWay)
    {
        SynthesisModel made = Made(new(capacitors, steps, blocksOneWay, isForListing: true), modes, holdsAtChanges: false);
        for (int e = 0; e < made.Places.Count; e++)
        {
            made.Model.AddBoolOr([made.Exists[e].Not(), .. made._closable[e].DistinctBy(l => l.Index)]);
        }

        made._causes!.Settle([.. made._connected.Values, .. made._reaches.SelectMany(r => r), .. made._blocks.SelectMany(b => b), .. made._anyOf.Values]);
        return made;
    }

    private static SynthesisModel Made(SynthesisModel made, IReadOnlyList<ModeCandidates> modes, bool holdsAtChanges)
    {
        foreach (BoolVar[] directions in made._blocks)
        {
            made.Model.AddAtMostOne(directions);
        }

        foreach (ModeCandidates candidates in modes)
        {
            ModeVariables mode = ModeVariables.Of(made.Model, candidates);
            made._modes.Add(mode);
            foreach (IReadOnlyList<(PhaseState State, BoolVar Chosen)> states in mode.States)
            {
                made.AskForJoins(states);
                made.AskForBlocking(states, candidates);
            }
        }

        made.JoinWithin(made._connected, made.Exists);
        made.Changes = holdsAtChanges ? ChangeVariables.Of(made) : null;
        return made;
    }

    // a node of a chosen wiring is in one piece
    private void AskForJoins(IReadOnlyList<(PhaseState State, BoolVar Chosen)> states)
    {
        foreach (IGrouping<Wiring, (PhaseState State, BoolVar Chosen)> wiring in states.GroupBy(s => s.State.Wiring))
        {
            BoolVar isUsed = AnyOf(wiring.Select(s => s.Chosen));
            foreach (int block in wiring.First().State.Blocks)
            {
                if (!_connected.TryGetValue(block, out BoolVar? connected))
                {
                    _connected.Add(block, connected = Model.NewBoolVar($"c{block}"));
                }

                Model.AddImplication(isUsed, connected);
                _causes?.Add(connected, isUsed);
            }
        }
    }

    // a place whose ends differ in potential is open there, and has the devices for it
    private void AskForBlocking(IReadOnlyList<(PhaseState State, BoolVar Chosen)> states, ModeCandidates candidates)
    {
        (PhaseState State, BoolVar Chosen)[] byPotential = [.. states
            .GroupBy(s => string.Join(' ', s.State.Potentials))
            .Select(g => (g.First().State, AnyOf(g.Select(s => s.Chosen))))];
        for (int e = 0; e < Places.Count; e++)
        {
            (BoolVar Chosen, Fraction Volts, int Devices)[] needs = [..
                from s in byPotential
                let volts = candidates.Volts(s.State, Places[e].First, Places[e].Second)
                select (s.Chosen, volts, _steps.Devices(volts))];
            _closable[e].AddRange(needs.Where(n => n.Devices == 0).Select(n => n.Chosen));
            for (int step = 0; step <= _steps.Costs.Count; step++)
            {
                Require(e, needs.Where(n => n.Devices > step).Select(n => n.Chosen), step < _steps.Costs.Count ? _reaches[e][step] : null);
            }

            if (_blocks.Length > 0)
            {
                Require(e, needs.Where(n => n.Volts.IsPositive).Select(n => n.Chosen), _blocks[e][0]);
                Require(e, needs.Where(n => n.Volts.IsNegative).Select(n => n.Chosen), _blocks[e][1]);
            }
        }
    }

    // where a place has a switch and one of the states is chosen, something holds; null: that cannot be
    private void Require(int place, IEnumerable<BoolVar> states, BoolVar? consequence)
    {
        BoolVar[] all = [.. states];
        if (all.Length > 0)
        {
            BoolVar any = AnyOf(all);
            ILiteral[] clause = [any.Not(), Exists[place].Not()];
            Model.AddBoolOr(consequence is null ? clause : [.. clause, consequence]);
            if (consequence is not null)
            {
                _causes?.Add(consequence, any, Exists[place]);
            }
        }
    }

    /// <summary>A variable that is true where one of some is; the same for the same ones.</summary>
    public BoolVar AnyOf(IEnumerable<BoolVar> literals)
    {
        BoolVar[] all = [.. literals];
        if (all.Length == 1)
        {
            return all[0];
        }

        string key = string.Join(' ', all.Select(l => l.Index));
        if (_anyOf.TryGetValue(key, out BoolVar? known))
        {
            return known;
        }

        BoolVar any = Model.NewBoolVar("");
        _anyOf.Add(key, any);
        foreach (BoolVar literal in all)
        {
            Model.AddImplication(literal, any);
            _causes?.Add(any, literal);
        }

        return any;
    }

    /// <summary>Where a node is to be joined, every way to split it in two is crossed by a place that is there.</summary>
    public void JoinWithin(IReadOnlyDictionary<int, BoolVar> connectedOfBlock, IReadOnlyList<BoolVar> isThere)
    {
        foreach ((int block, BoolVar connected) in connectedOfBlock)
        {
            SwitchPlace.JoinWithin(Model, Places, block, connected, isThere);
        }
    }
}
