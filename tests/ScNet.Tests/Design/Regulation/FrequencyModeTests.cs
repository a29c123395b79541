using CsCheck;
using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Regulation;
using ScNet.SteadyState;
using ScNet.Tests.Design.Losses;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Regulation;

/// <summary>What a frequency holds, against the exact impedance and against losses at that frequency.</summary>
[Trait("Kind", "Law")]
public sealed class FrequencyModeTests
{
    private static readonly Interval<double> s_hertz = new(1e5, 1e8);

    private static readonly LossModel s_third = ModelOf(SeriesParallel.StepDown(3, 2e-9, 3));

    private static readonly RegulatedMode s_mode = RegulatedModes.OfFrequency(s_third, s_hertz);

    public static Gen<(double Input, double Output, double Load)> Points { get; } =
        Gen.Select(Gen.Double[1, 5], Gen.Double[0.05, 0.4], Gen.Double[-6, -1], (v, share, load) => (v, v * share, Math.Pow(10, load)));

    [Fact]
    public void The_output_is_held_to_ten_digits_by_a_frequency_that_the_exact_impedance_confirms() => Points.Holds(
        p =>
        {
            RegulatedPoint point = s_mode.Hold(p.Input, p.Output, p.Load);
            if (point.Outcome == RegulationOutcome.Held)
            {
                double held = (p.Input / 3) - (s_third.Impedance.Ohms(point.FrequencyHz) * p.Load);
                Assert.Equal(1, held / p.Output, 1e-10);
            }
        },
        count: 500);

    [Fact]
    public void Outcomes_are_those_of_bisection_on_the_exact_impedance() => Points.Holds(
        p =>
        {
            double needed = ((p.Input * (1.0 / 3)) - p.Output) / p.Load;
            RegulationOutcome expected = needed <= 0 ? RegulationOutcome.RatioTooLow
                : needed < s_third.Impedance.Ohms(1e8) ? RegulationOutcome.ImpedanceTooHigh
                : needed > s_third.Impedance.Ohms(1e5) ? RegulationOutcome.HeldBySkipping
                : RegulationOutcome.Held;
            Assert.Equal(expected, s_mode.Hold(p.Input, p.Output, p.Load).Outcome);
        },
        count: 500);

    [Fact]
    public void The_losses_of_a_frequency_within_the_range_are_those_of_the_budget_there()
    {
        RegulatedPoint point = s_mode.Hold(3.6, 1.1, 0.002);
        LossBudget budget = s_third.At(new OperatingPoint(3.6, 0.002, point.FrequencyHz));
        Assert.Equal(1.1, budget.OutputVolts, 1e-10);
        Assert.All(Enum.GetValues<LossKind>(), kind => Assert.Equal(budget.WattsOf(kind), point.LossOf(kind), 1e-9 * budget.TotalLossWatts));
        Assert.Equal(budget.Efficiency!.Value, point.Efficiency, 1e-9);
    }

    [Fact]
    public void Below_the_floor_cycles_are_left_out_and_the_losses_per_cycle_stay()
    {
        double atFloor = s_third.Impedance.Ohms(1e5);
        RegulatedPoint whole = s_mode.Hold(3, 1 - (atFloor * 1e-5 * (1 - 1e-12)), 1e-5), tenth = s_mode.Hold(3, 1 - (atFloor * 1e-5), 1e-6);
        Assert.Equal((RegulationOutcome.Held, RegulationOutcome.HeldBySkipping), (whole.Outcome, tenth.Outcome));
        Assert.Equal(1e4, tenth.FrequencyHz, 1e-6);
        Assert.All(
            [LossKind.Conduction, LossKind.ChargeSharing, LossKind.GateDrive, LossKind.Junctions, LossKind.Plates],
            kind => Assert.Equal(1, 10 * tenth.LossOf(kind) / whole.LossOf(kind), 1e-9));
        Assert.Equal(whole.LossOf(LossKind.Leakage), tenth.LossOf(LossKind.Leakage), 1e-15);
    }

    [Fact]
    public void Efficiency_stays_below_output_over_ratio_times_input_and_reaches_it_without_parasitics() => Points.Holds(
        p =>
        {
            RegulatedPoint point = s_mode.Hold(p.Input, p.Output, p.Load);
            if (point.IsHeld)
            {
                double bound = 3 * p.Output / p.Input;
                Assert.True(point.Efficiency < bound);
                double resistive = point.LossOf(LossKind.Conduction) + point.LossOf(LossKind.ChargeSharing);
                Assert.Equal(bound, point.OutputWatts / (point.OutputWatts + resistive), 1e-9);
            }
        },
        count: 500);

