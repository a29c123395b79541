using ScNet.Design.Sizing;
using ScNet.Devices;
using ScNet.Numerics;

namespace ScNet.Tests.Design.Sizing;

/// <summary>The program of a divider by two, term by term, by hand.</summary>
public sealed class SizingProgramTests
{
    private const double LeastFarads = HalfTasks.LeastCapacitorSquareMetres * 1e-2, LeastSiemens = 0.1 / 1000;

    private static readonly double[] s_siemens = [0.1, 0.2, 0.3, 0.4];

    private static readonly double[] s_logarithms = [.. s_siemens.Select(g => Math.Log(g))];

    // 2 V held by 1e4 Ω at 10 µA, 3 V free at 20 µA
    private static readonly SizingPoint[] s_points = [HalfTasks.Held(2, 1e4, 1e-5, weight: 1), HalfTasks.Free(3, 2e-5, weight: 3)];

    [Fact]
    public void Variables_are_the_sizes_of_what_is_used_then_frequencies_then_impedances_of_free_outputs()
    {
        SizingPoint free = HalfTasks.Free(2, 1e-3), held = HalfTasks.Held(2, 10, 1e-3);
        SizingProgram program = HalfTasks.Program(HalfTasks.Of([free, free, held, free], new AreaBudget(1e-8)));
        Assert.Equal(5 + 4 + 3, program.VariableCount);
        Assert.Equal([5, 6, 7, 8], Enumerable.Range(0, 4).Select(program.FrequencyOf));
        Assert.Equal([9, 10, 11], new[] { 0, 1, 3 }.Select(program.ImpedanceOf));
        Assert.Equal(LeastFarads, program.ValuesOf(new double[12])[0], 1e-12 * LeastFarads);
    }

    // a share of 1/4 and 3/4; in f: plates, gates, junctions and control; always: leakage of both capacitors, of switches that block half of the time, and control
    [Fact]
    public void The_objective_is_the_weighted_loss_over_all_weights()
    {
        SizingProgram program = HalfTasks.Program(HalfTasks.Of(s_points, new AreaBudget(1e-8)));
        const double Farads = 2e-9, Low = 3e4, High = 5e5, Ohms = 700;
        double Watts(double volts, double hertz)
        {
            double square = volts * volts / 4;
            double perCycle = (((0.025 * Farads) + HalfTasks.TopFarads) * square) + (s_siemens.Sum() * (3e-12 + (5e-13 * square))) + (HalfTasks.CoulombsPerCycle * volts);
            return (hertz * perCycle) + (0.5 * Farads * square) + (0.5 * LeastFarads * volts * volts) + (1e-6 * s_siemens.Sum() * volts / 4) + HalfTasks.FixedWatts;
        }

        double expected = (0.25 * (Watts(2, Low) + (1e-10 * 1e4))) + (0.75 * (Watts(3, High) + (4e-10 * Ohms)));
        double[] x = [Math.Log(Farads), .. s_logarithms, Math.Log(Low), Math.Log(High), Math.Log(Ohms)];
        Assert.Equal(Math.Log(expected), program.Objective().Value(x), 1e-12);
    }

    // 100 m² per farad, 1e-9 m² per siemens, and the idle capacitor's least area of 1e-9 m²
    [Fact]
    public void Areas_are_those_of_all_of_capacitors_and_of_switches()
    {
        SizingTask task = HalfTasks.Of(s_points, new AreaBudget(1e-7, 6e-8, 5e-9));
        double[] x = [Math.Log(2e-10), .. s_logarithms, 0, 0, 0];
        double[] areas = [.. HalfTasks.Program(task).Areas().Select(a => Math.Exp(a.Value(x)))];
        double[] expected = [(2e-8 + 1e-9 + 1e-9) / 1e-7, 2.1e-8 / 6e-8, 1e-9 / 5e-9];
        Assert.Equal(expected.Length, areas.Length);
        Assert.All(areas.Zip(expected), a => Assert.Equal(a.Second, a.First, 1e-12));
        Assert.Equal([-1, -1, -1, 0, 0, 1], HalfTasks.Program(task).PointOfConstraint());
    }

    [Fact]
    public void Capacitors_that_are_not_there_have_no_area()
    {
        SizingTask task = HalfTasks.Of([new(Mode.DefaultName, 2, 1.9, 1e-3)], new AreaBudget(null, 1e-8, 4e-9), HalfTasks.Alone);
        LogConvexFunction area = Assert.Single(HalfTasks.Program(task).Areas());
        Assert.Equal(0.25, Math.Exp(area.Value([0, 0])), 1e-12);
    }

