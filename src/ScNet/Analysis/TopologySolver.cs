using System.Numerics;
using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>Finds what topology alone says about a mode, in the stages of the design page.</summary>
internal sealed class TopologySolver
{
    private readonly SwitchedNetwork _network;
    private readonly Converter _converter;
    private readonly Mode _mode;
    private readonly PhaseForest[] _forests;

    private TopologySolver(Converter converter, Mode mode)
    {
        _network = converter.Network;
        _converter = converter;
        _mode = mode;
        _forests = new PhaseForest[_network.PhaseCount];
        for (int phase = 0; phase < _forests.Length; phase++)
        {
            _forests[phase] = PhaseForest.Of(_network, _network.ClosedIn(mode.Index, phase));
        }
    }

    /// <summary>Solves on machine integers, and again on big integers where those overflow.</summary>
    public static TopologySolution Solve(Converter converter, Mode mode)
    {
        TopologySolver solver = new(converter, mode);
        try
        {
            return solver.Solve<long>();
        }
        catch (OverflowException)
        {
            return solver.Solve<BigInteger>();
        }
    }

    private TopologySolution Solve<T>()
        where T : struct, IBinaryInteger<T>
    {
        ModeFindings findings = new(_converter, _mode, _forests);
        if (!findings.CheckShorts())
        {
            return Failed(findings, null, null);
        }

        LoopSet loops = LoopSet.Of(_network, _forests);
        if (!findings.CheckLoad(loops))
        {
            return Failed(findings, loops, null);
        }

        LoopSolution<T> solution = LoopSolution<T>.Of(_network, loops);
        if (!findings.CheckConflicts(solution, loops) || !findings.CheckOutput(solution, loops))
        {
            return Failed(findings, loops, solution);
        }

        Rational<T>[] voltages = solution.Voltages();
        bool[] unconnected = solution.Unconnected();
        List<Rational<T>[]> free = solution.FreeVoltages(unconnected);
        findings.CheckCapacitors(unconnected, free);
        return findings.CheckRatio(voltages, solution, loops)
            ? Collect(findings, loops, solution, voltages, unconnected, free)
            : Failed(findings, loops, solution);
    }

    private TopologySolution Failed(ModeFindings findings, LoopSet? loops, ILoopSolution? solution) =>
        new() { Mode = _mode, Diagnostics = findings.All, Forests = _forests, Loops = loops, Solution = solution };

    private TopologySolution Collect<T>(
        ModeFindings findings, LoopSet loops, LoopSolution<T> solution, Rational<T>[] voltages, bool[] unconnected, List<Rational<T>[]> free)
        where T : struct, IBinaryInteger<T>
    {
        int phases = _network.PhaseCount;
        (PhaseTable nodes, PhaseTable blocking) = FindPotentials(voltages, free, unconnected);
        BranchFlow<T> flow = BranchFlow<T>.Of(_network, _forests, loops, solution.LoopCharges());
        Rational<T>[] inverseDuties = InverseDuties<T>();
        (FlowDirection? own, List<FlowDirection> directions) = FindDirections(loops, solution);
        return new TopologySolution
        {
            Mode = _mode,
            Diagnostics = findings.All,
            Forests = _forests,
            Loops = loops,
            Solution = solution,
            IdealPoint = new IdealPoint(
                voltages[_network.OutputBranch].ToQuantity(),
                new NamedList<Quantity>(CapacitorVoltages(voltages, free, unconnected), _converter.Capacitors.Names),
                nodes),
            BlockingVoltages = new BlockingVoltages(blocking, _converter.Switches.Names),
            Branches = ToQuantities(flow.Branches),
            Switches = ToQuantities(flow.Switches),
            SlowCoefficients = IsTied()
                ? [.. Enumerable.Repeat(Quantity.Zero, _network.CapacitorCount)]
                : LimitCoefficients.Slow<T>(flow.Branches, _network.CapacitorCount, phases),
            FastCapacitorCoefficients = LimitCoefficients.Fast(flow.Branches, _network.CapacitorCount, inverseDuties),
            FastSwitchCoefficients = LimitCoefficients.Fast(flow.Switches, _network.SwitchCount, inverseDuties),
            IsTied = IsTied(),
            Own = own,
            Directions = directions,
        };
    }

