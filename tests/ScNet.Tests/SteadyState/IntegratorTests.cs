using ScNet.Analysis;
using ScNet.Netlists;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// The exact impedance against a general-purpose integrator: fourth-order Runge-Kutta of MathNet on the
/// nodal equations, run to the periodic state.
/// </summary>
public sealed class IntegratorTests
{
    private const double Tolerance = 1e-6;

    private static readonly double[] s_timesCorner = [0.3, 0.8, 1.3, 4];

    private static readonly Dictionary<string, Func<Converter>> s_converters = new()
    {
        ["series-parallel 3:1"] = () => SeriesParallel.StepDown(3),
        ["ladder 1:4"] = () => Ladder.StepUp(4),
        ["Dickson 4:1, unequal capacitors"] = () => Spread(Dickson.StepDown(4)),
        ["Fibonacci step-up of three stages"] = () => Spread(Fibonacci.StepUp(3)),
        ["doubler step-down of two stages"] = () => Doubler.StepDown(2),
        ["three phases"] = () => Example("three-phase-4.toml"),
        ["redundant dc capacitor"] = () => Ladders.Of(4, hasTopCapacitor: true),
        ["series resistances"] = () => WithEsr(Ladder.StepDown(3)),
        ["current load on an output capacitor"] = () => Spread(Loaded()),
        ["parallel flying capacitors, unequal duties"] = Parallel,
    };

    public static TheoryData<string> Names => [.. s_converters.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Runge_Kutta_agrees_about_the_corner(string name)
    {
        Converter converter = s_converters[name]();
        ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
        OutputImpedance impedance = OutputImpedance.Of(analysis);
        foreach (double frequencyHz in s_timesCorner.Select(t => t * impedance.CornerFrequencyHz))
        {
            double expected = PeriodicOracle.Of(analysis).ByRungeKutta(frequencyHz, stepsPerTimeConstant: 10);
            double actual = impedance.Ohms(frequencyHz);
            Assert.True(
                Math.Abs(expected - actual) <= Tolerance * expected,
                $"At {frequencyHz:R} Hz expected {expected:R}, but got {actual:R} ({Math.Abs(expected - actual) / expected:e1}).");
        }
    }

    [Fact]
    public void Every_mode_of_an_example_with_gears_agrees()
    {
        Converter converter = Example("core-gears.toml");
        Assert.True(converter.Modes.Count > 1);
        foreach (ModeAnalysis analysis in converter.Modes.Select(m => ModeAnalysis.Of(converter, m)))
        {
            OutputImpedance impedance = OutputImpedance.Of(analysis);
            double frequencyHz = 0.7 * impedance.CornerFrequencyHz;
            double expected = PeriodicOracle.Of(analysis).ByRungeKutta(frequencyHz, stepsPerTimeConstant: 10);
            Assert.Equal(expected, impedance.Ohms(frequencyHz), Tolerance * expected);
        }
    }

    private static Converter Example(string file) => NetlistReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", file)).GetConverter();

    private static Converter Spread(Converter converter) => converter.WithValues(
        [.. converter.Capacitors.Select((c, i) => c.Farads * (1 + (0.7 * i)))],
        [.. converter.Switches.Select((s, i) => s.Ohms * (1 + (0.3 * (i % 4))))],
        [.. converter.Capacitors.Select(c => c.EsrOhms)]);

    private static Converter WithEsr(Converter converter) => converter.WithValues(
        [.. converter.Capacitors.Select(c => c.Farads)],
        [.. converter.Switches.Select(s => s.Ohms)],
        [.. converter.Capacitors.Select((_, i) => 0.2 + (0.1 * i))]);

    private static Converter Loaded() => Converter.Create("loaded half").Input("vin").Output("vout", LoadKind.Current)
        .Capacitor("fly", "p", "n", 2).Capacitor("out", "vout", Converter.ReferenceNode, 1)
        .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
        .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", Converter.ReferenceNode, on: 2).Build();

    private static Converter Parallel() => Converter.Create("two halves").Input("vin").Output("vout").Duties(0.3, 0.7)
        .Capacitor("fly1", "p", "n", 2).Capacitor("fly2", "p", "n", 0.7).Capacitor("fly3", "q", "m", 1)
        .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1, ohms: 2)
        .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", Converter.ReferenceNode, on: 2)
        .Switch("s5", "vin", "q", on: 2, ohms: 3).Switch("s6", "m", "n", on: 1)
        .Switch("s7", "q", "p", on: 1).Switch("s8", "m", "vout", on: 2).Build();
}
