using System.Numerics;
using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>The loop equations of a mode with further outputs as ports, and the flows that follow.</summary>
internal sealed class OutputEquations<T>
    where T : struct, IBinaryInteger<T>
{
    private readonly ModeAnalysis _analysis;
    private readonly SwitchedNetwork _network;
    private readonly PhaseForest[] _forests;
    private LoopSolution<T>? _solution;
    private readonly FlowTracer<T> _tracer;
    private List<FlowDirection>? _directions;

    public OutputEquations(ModeAnalysis analysis, List<int> outputs)
    {
        _analysis = analysis;
        Outputs = outputs;
        Converter = analysis.Converter.WithPorts(outputs);
        _network = Converter.Network;
        _forests = new PhaseForest[_network.PhaseCount];
        for (int phase = 0; phase < _forests.Length; phase++)
        {
            _forests[phase] = PhaseForest.Of(_network, _network.ClosedIn(analysis.Mode.Index, phase));
        }

        _tracer = new(_network, _forests);
        Loops = LoopSet.Of(_network, _forests, RestingCurrents.Of(_network, _forests, analysis.Mode));
    }

    /// <summary>The converter with these outputs as ports.</summary>
    public Converter Converter { get; }

    /// <summary>The positions of the further outputs that are ports.</summary>
    public List<int> Outputs { get; }

    public LoopSet Loops { get; }

    public LoopSolution<T> Solution => _solution ??= LoopSolution<T>.Of(_network, Loops);

    /// <summary>The branch of one of the outputs: 0 for the main one, then those of <see cref="Outputs"/>.</summary>
    public int Branch(int output) => _network.OutputBranch + output;

    /// <summary>The flow of an output as the topology of a mode of which it is the output.</summary>
    public TopologySolution Flow(int output)
    {
        int phases = _network.PhaseCount;
        Rational<T>[] charges = Solution.LoopCharges(Branch(output));
        BranchFlow<T> flow = BranchFlow<T>.Of(_network, _forests, Loops, charges);
        Rational<T>[] inverseDuties = [.. _network.Duties.Select(d => Rational<T>.Of(T.CreateChecked(d.Denominator), T.CreateChecked(d.Numerator)))];
        bool isTied = IsTied(Branch(output));
        FlowDirection own = _tracer.Trace(Loops, charges.Select((charge, loop) => (loop, charge)).Where(c => !c.charge.IsZero));
        _directions ??= FlowDirections.Of(_network, _analysis.Mode, _forests, Loops, Solution, _tracer, withInput: true);
        return new()
        {
            Mode = _analysis.Mode,
            Diagnostics = [],
            Forests = _forests,
            Loops = Loops,
            Solution = Solution,
            Settled = _analysis.Topology.Settled,
            CarriesLoad = true,
            IsTied = isTied,
            Branches = Array.ConvertAll(flow.Branches, c => c.ToQuantity()),
            Switches = Array.ConvertAll(flow.Switches, c => c.ToQuantity()),
            SlowCoefficients = isTied
                ? [.. Enumerable.Repeat(Quantity.Zero, _network.CapacitorCount)]
                : LimitCoefficients.Slow<T>(flow.Branches, _network.CapacitorCount, phases),
            FastCapacitorCoefficients = LimitCoefficients.Fast(flow.Branches, _network.CapacitorCount, inverseDuties),
            FastInductorCoefficients = LimitCoefficients.Fast(
                flow.Branches.AsSpan(_network.FirstInductorBranch * phases), _network.InductorCount, inverseDuties),
            FastSwitchCoefficients = LimitCoefficients.Fast(flow.Switches, _network.SwitchCount, inverseDuties),
            Own = own,
            Directions = PassesElements(own) ? FlowDirections.WhenSlow(_network, own, _directions, isTied) : [],
        };
    }

    /// <summary>The charge that the input gives in a flow: the average voltage of its output in open circuit.</summary>
    public Quantity Ratio(TopologySolution flow)
    {
        Quantity sum = Quantity.Zero;
        for (int phase = 0; phase < _network.PhaseCount; phase++)
        {
            sum = QuantityArithmetic.Add(sum, -flow.Branches[(_network.InputBranch * _network.PhaseCount) + phase]);
        }

        return sum;
    }

    // straight from the source nothing drives any other way
    private bool PassesElements(FlowDirection own) => !own.Switches.IsZero || own.Branches.Indices.ToArray().Any(e =>
        e / _network.PhaseCount is var branch && (branch < _network.CapacitorCount || branch >= _network.FirstInductorBranch));

    // Both nodes on sources in every phase; on a stiff output only where that in its turn is on the input.
    private bool IsTied(int branch)
    {
        bool withOutput = _network.Load == LoadKind.Stiff && _analysis.Topology.IsTied;
        return Array.TrueForAll(_forests, f => IsOnSource(f, _network.BranchFirst[branch]) && IsOnSource(f, _network.BranchSecond[branch]));

        bool IsOnSource(PhaseForest forest, int node) => forest.Group[node] is int group
            && (group == forest.Group[SwitchedNetwork.Reference] || group == forest.Group[_network.Input]
                || (withOutput && group == forest.Group[_network.Output]));
    }
}
