using CsCheck;
using Fractions;
using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Regulation;
using ScNet.SteadyState;
using ScNet.Tests.Design.Losses;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Regulation;

/// <summary>What a duty holds, against closed forms and against stages built for the duty that was found.</summary>
[Trait("Kind", "Law")]
public sealed class DutyModeTests
{
    private const double Hertz = 1e6;

    private static readonly Interval<double> s_duties = new(0.02, 0.95);

    private readonly RegulatedMode _down = RegulatedModes.OfDuty("step-down", d => Down(d), s_duties, Hertz);

    private readonly RegulatedMode _up = RegulatedModes.OfDuty("step-up", d => Up(d), s_duties, Hertz);

    private readonly RegulatedMode _levels = RegulatedModes.OfDuty("four levels", d => Levels(d), s_duties, Hertz, [1.0 / 3, 2.0 / 3]);

    [Fact]
    public void A_step_down_stage_has_the_duty_of_its_closed_form() => Gen.Select(Gen.Double[2, 5], Gen.Double[0.1, 0.85], Gen.Double[0.2, 1]).Holds(
        (input, share, load) =>
        {
            // equal switches and the winding always in the path of the current: V = D V_in - (R_on + R_w) I, derived by hand
            RegulatedPoint point = _down.Hold(input, share * input, load);
            Assert.Equal(RegulationOutcome.Held, point.Outcome);
            Assert.Equal(share + (0.08 * load / input), point.Duty, 1e-11);
            Assert.Equal(Hertz, point.FrequencyHz);
        },
        count: 200);

    [Fact]
    public void A_stage_built_for_the_duty_that_was_found_has_the_output_and_the_losses()
    {
        Check(_up, Up, 3, 4.2, 1);
        Check(_levels, Levels, 4.2, 0.9, 1.5);
        Check(_levels, Levels, 3.6, 1.7, 1.8);
        Check(_levels, Levels, 3.1, 2.3, 1.4);

        static void Check(RegulatedMode mode, Func<Fraction, LossModel> stage, double input, double output, double load)
        {
            RegulatedPoint point = mode.Hold(input, output, load);
            Assert.Equal(RegulationOutcome.Held, point.Outcome);
            const long Denominator = 1L << 48;
            LossModel built = stage(new Fraction((long)Math.Round(point.Duty * Denominator), Denominator));
            double ohms = built.Analysis.FastSwitchingLimit.Ohms + (built.Analysis.ChargeSharing!.OhmsAtOneHertz / Hertz);
            Assert.Equal(output, (built.Analysis.Ratio.ToDouble() * input) - (ohms * load), 1e-9);
            var watts = new double[LossModel.KindCount];
            built.WattsAt(input, load, Hertz, ohms, watts);
            Assert.All(Enum.GetValues<LossKind>(), kind => Assert.Equal(watts[(int)kind], point.LossOf(kind), 1e-7 * watts.Sum()));
        }
    }

    [Fact]
    public void The_exact_periodic_solution_has_that_output_but_for_ripple()
    {
        foreach ((RegulatedMode mode, Func<Fraction, LossModel> stage, double output) in new (RegulatedMode, Func<Fraction, LossModel>, double)[] { (_down, Down, 1.1), (_levels, Levels, 1.9) })
        {
            RegulatedPoint point = mode.Hold(3.6, output, 1.5);
            LossModel built = stage(new Fraction((long)Math.Round(point.Duty * 4096), 4096));
            TwoPortPoint exact = SteadyStateModel.Of(built.Analysis).TwoPort.At(Hertz);
            Assert.Equal(RegulationOutcome.Held, point.Outcome);
            Assert.Equal(output, (exact.Ratio * 3.6) - (exact.Ohms * 1.5), 4e-3 * output);
        }
    }