    [Fact]
    public void Twice_of_everything_at_twice_the_load_changes_no_efficiency()
    {
        RegulatedMode twice = RegulatedModes.OfFrequency(ModelOf(SeriesParallel.StepDown(3, 4e-9, 1.5)), s_hertz);
        foreach ((double input, double output, double load) in new[] { (3.6, 1.1, 0.002), (3.0, 0.9, 1e-6), (4.2, 1.2, 0.02) })
        {
            RegulatedPoint once = s_mode.Hold(input, output, load), double_ = twice.Hold(input, output, 2 * load);
            Assert.Equal(once.Outcome, double_.Outcome);
            Assert.Equal(1, double_.FrequencyHz / once.FrequencyHz, 1e-9);
            Assert.Equal(once.Efficiency, double_.Efficiency, 1e-9);
        }
    }

    [Fact]
    public void A_mode_that_joins_input_and_output_drops_what_is_too_much()
    {
        Converter through = Converter.Create("through").Input("vin").Output("vout").Capacitor("fly", "vout", "gnd", 1e-9)
            .Switch("s1", "vin", "vout", on: PhaseSet.Of(1, 2), ohms: 2).Build();
        RegulatedMode mode = RegulatedModes.OfFrequency(ModelOf(through), s_hertz);
        RegulatedPoint point = mode.Hold(3, 2, 0.1);
        Assert.Equal(RegulationOutcome.HeldByDropping, point.Outcome);
        Assert.Equal(0.1, point.LossOf(LossKind.Conduction) + point.LossOf(LossKind.ChargeSharing), 1e-12);
        Assert.Equal(RegulationOutcome.ImpedanceTooHigh, mode.Hold(3, 2.9, 0.1).Outcome);
        Assert.Equal("needs an output impedance of at most 1 Ω, the fast limit is 2 Ω", mode.ReasonAt(3, 2.9, 0.1));
    }

    [Fact]
    public void Reasons_name_what_is_needed_and_what_there_is()
    {
        Assert.Equal(string.Empty, s_mode.ReasonAt(3.6, 1.1, 0.002));
        Assert.Equal("a ratio of 1/3 gives at most 1 V without load, and 1.1 V is wanted", s_mode.ReasonAt(3, 1.1, 0.002));
        Assert.Equal($"needs an output impedance of at most 1 Ω, the fast limit is {EngineeringNumber.Of(s_third.Analysis.FastSwitchingLimit.Ohms, "Ω")}", s_mode.ReasonAt(3.6, 1.1, 0.1));
        RegulatedMode slow = RegulatedModes.OfFrequency(s_third, new(1e5, 1e7));
        Assert.Equal($"needs an output impedance of at most 10 Ω, at the ceiling of 10 MHz it is {EngineeringNumber.Of(s_third.Impedance.Ohms(1e7), "Ω")}", slow.ReasonAt(3.6, 1, 0.02));
    }

    // a halver of four switches of 2 Ω that carry half of the charge in half of the period: 4 · (1/2)²/(1/2) · 2 Ω = 4 Ω
    [Fact]
    public void An_impedance_of_just_the_fast_limit_is_refused_by_that() => Assert.Equal(
        "needs an output impedance of at most 4 Ω, the fast limit is 4 Ω",
        RegulatedModes.OfFrequency(ModelOf(SeriesParallel.StepDown(2, 1e-9, 2)), new(1e5, 1e6)).ReasonAt(10, 1, 1));

    [Fact]
    public void A_held_point_allocates_nothing()
    {
        double sum = 0;
        void Ask()
        {
            for (int k = 1; k <= 200; k++)
            {
                sum += s_mode.Hold(3 + (k * 0.01), 0.9, 1e-5 * k).TotalLossWatts;
            }
        }

        Ask();
        Assert.Equal(0, Allocations.Of(Ask));
        Assert.True(sum > 0);
    }

    [Fact]
    public void A_converter_with_an_inductor_and_a_range_without_width_are_refused()
    {
        LossModel stage = ModelOf(InductiveStage.StepDown(new(1, 4), 1e-6, 0.1, 0.05));
        Assert.Contains("duty regulates", Assert.Throws<ArgumentException>(() => RegulatedModes.OfFrequency(stage, s_hertz)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => RegulatedModes.OfFrequency(s_third, new(1e6, 1e6)));
        Assert.Throws<ArgumentOutOfRangeException>(() => RegulatedModes.OfFrequency(s_third, default));
        Assert.Throws<ArgumentOutOfRangeException>(() => s_mode.Hold(double.NaN, 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => s_mode.Hold(3, 1, 0));
    }

    private static LossModel ModelOf(Converter converter) => LossModel.Of(Sized.Of(converter), ModeAnalysis.Of(converter));
}