    // √(slow² + fast²) with half of four conductances and wirings and the whole series resistance; below the floor as at the floor, times floor/f
    [Fact]
    public void Impedances_stand_over_what_is_needed_at_the_frequency_and_below_the_floor()
    {
        Process process = HalfTasks.Process([HalfTasks.Long], [HalfTasks.Metal with { EsrOhmSquareMetres = 1e-5 }]);
        SizingProgram program = HalfTasks.Program(HalfTasks.Of([HalfTasks.Held(2, 40, 1e-3), HalfTasks.Free(3, 2e-5)], new AreaBudget(1e-8), process: process));
        double[] x = [Math.Log(2e-9), .. s_logarithms, Math.Log(3e6), Math.Log(4e6), Math.Log(700)];
        double fast = (0.5 * s_siemens.Sum(g => 1 / g)) + (2 * HalfTasks.WiringOhms) + (1e-7 / 2e-9);
        double[] held = [.. program.Impedances(0, null).Select(r => r.Value(x))];
        Assert.Equal(2, held.Length);
        Assert.Equal(Math.Log(Ohms(3e6) / 40) + SizingProgram.Margin, held[0], 1e-12);
        Assert.Equal(Math.Log(Ohms(HalfTasks.Floor) * HalfTasks.Floor / 3e6 / 40) + SizingProgram.Margin, held[1], 1e-12);
        Assert.Equal(Math.Log(Ohms(4e6) / 700), Assert.Single(program.Impedances(1, null)).Value(x), 1e-12);

        double Ohms(double hertz) => Math.Sqrt(Math.Pow(1 / (4 * 2e-9 * hertz), 2) + (fast * fast));
    }

    // two switches that carry all current always: 1/G₁ + 1/G₂ and their wirings
    [Fact]
    public void No_cycles_are_left_out_where_frequency_regulates_nothing()
    {
        SizingTask task = HalfTasks.Of([new(Mode.DefaultName, 2, 1.9, 1e-3)], new AreaBudget(1e-8), HalfTasks.Through);
        SizingProgram program = HalfTasks.Program(task);
        Assert.Equal(3, program.VariableCount);
        Assert.Equal(Math.Log((5 + 2 + 1) / 100.0) + SizingProgram.Margin, Assert.Single(program.Impedances(0, null)).Value([Math.Log(0.2), Math.Log(0.5), 0]), 1e-12);
        Assert.Equal([-1, 0], program.PointOfConstraint());
    }

    // the gap without multipliers, of areas and of other points, is the slope times the way to the bound that lies downhill
    [Theory]
    [InlineData(1e-7, 6e-8, 5e-9, 6e-10, 5)]
    [InlineData(4e-9, 6e-8, 5e-9, 4e-11, 4)]
    [InlineData(null, 6e-8, 5e-9, 6e-10, 5)]
    [InlineData(1e-9, 1e-9, 1e-13, 2e-11, 2e-4)]
    public void No_size_is_above_what_alone_would_fill_the_area(double? total, double ofCapacitors, double ofSwitches, double mostFarads, double mostSiemens)
    {
        foreach (double ceiling in new[] { HalfTasks.Ceiling, HalfTasks.Floor })
        {
            SizingProgram program = HalfTasks.Program(HalfTasks.Of(s_points, new AreaBudget(total, ofCapacitors, ofSwitches), ceiling: ceiling));
            double[] x = [Math.Log(1.5e-11), .. Enumerable.Repeat(Math.Log(1.5e-4), 4), Math.Log(1e3), 0, 0];
            double[] most = [Math.Log(mostFarads), .. Enumerable.Repeat(Math.Log(mostSiemens), 4), Math.Log(ceiling) + (ceiling > HalfTasks.Floor ? 0 : 1e-9)];
            GeometricProgram least = program.LeastImpedance(0, null);
            double[] slopes = Slopes(program.Impedances(0, null).First(), x);
            Assert.All(slopes[..6], s => Assert.True(s < -1e-12));
            Assert.Equal(most.Select((m, i) => -slopes[i] * (m - x[i])).Sum(), least.DualityGap(x, new double[3 + s_points.Length]), 1e-11);
        }
    }

    // held: a billionth of the floor; free: the floor, and an impedance of a millionth of a millionth of voltage over current
    [Fact]
    public void No_size_is_below_a_step_and_no_frequency_below_the_floor_where_no_cycles_may_be_left_out()
    {
        SizingProgram program = HalfTasks.Program(HalfTasks.Of(s_points, new AreaBudget(1e-8)));
        double[] x = [Math.Log(1e-10), .. s_logarithms, Math.Log(3e5), Math.Log(5e5), Math.Log(700)];
        double[] least = [LeastFarads, LeastSiemens, LeastSiemens, LeastSiemens, LeastSiemens, HalfTasks.Floor * 1e-9, HalfTasks.Floor, 3 / 2e-5 * 1e-12];
        double[] slopes = Slopes(program.Objective(), x);
        double expected = least.Select((l, i) => slopes[i] * (x[i] - Math.Log(l))).Sum();
        Assert.Equal(expected, program.Build(null).DualityGap(x, new double[program.PointOfConstraint().Length]), 1e-12 * expected);
    }

    private static double[] Slopes(LogConvexFunction function, double[] x)
    {
        var own = new double[function.Support.Length];
        _ = function.Evaluate(x, own, new double[function.WorkLength]);
        var all = new double[x.Length];
        for (int i = 0; i < own.Length; i++)
        {
            all[function.Support[i]] = own[i];
        }

        return all;
    }
}