    [Fact]
    public void Of_two_duties_a_step_up_stage_takes_the_lower_one()
    {
        // 1/(1 - D) V_in - R I/(1 - D)² has its maximum where (1 - D) = 2 R I/V_in
        RegulatedPoint point = _up.Hold(3, 4.5, 1);
        Assert.True(1 - point.Duty > 2 * 0.08 / 3);
        double d = 1 - point.Duty;
        Assert.Equal(4.5, (3 / d) - (0.08 / (d * d)), 1e-9);
    }

    [Fact]
    public void At_a_light_load_it_works_in_bursts_and_keeps_its_efficiency()
    {
        RegulatedPoint light = _down.Hold(3.6, 1.2, 1e-3), lighter = _down.Hold(3.6, 1.2, 1e-4);
        Assert.Equal((RegulationOutcome.HeldBySkipping, RegulationOutcome.HeldBySkipping), (light.Outcome, lighter.Outcome));
        Assert.Equal(10, light.FrequencyHz / lighter.FrequencyHz, 1e-3);
        Assert.Equal(1, light.Duty / lighter.Duty, 1e-3);
        Assert.Equal(
            (light.TotalLossWatts - light.LossOf(LossKind.Leakage)) / light.OutputWatts,
            (lighter.TotalLossWatts - lighter.LossOf(LossKind.Leakage)) / lighter.OutputWatts,
            1e-3);

        // no current between the load and twice the best one of a burst does better by more than a thousandth
        double best = light.TotalLossWatts, burst = 1e-3 * Hertz / light.FrequencyHz;
        foreach (double factor in new[] { 0.7, 0.9, 1.1, 1.4 })
        {
            LossModel built = Down(new Fraction((long)Math.Round(((1.2 + (0.08 * burst * factor)) / 3.6) * 4096), 4096));
            var watts = new double[LossModel.KindCount];
            built.WattsAt(3.6, burst * factor, Hertz, built.Analysis.FastSwitchingLimit.Ohms, watts);
            double leaking = watts[(int)LossKind.Leakage], other = (watts.Sum() - leaking) * 1e-3 / (burst * factor);
            Assert.True(leaking + other > best * 0.999);
        }
    }

    [Fact]
    public void What_no_duty_gives_is_refused_with_the_range()
    {
        Assert.Equal(RegulationOutcome.DutyOutOfRange, _down.Hold(3, 2.9, 0.5).Outcome);
        Assert.Equal("duties from 0.02 to 0.95 give 20 mV to 2.81 V at this load, and 2.9 V is wanted", _down.ReasonAt(3, 2.9, 0.5));
        Assert.Equal(string.Empty, _down.ReasonAt(3, 1.2, 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => RegulatedModes.OfDuty("none", d => Down(d), new(0, 0.5), Hertz));
        Assert.Throws<ArgumentOutOfRangeException>(() => RegulatedModes.OfDuty("none", d => Down(d), s_duties, 0));
    }

    [Fact]
    public void A_point_allocates_nothing()
    {
        double sum = 0;
        void Ask()
        {
            for (int k = 1; k <= 50; k++)
            {
                sum += _levels.Hold(3 + (k * 0.02), 0.9, 0.01 * k).TotalLossWatts;
            }
        }

        Ask();
        Assert.Equal(0, Allocations.Of(Ask));
        Assert.True(sum > 0);
    }

    private static LossModel Down(Fraction duty) => ModelOf(InductiveStage.StepDown(duty, 2.2e-6, 0.05, 0.03));

    private static LossModel Up(Fraction duty) => ModelOf(InductiveStage.StepUp(duty, 2.2e-6, 0.05, 0.03));

    private static LossModel Levels(Fraction duty) => ModelOf(FlyingCapacitorStage.Of(4, duty, 4.7e-6, 1e-6, 0.05, 0.03));

    private static LossModel ModelOf(Converter converter) => LossModel.Of(Sized.Of(converter, capacitor: Sized.BareCapacitor), ModeAnalysis.Of(converter)); // beside the chip: no plates
}
