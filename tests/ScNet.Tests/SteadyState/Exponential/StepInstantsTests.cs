using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>At which instants a step of the load is tried, and when what follows counts as periodic.</summary>
public sealed class StepInstantsTests
{
    private const double Before = 0.1;
    private const double After = 0.3;

    /// <summary>
    /// Phase 1 discharges 1 F through 1 Ω, phase 2 charges it through 10 mΩ to 1 V less 1 mV. Just before phase 1 ends, half a second times 0.1 A
    /// lower, a step would come to 50 mV less; but the next one is tried as phase 2 begins, where 1 Ω drops nothing any more.
    /// </summary>
    [Fact]
    public void A_step_is_tried_as_a_phase_begins_and_not_as_it_ends()
    {
        Converter converter = Converter.Create("two ways").Input("vin").Output("vout", LoadKind.Current)
            .Capacitor("store", "a", Converter.ReferenceNode, 1).Switch("charge", "vin", "a", on: 2, 0.01)
            .Switch("long", "a", "vout", on: 1, 1).Switch("short", "a", "vout", on: 2, 1e-9).Build();
        (double volts, double instant) = Response(converter, 1).Lowest(0.01, 1);
        Assert.Equal(1 - (0.01 * Before) - After - (After * 0.01), volts, 1e-8);
        Assert.Equal(0, instant);
    }

    /// <summary>2 Ω and 3 Ω divide 1 V with 1.2 Ω before the load. Every step is as deep as every other, and nothing follows.</summary>
    [Fact]
    public void Of_steps_that_are_equally_deep_the_first_counts_and_without_a_state_all_is_settled()
    {
        Converter divider = Converter.Create("divider").Input("vin").Output("vout", LoadKind.Current)
            .Switch("top", "vin", "vout", on: [1, 2], ohms: 2).Switch("low", "vout", Converter.ReferenceNode, on: [1, 2], ohms: 3).Build();
        (double volts, double instant) = Response(divider, 1).Lowest(1e9, 4);
        Assert.Equal(0.6 - (1.2 * After), volts, 1e-12);
        Assert.Equal(0, instant);
    }

    /// <summary>3 Ω and 2 F behind a switch that never opens. In the second of three phases, 10⁻¹² of the period, next to nothing moves.</summary>
    [Fact]
    public void A_phase_in_which_nothing_moves_does_not_count_as_a_period()
    {
        Fractions.Fraction half = new(1, 2), least = new(1, 1_000_000_000_000);
        Converter converter = Converter.Create("direct").Input("vin").Output("vout", LoadKind.Current).Duties(half, least, half - least)
            .Capacitor("out", "vout", Converter.ReferenceNode, 2).Switch("s", "vin", "vout", on: [1, 2, 3], 3).Build();
        (double volts, _) = Response(converter, 1 / 0.6).Lowest(3.33 * 6, 1);
        Assert.Equal(1 - (3 * Before) - (3 * (After - Before) * (1 - Math.Exp(-3.33))), volts, 1e-8);
    }

    private static StepResponse Response(Converter converter, double frequencyHz)
    {
        PeriodSolver solver = ExponentialTwoPort.Of(converter, converter.Modes[0]).Solver;
        return new(solver, ExponentialSignals.Of(converter, solver, frequencyHz, [1, Before]), After);
    }
}
