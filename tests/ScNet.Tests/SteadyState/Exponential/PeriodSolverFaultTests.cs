using ScNet.Kernel;
using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Networks whose loads nothing supplies, and others that only look so.</summary>
public sealed class PeriodSolverFaultTests
{
    [Fact]
    public void A_load_behind_a_capacitor_has_no_supply()
    {
        PeriodSolver solver = Solver(new Circuit(LoadKind.Current, 0.3, 0.7).Capacitor("vin", "vout", 3));
        Assert.Equal((NetworkFault.LoadWithoutSupply, -1, 1), (solver.Fault, solver.FaultPhase, solver.FaultInput));
    }

    /// <summary>However slowly the capacitor's voltage falls: one over the root of its farads, in volts times that root.</summary>
    [Theory]
    [InlineData(1e-12)]
    [InlineData(1e30)]
    public void A_load_without_supply_is_told_at_any_capacitance(double farads)
    {
        Circuit circuit = new Circuit(LoadKind.Current, 1).Capacitor("vin", "vout", farads);
        Assert.Equal(NetworkFault.LoadWithoutSupply, Solver(circuit).Fault);
        Assert.Equal(NetworkFault.LoadWithoutSupply, Solver(circuit.Resistor("vin", Converter.ReferenceNode, 1)).Fault);
    }

    [Fact]
    public void A_capacitor_that_nothing_meets_is_no_fault() =>
        Assert.Equal(NetworkFault.None, Solver(new Circuit(LoadKind.Stiff, 1).Capacitor("x", "y", 1)).Fault);

    /// <summary>
    /// What comes in at a node goes out of it but for the last digits, and these are all that the capacitors see. Beside what one volt
    /// across the least resistance brings into the smaller one they are nothing, however large the other is.
    /// </summary>
    [Fact]
    public void A_capacitor_that_hangs_on_a_node_takes_nothing_of_the_load_that_passes() => Assert.All(Enumerable.Range(1, 40), k =>
    {
        Circuit circuit = new Circuit(LoadKind.Current, 1).Capacitor("x", "a", 1e-6).Capacitor("y", "b", 1e30)
            .Resistor("vin", "a", 0.1 * k).Resistor("a", "b", 0.7).Resistor("b", "vout", 0.3).Resistor("a", Converter.ReferenceNode, 1.3);
        Assert.Equal(NetworkFault.None, Solver(circuit).Fault);
    });

    /// <summary>The charge between both stays, but the load takes as much from the one as from the other.</summary>
    [Fact]
    public void A_load_across_capacitors_in_series_is_supplied()
    {
        PeriodSolver solver = Solver(new Circuit(LoadKind.Current, 0.3, 0.7).Resistor("vin", "vout", 3)
            .Capacitor("vout", "m", 3).Capacitor("m", "k", 7).Capacitor("k", Converter.ReferenceNode, 0.1));
        Assert.Equal((NetworkFault.None, -1, -1), (solver.Fault, solver.FaultPhase, solver.FaultInput));
    }

    /// <summary>Drawn from between two capacitors in series, charge comes from nowhere; drawn across both it comes from the input.</summary>
    [Fact]
    public void The_further_load_that_is_without_supply_is_named()
    {
        PeriodSolver solver = InSeries(isStiff: true, new NodePair(2, 0), new NodePair(3, 0));
        Assert.Equal((NetworkFault.LoadWithoutSupply, -1, 3), (solver.Fault, solver.FaultPhase, solver.FaultInput));
        solver = InSeries(isStiff: false, new NodePair(3, 0));
        Assert.Equal((NetworkFault.LoadWithoutSupply, 2), (solver.Fault, solver.FaultInput));
        solver = InSeries(isStiff: true, new NodePair(4, 0));
        Assert.Equal((NetworkFault.None, -1), (solver.Fault, solver.FaultInput));
    }

    [Fact]
    public void A_load_without_a_path_in_a_phase_is_named_with_it()
    {
        PeriodSolver solver = Solver(new Circuit(LoadKind.Current, 0.5, 0.5).Switch("vin", "vout", 1, 1));
        Assert.Equal((NetworkFault.LoadWithoutPath, 1, 1), (solver.Fault, solver.FaultPhase, solver.FaultInput));
    }

    [Fact]
    public void Other_faults_name_no_load()
    {
        PeriodSolver solver = Solver(new Circuit(LoadKind.Current, 1).Resistor("vin", "vout", 1).Inductor("vin", Converter.ReferenceNode, 1));
        Assert.Equal((NetworkFault.InductorAcrossSources, -1, -1), (solver.Fault, solver.FaultPhase, solver.FaultInput));
        Assert.Equal(solver.Fault, solver.WithDuties(solver.Fine.Duties).Fault);
    }

    // node 4 behind a resistor, from it 3 F to node 3 and 7 F on to the reference
    private static PeriodSolver InSeries(bool isStiff, params NodePair[] further)
    {
        SwitchedLinearNetwork network = new()
        {
            NodeCount = 5,
            Resistors = [new(1, 2), new(1, 4)],
            Capacitors = [new(4, 3), new(3, 0)],
            Inductors = [],
            HasWinding = [],
            InputNode = 1,
            OutputNode = 2,
            IsStiff = isStiff,
            FurtherLoads = further,
            Closed = [[true, true], [true, true]],
        };
        return PeriodSolver.Of(network, new NetworkValues<DoubleDouble>(
            WrittenEquations.Numbers<DoubleDouble>([2, 5]), WrittenEquations.Numbers<DoubleDouble>([3, 7]), [], [], WrittenEquations.Numbers<DoubleDouble>([0.3, 0.7])));
    }

    private static PeriodSolver Solver(Circuit circuit) => PeriodSolver.Of(circuit.Network(), circuit.Values());
}
