using Fractions;
using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>
/// Boundary and ratio of the plain stages against R. W. Erickson and D. Maksimović, Fundamentals of Power Electronics,
/// chapter 5 (from memory), with resistances so small that the formulas of ideal stages hold.
/// </summary>
public sealed class DiscontinuousTextbookTests
{
    private const double Input = 10;
    private const double Frequency = 1e6;

    private static readonly IReadOnlyDictionary<string, (Func<Fraction, Converter> Stage, Func<double, double> Boundary, Func<double, double, double> Ratio, Func<double, double> Continuous)> Books =
        new Dictionary<string, (Func<Fraction, Converter>, Func<double, double>, Func<double, double, double>, Func<double, double>)>
        {
            ["step-down"] = (d => Stages.StepDown(d), d => 1 - d, (d, k) => 2 / (1 + Math.Sqrt(1 + (4 * k / (d * d)))), d => d),
            ["step-up"] = (d => Stages.StepUp(d), d => d * (1 - d) * (1 - d), (d, k) => (1 + Math.Sqrt(1 + (4 * d * d / k))) / 2, d => 1 / (1 - d)),
            ["inverting"] = (d => Stages.Inverting(d), d => (1 - d) * (1 - d), (d, k) => -d / Math.Sqrt(k), d => -d / (1 - d)),
        };

    public static TheoryData<string, double> Cases
    {
        get
        {
            TheoryData<string, double> cases = [];
            foreach (string name in Books.Keys)
            {
                foreach (double duty in (double[])[0.1, 0.3, 0.5, 0.8])
                {
                    cases.Add(name, duty);
                }
            }

            return cases;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_ratio_is_that_of_textbooks_on_both_sides_of_the_boundary(string name, double duty)
    {
        (Func<Fraction, Converter> stage, Func<double, double> boundary, Func<double, double, double> ratio, Func<double, double> continuous) = Books[name];
        foreach (double part in (double[])[1e-4, 0.1, 0.5, 0.999, 1.001, 2, 10])
        {
            // K = 2 L f / R at the boundary times the part, with R the output voltage per load current
            double k = part * boundary(duty), expected = part < 1 ? ratio(duty, k) : continuous(duty);
            double load = expected * Input * k / (2 * Stages.Henries * Frequency);
            ConductionPoint point = ConductionModel.Of(stage(Fraction.FromDoubleRounded(duty))).At(new OperatingPoint(Input, load, Frequency));
            Assert.Equal(part < 1, point.IsDiscontinuous);
            Assert.Equal(expected, point.Ratio, 3e-7 * Math.Abs(expected));
        }
    }

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.6)]
    public void The_end_of_the_current_is_where_the_step_down_stages_volt_seconds_balance(double duty)
    {
        double k = 0.2 * (1 - duty), ratio = 2 / (1 + Math.Sqrt(1 + (4 * k / (duty * duty))));
        double load = ratio * Input * k / (2 * Stages.Henries * Frequency);
        ConductionPoint point = ConductionModel.Of(Stages.StepDown(Fraction.FromDoubleRounded(duty))).At(new OperatingPoint(Input, load, Frequency));
        Assert.Equal(duty, point.ConductingShares[0], 1e-15);
        Assert.Equal(duty * ((1 / ratio) - 1), point.ConductingShares[1], 1e-7);
        Assert.Equal((1 - ratio) * Input * duty / (Stages.Henries * Frequency), point.Steady.Inductors["coil"].PeakCurrentAmperes, 1e-6);
    }

    [Fact]
    public void Ratio_and_end_pass_the_boundary_without_a_step()
    {
        ConductionModel model = ConductionModel.Of(Stages.StepDown(new(3, 10), 0.02));
        double low = 0.05, high = 2;
        for (int step = 0; step < 45; step++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = model.At(new(Input, middle, Frequency)).IsDiscontinuous ? (middle, high) : (low, middle);
        }

        ConductionPoint below = model.At(new(Input, low, Frequency)), above = model.At(new(Input, high, Frequency));
        Assert.True(below.IsDiscontinuous);
        Assert.False(above.IsDiscontinuous);
        Assert.Equal(above.Ratio, below.Ratio, 1e-11);
        Assert.Equal(0.7, below.ConductingShares[1], 1e-10);
    }

    [Fact]
    public void Where_no_current_ends_a_phase_the_solution_is_the_ordinary_one()
    {
        Converter converter = Stages.StepDown(new(3, 10), 0.02, LoadKind.Current);
        OperatingPoint point = new(Input, 3, Frequency);
        ConductionPoint found = ConductionModel.Of(converter).At(point);
        PeriodicSteadyState steady = SteadyStateModel.Of(ModeAnalysis.Of(converter, converter.Modes[0])).At(point);
        Assert.False(found.IsDiscontinuous);
        Assert.Equal(steady.AverageOutputVoltageVolts, found.AverageOutputVoltageVolts, 1e-13);
        Assert.Equal(steady.Inductors["coil"].RmsCurrentAmperes, found.Steady.Inductors["coil"].RmsCurrentAmperes, 1e-13);
        Assert.Equal(0.7, found.ConductingShares[1], 1e-15);
    }

    [Fact]
    public void Two_currents_that_end_in_one_period_are_found_together()
    {
        ConductionPoint point = ConductionModel.Of(Stages.ThreeLevel(0.01)).At(new OperatingPoint(Input, 0.1, Frequency));
        Assert.True(point.IsDiscontinuous);
        Assert.All([1, 3], j => Assert.InRange(point.ConductingShares[j], 0.01, 0.29));

        // half the input over each on-time: the step-down stage of half the input and of twice frequency and duty
        double k = 2 * Stages.Henries * 2 * Frequency * 0.1 / point.AverageOutputVoltageVolts;
        Assert.Equal(1 / (1 + Math.Sqrt(1 + (4 * k / 0.16))), point.Ratio, 0.01);
        double[] middle = [.. point.Steady.SampleNodePotential("x", [0.49 / Frequency, 0.99 / Frequency]).Select(v => v!.Value)];
        Assert.All(middle, v => Assert.Equal(point.AverageOutputVoltageVolts, v, 1e-10));
    }

    [Fact]
    public void Without_load_there_is_no_operating_point()
    {
        ScNetException exception = Assert.Throws<ScNetException>(() => ConductionModel.Of(Stages.StepUp(new(1, 2))).At(new OperatingPoint(Input, 0, Frequency)));
        Diagnostic diagnostic = Assert.Single(exception.Diagnostics);
        Assert.Equal((DiagnosticCodes.NoPeriodicState, 2), (diagnostic.Code, diagnostic.Phase));
    }
}
