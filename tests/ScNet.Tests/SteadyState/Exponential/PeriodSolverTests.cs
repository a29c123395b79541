using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Which precision a period is solved in, and what it says where there is none.</summary>
public sealed class PeriodSolverTests
{
    [Fact]
    public void Plain_precision_is_kept_where_its_error_is_small()
    {
        PeriodSolver solver = Solver(Charged(1));
        Assert.Equal(NetworkFault.None, solver.Solve(1, out PeriodFigures plain));
        Assert.InRange(plain.RelativeError, 1e-16, PeriodSolver.WantedError);
        Assert.Equal(NetworkFault.None, solver.SolveFine(1, out PeriodFigures fine));
        Assert.InRange(fine.RelativeError, 1e-33, 1e-28);
        Assert.Equal(2, fine.Ohms, 1e-15);
        Assert.Equal(2, plain.Ohms, 1e-13);
    }

    /// <summary>Beside a capacitor of 10¹² time constants in a period plain rounding could move some thousandths.</summary>
    [Fact]
    public void Doubled_precision_is_taken_where_it_is_not()
    {
        PeriodSolver solver = Solver(Charged(1).Resistor("vin", "y", 1).Capacitor("y", Converter.ReferenceNode, 1e-12));
        Assert.Equal(NetworkFault.None, solver.Solve(1, out PeriodFigures found));
        Assert.InRange(found.RelativeError, 1e-20, 1e-16);
        Assert.Equal(2, found.Ohms, 1e-15);
    }

    [Fact]
    public void The_largest_conductance_is_that_of_the_least_resistor()
    {
        Circuit circuit = new Circuit(LoadKind.Stiff, 0.5, 0.5).Switch("vin", "vout", 2, 1).Switch("vin", "vout", 0.25, 2).Switch("vin", "vout", 8, 1);
        Assert.Equal(4, Solver(circuit).LargestSiemens);
        Assert.Equal(0, Solver(new Circuit(LoadKind.Stiff, 1).Inductor("vin", "vout", 1, 0.5)).LargestSiemens);
    }

    [Fact]
    public void A_conducting_diode_is_no_conductance()
    {
        SwitchedLinearNetwork network = new()
        {
            NodeCount = 4,
            Resistors = [new(1, 3), new(2, 3)],
            Capacitors = [],
            Inductors = [],
            HasWinding = [],
            InputNode = 1,
            OutputNode = 2,
            IsStiff = true,
            DiodeCount = 1,
            Closed = [[true, true]],
        };
        NetworkValues<DoubleDouble> values = new(WrittenEquations.Numbers<DoubleDouble>([5, 0]), [], [], [], WrittenEquations.Numbers<DoubleDouble>([1]))
        {
            DiodeRatios = WrittenEquations.Numbers<DoubleDouble>([0.1]),
        };
        Assert.Equal(0.2, PeriodSolver.Of(network, values).LargestSiemens);
    }

    [Fact]
    public void Plain_equations_are_the_fine_ones_rounded()
    {
        PeriodSolver solver = Solver(Charged(3));
        Assert.Equal(solver.Fine.Phases[0].Generator.Select(v => v.Nearest), solver.Plain.Phases[0].Generator.Select(v => v.Nearest));
        Assert.Equal([1], solver.Plain.Duties.Select(d => d.Nearest));
    }

    /// <summary>Through a switch of 1 Ω closed in phase 1 and one of 4 Ω in phase 2 the conductance is their mean by duty.</summary>
    [Fact]
    public void With_other_duties_it_is_the_same_network()
    {
        Circuit circuit = new Circuit(LoadKind.Stiff, 0.5, 0.5).Switch("vin", "vout", 1, 1).Switch("vin", "vout", 4, 2);
        PeriodSolver other = Solver(circuit).WithDuties(WrittenEquations.Numbers<DoubleDouble>([0.2, 0.8]));
        Assert.Equal(NetworkFault.None, other.Solve(1, out PeriodFigures found));
        Assert.Equal(2.5, found.Ohms, 1e-14);
        Assert.Equal(1, other.LargestSiemens);
        Assert.Equal((NetworkFault.None, -1, -1), (other.Fault, other.FaultPhase, other.FaultInput));
    }

    [Fact]
    public void Between_a_capacitor_and_a_stiff_output_no_average_current_passes()
    {
        PeriodSolver solver = Solver(new Circuit(LoadKind.Stiff, 1).Resistor("vin", "x", 1).Capacitor("x", "vout", 1));
        Assert.Equal(NetworkFault.NoOutputCurrent, solver.Solve(1, out PeriodFigures found));
        Assert.Equal(default, found);
        Assert.Equal(NetworkFault.NoOutputCurrent, solver.SolveFine(1, out _));
        Assert.Equal(NetworkFault.NoOutputCurrent, solver.Solve(Map([-1, 1, 1], [0, 0, 0]), PlainReal.Of(1), out _));
    }

    [Fact]
    public void A_period_without_a_return_is_a_resonance()
    {
        PeriodSolver solver = Solver(Charged(1));
        Assert.Equal(NetworkFault.Resonance, solver.Solve(Map([0, 1, 1], [1, 0, 0]), PlainReal.Of(1), out PeriodFigures found));
        Assert.Equal(default, found);
        Assert.Equal(NetworkFault.Resonance, solver.Solve(Map([-1, 1, 1], [double.PositiveInfinity, 0, 0]), PlainReal.Of(1), out _));
        Assert.Equal(NetworkFault.None, solver.Solve(Map([-1, 1, 1], [1, 0, 0]), PlainReal.Of(1), out _));
    }

    // 2 ohms into capacitance at the output
    private static Circuit Charged(double farads) => new Circuit(LoadKind.Current, 1).Resistor("vin", "vout", 2).Capacitor("vout", Converter.ReferenceNode, farads);

    private static PeriodMap<PlainReal> Map(double[] generator, double[] output) =>
        new(WrittenEquations.Of(WrittenEquations.Structure(1), [1], WrittenEquations.Phase<PlainReal>(2, generator, [0, 1, 0], output)));

    private static PeriodSolver Solver(Circuit circuit) => PeriodSolver.Of(circuit.Network(), circuit.Values());
}
