using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>The lowest output voltage after a step where it can be written down.</summary>
public sealed class StepResponseTests
{
    // a switch of 10 mΩ recharges 1 F in 50 of its time constants, then the load alone discharges it for half a second
    private const double Ohms = 0.01;
    private const double Before = 0.1;
    private const double After = 0.3;

    /// <summary>
    /// For an eighth of a second after the step the output falls by 0.3 V/s: the later it starts, but for the end of the phase,
    /// the lower it comes. The last of 16 instants with an eighth of a second left is the twelfth.
    /// </summary>
    [Fact]
    public void A_step_is_worst_when_the_larger_load_still_has_all_its_time()
    {
        (double volts, double instant) = Recharged().Lowest(0.125, 16);
        Assert.Equal(1 - (Ohms * Before) - (Before * 0.375) - (After * 0.125), volts, 1e-12);
        Assert.Equal(0.5 + 0.375, instant, 1e-15);
    }

    /// <summary>At a later end of the second phase the larger load has pulled for all of it, from a lower start.</summary>
    [Theory]
    [InlineData(1.6)]
    [InlineData(7.25)]
    [InlineData(1e9)]
    public void After_a_whole_period_it_is_that_of_the_larger_load(double seconds)
    {
        (double volts, _) = Recharged().Lowest(seconds, 4);
        Assert.Equal(1 - (Ohms * After) - (After * 0.5), volts, 1e-12);
    }

    [Fact]
    public void With_one_instant_a_step_comes_when_phases_start()
    {
        // from the start of the second phase on for a quarter of a second
        (double volts, double instant) = Recharged().Lowest(0.25, 1);
        Assert.Equal(1 - (Ohms * Before) - (After * 0.25), volts, 1e-12);
        Assert.Equal(0.5, instant, 1e-15);
    }

    /// <summary>3 Ω and 2 F behind a switch that never opens, in tenths of a time constant: the larger load draws 0.3 V more in the end.</summary>
    [Theory]
    [InlineData(0.07)]
    [InlineData(3.33)]
    [InlineData(12)]
    [InlineData(50)]
    public void Slow_settling_is_followed_to_its_end(double timeConstants)
    {
        Converter converter = Converter.Create("direct").Input("vin").Output("vout", LoadKind.Current)
            .Capacitor("out", "vout", Converter.ReferenceNode, 2).Switch("s", "vin", "vout", on: PhaseSet.Of(1, 2), 3).Build();
        (double volts, _) = Response(converter, 1 / 0.6, 0.01, 0.11).Lowest(timeConstants * 6, 1);
        Assert.Equal(0.97 - (0.3 * (1 - Math.Exp(-timeConstants))), volts, 1e-8);
    }

    private static StepResponse Recharged() => Response(
        Converter.Create("recharged").Input("vin").Output("vout", LoadKind.Current)
            .Capacitor("out", "vout", Converter.ReferenceNode, 1).Switch("s", "vin", "vout", on: 1, Ohms).Build(),
        1,
        Before,
        After);

    private static StepResponse Response(Converter converter, double frequencyHz, double before, double after)
    {
        PeriodSolver solver = ExponentialTwoPort.Of(converter, converter.Modes[0]).Solver;
        return new(solver, ExponentialSignals.Of(converter, solver, frequencyHz, [1, before]), after);
    }
}
