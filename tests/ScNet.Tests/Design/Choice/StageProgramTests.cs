using ScNet.Design.Choice;
using ScNet.Design.Losses;
using ScNet.Design.Sizing;
using ScNet.Devices;
using ScNet.Numerics;

namespace ScNet.Tests.Design.Choice;

/// <summary>The sizes of a stage with inductors as a geometric program, against the losses of the converter that it sizes and the conditions of an optimum.</summary>
public sealed class StageProgramTests
{
    private static readonly Interval<double> s_hertz = new(1e5, 1e8);

    // the share I/J of the cycles runs, so a point loses I/J times what they lose, and what is lost always
    [Theory]
    [InlineData("step-down")]
    [InlineData("three levels")]
    [InlineData("ladder")]
    public void What_is_least_is_the_weighted_loss_of_the_sized_stage(string name)
    {
        Candidate candidate = Named(name);
        Process process = LossyStages.Process;
        StagePoint[] points = [LossyStages.PointOf(candidate, process, 60, 3, 0.02, 0.75), LossyStages.PointOf(candidate, process, 90, 3.6, 2e-5, 0.25)];
        ElementOptions options = LossyStages.Options(candidate, process);
        StageProgram program = new(points, options, Coils(candidate, process), new AreaBudget(1e-6), s_hertz);
        int[] chosen = [.. options.Capacitors.Select(_ => 0), .. options.Switches.Select((_, s) => s % 2)];
        GeometricOptimum optimum = program.Solve(chosen);
        Assert.True(optimum.IsFeasible);
        double[] values = [.. optimum.Logarithms.Take(chosen.Length).Select(Math.Exp)];
        double expected = 0;
        for (int p = 0; p < points.Length; p++)
        {
            (double volts, double load) = (points[p].Point.InputVolts, points[p].Point.LoadAmperes);
            (double hertz, double amperes) = (Math.Exp(optimum.Logarithms[program.FrequencyOf(p)]), Math.Exp(optimum.Logarithms[program.CurrentOf(p)]));
            Assert.InRange(amperes, load * (1 - 1e-9), double.MaxValue);
            Assert.InRange(hertz, 1e5 * (1 - 1e-9), 1e8 * (1 + 1e-9));
            SizedConverter sized = LossyStages.Sized(candidate, process, points[p].Node, chosen, values);
            (double always, double running) = LossyStages.WattsOf(sized, candidate.Duties.AnalysisAt(points[p].Node), volts, amperes, hertz);
            expected += points[p].Weight * (always + (load / amperes * running));
        }

        // the capacitors of a ladder share charge with one another, of which the program knows what equal ones lose
        Assert.Equal(1, Math.Exp(optimum.LogValue) / expected, name == "ladder" ? 0.05 : 1e-9);
        Assert.True(Math.Exp(optimum.Logarithms[program.CurrentOf(1)]) > 10 * 2e-5, "the light load leaves out most of its cycles");
    }

    // where a conductance G is least in A/G + B G + price · area · G, the latter two are as much as the first: the cost is twice A/G.
    // Leakage, which is lost whether cycles run or not, belongs to B in full
    [Theory]
    [InlineData("step-down", 0)]
    [InlineData("three levels", 1)]
    public void At_the_optimum_a_switch_costs_twice_what_it_conducts(string name, int option)
    {
        Candidate candidate = Named(name);
        Process process = LossyStages.Process;
        StagePoint[] points = [LossyStages.PointOf(candidate, process, 60, 3, 0.02, 0.75), LossyStages.PointOf(candidate, process, 90, 3.6, 2e-5, 0.25)];
        ElementOptions options = LossyStages.Options(candidate, process);
        foreach (AreaBudget area in new[] { new AreaBudget(2e-7), new AreaBudget(null, 1e-7, 5e-8), new AreaBudget(1.4e-7, 1e-7, 5e-8) })
        {
            StageProgram program = new(points, options, Coils(candidate, process), area, s_hertz);
            int[] chosen = [.. options.Capacitors.Select(_ => 0), .. options.Switches.Select(_ => option)];
            GeometricOptimum optimum = program.Solve(chosen);
            for (int e = options.Capacitors.Length; e < chosen.Length; e++)
            {
                double conducted = Enumerable.Range(0, points.Length).Sum(p => Conducted(program, optimum, points[p], p, e, option));
                Assert.Equal(1, program.CostOf(e, option, optimum) / (2 * conducted), 2e-3);
            }
        }
    }

    // guards add to the area of every device, one per device in series
    [Fact]
    public void Areas_add_up_to_what_there_is()
    {
        Process process = LossyStages.Process with
        {
            Switches = [LossyStages.Switch with { GuardMetres = 1e-6 }],
            Capacitors = [LossyStages.Capacitor with { GuardMetres = 2e-6 }],
            Inductors = [LossyStages.Coil with { AreaSquareMetres = 3e-7 }],
        };
        Candidate candidate = StageCandidates.SeriesCapacitor();
        Assert.Equal(2, candidate.Converter!.Inductors.Count);
        (double capacitors, double switches) = AreasOf(candidate, process, new AreaBudget(7e-7));
        Assert.Equal(1, (capacitors + switches) / 1e-7, 1e-4);
        (capacitors, switches) = AreasOf(candidate, process, new AreaBudget(null, 1e-7, 1e-9));
        Assert.Equal(1, capacitors / 1e-7, 1e-4);
        Assert.Equal(1, switches / 1e-9, 1e-4);
        (_, switches) = AreasOf(LossyStages.StepDown, process, new AreaBudget(null, 1e-7, 1e-9));
        Assert.Equal(1, switches / 1e-9, 1e-4);
    }

