using Fractions;
using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Regulation;
using ScNet.Devices;
using ScNet.Tests.Design.Losses;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Regulation;

/// <summary>What is asked of every mode, and the ranges that modes are made for.</summary>
public sealed class RegulatedModesTests
{
    private static readonly RegulatedMode s_linear = RegulatedModes.Linear(ControlOverhead.None);

    [Fact]
    public void A_mode_lacks_nothing_where_it_holds_and_cannot_do_with_less_than_the_output_power()
    {
        CurrentMode mode = new("plain", 2, 4, _ => 1);
        Assert.Equal((1, double.PositiveInfinity), (mode.LackAt(3, 1, 0.5), mode.LackAt(5, 1, 0.5)));
        Assert.Equal(0.5, mode.LeastInputWatts(3, 2, 0.25));
    }

    [Fact]
    public void A_linear_regulator_draws_the_load_current_and_a_frequency_mode_that_times_its_ratio()
    {
        RegulatedMode half = RegulatedModes.OfFrequency(ModelOf(SeriesParallel.StepDown(2, 1e-9, 2)), new(1e5, 1e6));
        Assert.Equal(1, s_linear.LeastInputWatts(4, 1, 0.25));
        Assert.Equal(0.5, half.LeastInputWatts(4, 1, 0.25));
    }

    [Fact]
    public void Voltages_and_currents_of_zero_are_refused()
    {
        RegulatedMode half = RegulatedModes.OfFrequency(ModelOf(SeriesParallel.StepDown(2, 1e-9, 2)), new(1e5, 1e6));
        RegulatedMode duty = RegulatedModes.OfDuty("step-down", d => ModelOf(InductiveStage.StepDown(d, 2.2e-6, 0.05, 0.03)), new(0.4, 0.6), 1e6);
        Assert.All([s_linear, half, duty], mode =>
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => mode.Hold(0, 1, 1));
            Assert.Throws<ArgumentOutOfRangeException>(() => mode.Hold(1, 0, 1));
            Assert.Throws<ArgumentOutOfRangeException>(() => mode.Hold(1, 1, 0));
            Assert.Throws<ArgumentOutOfRangeException>(() => mode.ReasonAt(0, 1, 1));
            Assert.Throws<ArgumentOutOfRangeException>(() => mode.ReasonAt(1, 1, 0));
        });
    }

    [Fact]
    public void Breaks_are_kept_clear_of_and_without_any_the_duties_are_one_piece()
    {
        List<double> asked = [];
        RegulatedModes.OfDuty("in two", Stage, new(0.4, 0.6), 1e6, [0.5]);
        Assert.DoesNotContain(0.5, asked);
        Assert.Contains(asked, d => d is > 0.499 and < 0.5);
        Assert.Contains(asked, d => d is > 0.5 and < 0.501);
        asked.Clear();
        Assert.Equal("whole", RegulatedModes.OfDuty("whole", Stage, new(0.4, 0.6), 1e6).Name);
        Assert.Equal((0.4, 0.6), (asked.Min(), asked.Max()));

        LossModel Stage(Fraction duty)
        {
            asked.Add(Math.Round(duty.ToDouble(), 12));
            return ModelOf(InductiveStage.StepDown(duty, 2.2e-6, 0.05, 0.03));
        }
    }

    [Fact]
    public void Duties_beyond_0_and_1_and_none_at_all_are_refused_before_any_stage_is_built() =>
        Assert.All([new(-0.1, 0.5), new(0.5, 1.1), default], (Interval<double> duty) =>
        {
            ArgumentOutOfRangeException thrown = Assert.Throws<ArgumentOutOfRangeException>(() => RegulatedModes.OfDuty("none", _ => throw new InvalidOperationException(), duty, 1e6));
            Assert.Contains("a range of duties that is determined, between 0 and 1", thrown.Message, StringComparison.Ordinal);
        });

    [Fact]
    public void Duties_of_0_and_1_and_a_range_without_width_leave_nothing_to_regulate() =>
        Assert.All([new(0, 0.5), new(0.5, 1), new(0.5, 0.5)], (Interval<double> duty) =>
        {
            ArgumentOutOfRangeException thrown = Assert.Throws<ArgumentOutOfRangeException>(() => RegulatedModes.OfDuty("none", _ => throw new InvalidOperationException(), duty, 1e6));
            Assert.StartsWith("Expected a range of duties between 0 and 1.", thrown.Message, StringComparison.Ordinal);
        });

    private static LossModel ModelOf(Converter converter) => LossModel.Of(Sized.Of(converter, capacitor: Sized.BareCapacitor), ModeAnalysis.Of(converter));
}