    private (PhaseTable Nodes, PhaseTable Blocking) FindPotentials<T>(
        Rational<T>[] voltages, List<Rational<T>[]> free, bool[] unconnected)
        where T : struct, IBinaryInteger<T>
    {
        int phases = _network.PhaseCount;
        var nodes = new Quantity[_network.NodeCount * phases];
        var blocking = new Quantity[_network.SwitchCount * phases];
        for (int phase = 0; phase < phases; phase++)
        {
            Potentials<T> potentials = Potentials<T>.Of(_forests[phase], voltages, free, unconnected);
            for (int node = 0; node < _network.NodeCount; node++)
            {
                nodes[(node * phases) + phase] = potentials.Node(node);
            }

            for (int s = 0; s < _network.SwitchCount; s++)
            {
                blocking[(s * phases) + phase] = potentials.Difference(_network.SwitchFirst[s], _network.SwitchSecond[s]);
            }
        }

        return (
            new PhaseTable(nodes, _converter.Nodes.Names, _converter.Phases.Names),
            new PhaseTable(blocking, _converter.Switches.Names, _converter.Phases.Names));
    }

    private (FlowDirection? Own, List<FlowDirection> Directions) FindDirections<T>(LoopSet loops, LoopSolution<T> solution)
        where T : struct, IBinaryInteger<T>
    {
        if (!solution.HasCirculations && loops.Repeats is null && !Array.Exists(_forests, f => f.HasSwitchLoop))
        {
            return (null, []);
        }

        FlowTracer<T> tracer = new(_network, _forests);
        List<FlowDirection> directions = FlowDirections.Of(_network, _mode, _forests, loops, solution, tracer);
        if (directions.Count == 0)
        {
            return (null, directions);
        }

        FlowDirection own = tracer.Trace(loops, solution.OwnFlow());
        return (own, WhenSlow(own, directions));
    }

    // Without a chain of capacitors to a flow that delivers nothing drives a direction between equilibria;
    // and where closed switches tie the output to the input no capacitor's voltage ever changes.
    private List<FlowDirection> WhenSlow(FlowDirection own, List<FlowDirection> directions)
    {
        int load = _network.CapacitorCount;
        DisjointSets parts = new(_network.CapacitorCount + 1);
        Join(own, isDelivering: true);
        directions.ForEach(d => Join(d.Way, d.Path is not null));
        bool isTied = IsTied();
        return directions.ConvertAll(d => d with
        {
            IsStillWhenSlow = isTied || d.Way.Branches.IsZero || parts.Find(CapacitorOf(d.Way.Branches.Indices[0])) != parts.Find(load),
        });

        void Join(FlowDirection way, bool isDelivering)
        {
            foreach (int index in way.Branches.Indices)
            {
                int capacitor = CapacitorOf(index);
                if (capacitor < load)
                {
                    parts.Join(capacitor, isDelivering ? load : CapacitorOf(way.Branches.Indices[0]));
                }
            }
        }

        int CapacitorOf(int index) => Math.Min(index / _network.PhaseCount, load);
    }

    // With a stiff load one phase is enough, since it fixes the output's voltage for all.
    private bool IsTied()
    {
        bool IsTiedIn(PhaseForest forest) => forest.Group[_network.Input] == forest.Group[_network.Output];
        return _network.Load == LoadKind.Stiff ? Array.Exists(_forests, IsTiedIn) : Array.TrueForAll(_forests, IsTiedIn);
    }

    private Rational<T>[] InverseDuties<T>()
        where T : struct, IBinaryInteger<T>
    {
        var inverse = new Rational<T>[_network.PhaseCount];
        for (int j = 0; j < inverse.Length; j++)
        {
            inverse[j] = Rational<T>.Of(
                T.CreateChecked(_network.Duties[j].Denominator), T.CreateChecked(_network.Duties[j].Numerator));
        }

        return inverse;
    }

    private static Quantity[] CapacitorVoltages<T>(Rational<T>[] voltages, List<Rational<T>[]> free, bool[] unconnected)
        where T : struct, IBinaryInteger<T>
    {
        var quantities = new Quantity[unconnected.Length];
        for (int i = 0; i < quantities.Length; i++)
        {
            quantities[i] = unconnected[i] || ModeFindings.Moves(free, i) ? Quantity.Undetermined : voltages[i].ToQuantity();
        }

        return quantities;
    }

    private static Quantity[] ToQuantities<T>(Rational<T>[] values)
        where T : struct, IBinaryInteger<T>
    {
        var quantities = new Quantity[values.Length];
        for (int i = 0; i < quantities.Length; i++)
        {
            quantities[i] = values[i].ToQuantity();
        }

        return quantities;
    }
}