    // at the duty D < 1/2 the flying capacitor of three levels takes D J/f in a period and holds half of the input: C = D J/(f V/2 · 1/5)
    [Fact]
    public void A_flying_capacitor_that_costs_much_is_as_small_as_its_swing_allows()
    {
        Process process = LossyStages.Process with { Capacitors = [LossyStages.Capacitor with { EsrOhmSquareMetres = 0, BottomPlateFraction = 5 }] };
        Candidate candidate = LossyStages.ThreeLevel;
        StagePoint[] points = [LossyStages.PointOf(candidate, process, 60, 3, 0.01, 0.5), LossyStages.PointOf(candidate, process, 72, 3.6, 0.02, 0.5)];
        StageProgram program = new(points, LossyStages.Options(candidate, process), Coils(candidate, process), new AreaBudget(1e-5), new(2e6, 2e6));
        GeometricOptimum optimum = program.Solve(new int[5]);
        double farads = Math.Exp(optimum.Logarithms[0]);
        double[] least = [.. points.Select((p, i) =>
            p.Node / 240.0 * Math.Exp(optimum.Logarithms[program.CurrentOf(i)] - optimum.Logarithms[program.FrequencyOf(i)]) / (p.Point.InputVolts / 2 / 5))];
        Assert.Equal(1, farads / least.Max(), 1e-4);
        Assert.Equal(2e6, Math.Exp(optimum.Logarithms[program.FrequencyOf(0)]), 2e6 * 2e-6);
    }

    // what a cycle costs whatever it carries asks for few heavy cycles; the coil's largest current, the average and half of the
    // ripple V D (1 − D)/(f L) of the textbook, ends that
    [Fact]
    public void Cycles_are_as_heavy_as_the_coil_allows_where_each_costs_much()
    {
        Process process = LossyStages.Process with
        {
            Inductors = [LossyStages.Coil with { MaximumAmperes = 0.5 }],
            Control = new ControlOverhead { CoulombsPerCycle = 1e-6 },
        };
        StagePoint[] points = [LossyStages.PointOf(LossyStages.StepDown, process, 60, 3, 1e-3, 0.5), LossyStages.PointOf(LossyStages.StepDown, process, 96, 3.6, 2e-3, 0.5)];
        StageProgram program = new(points, LossyStages.Options(LossyStages.StepDown, process), process.Inductors, new AreaBudget(1e-6), new(2e6, 4e6));
        GeometricOptimum optimum = program.Solve(new int[2]);
        for (int p = 0; p < points.Length; p++)
        {
            double duty = points[p].Node / 240.0, hertz = Math.Exp(optimum.Logarithms[program.FrequencyOf(p)]);
            double half = points[p].Point.InputVolts * duty * (1 - duty) / (2 * hertz * 1e-6);
            Assert.Equal(0.5, Math.Exp(optimum.Logarithms[program.CurrentOf(p)]) + half, 1e-3);
        }
    }

    private static Candidate Named(string name) => name switch
    {
        "step-down" => LossyStages.StepDown,
        "three levels" => LossyStages.ThreeLevel,
        _ => LossyStages.FedLadder,
    };

    private static double Conducted(StageProgram program, GeometricOptimum optimum, StagePoint point, int index, int element, int option)
    {
        (double hertz, double amperes) = (Math.Exp(optimum.Logarithms[program.FrequencyOf(index)]), Math.Exp(optimum.Logarithms[program.CurrentOf(index)]));
        LossPolynomial own = point.Costs.Conduction(element, option);
        double watts = (own.Current2 * amperes * amperes) + (own.Volts2PerHertz2 * point.Point.InputVolts * point.Point.InputVolts / (hertz * hertz));
        return point.Weight * point.Point.LoadAmperes / amperes * watts / Math.Exp(optimum.Logarithms[element]);
    }

    private static (double Capacitors, double Switches) AreasOf(Candidate candidate, Process process, AreaBudget area)
    {
        StagePoint[] points = [LossyStages.PointOf(candidate, process, 60, 3, 0.01, 1)];
        ElementOptions options = LossyStages.Options(candidate, process);
        int count = options.Capacitors.Length + options.Switches.Length;
        GeometricOptimum optimum = new StageProgram(points, options, Coils(candidate, process), area, s_hertz).Solve(new int[count]);
        Assert.True(optimum.IsFeasible);
        SizedConverter sized = LossyStages.Sized(candidate, process, 60, new int[count], [.. optimum.Logarithms.Take(count).Select(Math.Exp)]);
        return (sized.Capacitors.Sum(c => c.AreaSquareMetres), sized.Switches.Sum(s => s.AreaSquareMetres));
    }

    private static InductorDevice[] Coils(Candidate candidate, Process process) => [.. candidate.Converter!.Inductors.Select(_ => process.Inductors[0])];
}
