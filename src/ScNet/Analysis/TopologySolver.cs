using System.Numerics;
using Fractions;
using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>Finds what topology alone says about a mode, in the stages of the design page.</summary>
internal sealed class TopologySolver
{
    // How far back a phase of the same switches is looked for.
    private const int MostPhasesBack = 4;

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
            _forests[phase] = Repeated(phase) ?? PhaseForest.Of(_network, _network.ClosedIn(mode.Index, phase));
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

        bool[] rests = RestingCurrents.Of(_network, _forests, _mode);
        LoopSet loops = LoopSet.Of(_network, _forests, rests);
        if (!findings.CheckHeldCurrents(loops))
        {
            return Failed(findings, loops, null);
        }

        LoopSolution<T> solution = LoopSolution<T>.Of(_network, loops);
        if (!findings.CheckConflicts(solution, loops))
        {
            return Failed(findings, loops, solution);
        }

        bool[] unconnected = solution.Unconnected();
        if (!findings.CheckRoom(solution.FreeCapacitors(unconnected).Count()))
        {
            return Failed(findings, loops, solution);
        }

        VoltageSpace<T> space = new(solution.Voltages(), solution.FreeVoltages(unconnected));
        (int Capacitor, Fraction Voltage)[] controlled = ControlledCapacitors.Of(_converter);
        if (!(solution.IsOutputFixed || findings.CheckOutput(solution, loops, space, FreeAtAll(space, loops)))
            || (controlled.Length > 0 && !findings.CheckControl(controlled, space, loops))
            || (solution.IsOutputFixed && !findings.CheckRatio(space.Origin, solution, loops)))
        {
            return Failed(findings, loops, solution);
        }

        VoltageSpace<T> held = controlled.Length > 0 ? space.Where(VoltageSettlement<T>.Control(space, controlled))! : space;
        findings.CheckCapacitors(unconnected, FreeAtAll(held, loops).Movements);
        findings.WarnOfRests();
        if (controlled.Length == 0 && _network.InductorCount == 0)
        {
            PhaseTable none = new([], _converter.Inductors.Names, _converter.Phases.Names);
            return Collect(findings, loops, solution, null, SettledVoltages.Of(_converter, _forests, space, unconnected, none, VoltageBalance.Averages, []));
        }

        OpenVoltages<T> voltages = new(_network, _forests, loops, space, unconnected, controlled);
        return Collect(findings, loops, solution, voltages, voltages.IsFreeOfValues ? voltages.Settle(_converter) : null);
    }

    // What may move without a change of any inductor's voltage in any phase, so that nothing whatever holds it.
    private VoltageSpace<T> FreeAtAll<T>(VoltageSpace<T> space, LoopSet loops)
        where T : struct, IBinaryInteger<T> =>
        _network.InductorCount == 0 || space.Movements.Count == 0 ? space : WithoutInductors(space, loops);

    private VoltageSpace<T> WithoutInductors<T>(VoltageSpace<T> space, LoopSet loops)
        where T : struct, IBinaryInteger<T>
    {
        T[] equal = new T[_network.InductorCount];
        equal.AsSpan().Fill(T.One);
        InductorVoltages<T> inductors = new(_network, _forests, loops, equal);
        List<Rational<T>[]> moved = space.Movements.ConvertAll(inductors.Of);
        List<Rational<T>[]> equations = [];
        for (int e = 0; e < moved[0].Length; e++)
        {
            Rational<T>[]? equation = null;
            for (int k = 0; k < moved.Count; k++)
            {
                if (!moved[k][e].IsZero)
                {
                    (equation ??= new Rational<T>[moved.Count + 1])[k] = moved[k][e];
                }
            }

            if (equation is not null)
            {
                equations.Add(equation);
            }
        }

        return space.Where(equations)!;
    }

    // Stages that freewheel in between come back to the same switches.
    private PhaseForest? Repeated(int phase)
    {
        ReadOnlySpan<bool> closed = _network.ClosedIn(_mode.Index, phase);
        for (int before = phase - 1; before >= Math.Max(0, phase - MostPhasesBack); before--)
        {
            if (_network.ClosedIn(_mode.Index, before).SequenceEqual(closed))
            {
                return _forests[before];
            }
        }

        return null;
    }

    private TopologySolution Failed(ModeFindings findings, LoopSet? loops, ILoopSolution? solution) =>
        new() { Mode = _mode, Diagnostics = findings.All, Forests = _forests, Loops = loops, Solution = solution };

    private TopologySolution Collect<T>(ModeFindings findings, LoopSet loops, LoopSolution<T> solution, OpenVoltages<T>? voltages, SettledVoltages? settled)
        where T : struct, IBinaryInteger<T>
    {
        if (!solution.IsOutputFixed)
        {
            return new()
            {
                Mode = _mode,
                Diagnostics = findings.All,
                Forests = _forests,
                Loops = loops,
                Solution = solution,
                Voltages = voltages,
                Settled = settled,
            };
        }

        int phases = _network.PhaseCount;
        bool isTied = IsTied();
        BranchFlow<T> flow = BranchFlow<T>.Of(_network, _forests, loops, solution.LoopCharges());
        Rational<T>[] inverseDuties = InverseDuties<T>();
        (FlowDirection? own, List<FlowDirection> directions) = FindDirections(loops, solution);
        return new()
        {
            Mode = _mode,
            Diagnostics = findings.All,
            Forests = _forests,
            Loops = loops,
            Solution = solution,
            Voltages = voltages,
            Settled = settled,
            CarriesLoad = true,
            IsTied = isTied,
            Branches = ToQuantities(flow.Branches),
            Switches = ToQuantities(flow.Switches),
            SlowCoefficients = isTied
                ? [.. Enumerable.Repeat(Quantity.Zero, _network.CapacitorCount)]
                : LimitCoefficients.Slow<T>(flow.Branches, _network.CapacitorCount, phases),
            FastCapacitorCoefficients = LimitCoefficients.Fast(flow.Branches, _network.CapacitorCount, inverseDuties),
            FastInductorCoefficients = LimitCoefficients.Fast(
                flow.Branches.AsSpan(_network.FirstInductorBranch * phases), _network.InductorCount, inverseDuties),
            FastSwitchCoefficients = LimitCoefficients.Fast(flow.Switches, _network.SwitchCount, inverseDuties),
            Own = own,
            Directions = directions,
        };
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
        return (own, FlowDirections.WhenSlow(_network, own, directions, IsTied()));
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
