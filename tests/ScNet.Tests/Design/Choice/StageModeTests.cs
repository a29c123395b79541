using ScNet.Design.Choice;
using ScNet.Design.Losses;
using ScNet.Design.Regulation;
using ScNet.Devices;

namespace ScNet.Tests.Design.Choice;

/// <summary>A step-down stage of 1/50 Ω and 1/10 Ω of winding, held by its duty at the frequency and the current that lose least.</summary>
public sealed class StageModeTests
{
    private const double Volts = 3, Output = 0.75, Ceiling = 1e8;

    private static readonly StageMode s_free = Of(LossyStages.Process);

    private static readonly StageMode s_limited = Of(LossyStages.Process with { Inductors = [LossyStages.Coil with { MaximumAmperes = 0.5 }] });

    [Theory]
    [InlineData(0.3, RegulationOutcome.Held)]
    [InlineData(1e-4, RegulationOutcome.HeldBySkipping)]
    public void No_other_frequency_and_current_loses_less(double load, RegulationOutcome outcome)
    {
        RegulatedPoint point = s_free.Hold(Volts, Output, load);
        Assert.Equal(outcome, point.Outcome);
        Assert.Equal(Output * load, point.OutputWatts, 1e-15);
        double amperes = load / point.RunningShare, hertz = point.FrequencyHz / point.RunningShare;

        // the duty gives the output and what drops at 0.12 Ω
        Assert.Equal((Output + (0.12 * amperes)) / Volts, point.Duty, 1e-3 * point.Duty);
        StageCycle cycle = CycleAt(point.Duty);
        double[] watts = new double[LossModel.KindCount];
        cycle.WattsAt(Volts, amperes, hertz, point.RunningShare, watts);
        Assert.All(Enum.GetValues<LossKind>(), kind => Assert.Equal(watts[(int)kind], point.LossOf(kind), 1e-9 * watts.Sum()));
        double own = cycle.RunningWatts(Volts, amperes, hertz) / amperes;
        foreach (double other in Steps(load, load * 1e5))
        {
            foreach (double frequency in Steps(1e5, Ceiling))
            {
                Assert.True(cycle.RunningWatts(Volts, other, frequency) / other >= own * (1 - 1e-4), $"{other} A at {frequency} Hz");
            }
        }
    }

    // I + V D (1 − D)/(2 f L) is at most 0.5 A: no cycle is slower, and at 0.499 A the ceiling of 100 MHz is too slow by what is told
    [Fact]
    public void The_largest_current_of_the_coil_bounds_the_frequency_and_the_load()
    {
        RegulatedPoint light = s_limited.Hold(Volts, Output, 1e-4);
        double amperes = 1e-4 / light.RunningShare, hertz = light.FrequencyHz / light.RunningShare;
        Assert.InRange(amperes + (Volts * light.Duty * (1 - light.Duty) / (2 * hertz * 1e-6)), 0, 0.5 * (1 + 1e-6));
        const double load = 0.499;
        Assert.Equal(RegulationOutcome.ImpedanceTooHigh, s_limited.Hold(Volts, Output, load).Outcome);
        Assert.Equal("at the ceiling of 100 MHz 499 mA is too much for its capacitors or inductors", s_limited.ReasonAt(Volts, Output, load));
        Assert.Equal(1, s_limited.LackAt(Volts, Output, load) / (Volts * 0.1875 / 2e-6 / (0.5 - load) / Ceiling), 1e-9);
        Assert.Equal(1, s_limited.LackAt(Volts, Output, 0.1));
        Assert.Empty(s_limited.ReasonAt(Volts, Output, 0.1));
    }

    [Fact]
    public void What_no_duty_gives_is_lost_whatever_the_load()
    {
        Assert.Equal(RegulationOutcome.DutyOutOfRange, s_free.Hold(Volts, 3.1, 0.1).Outcome);
        Assert.Equal("no duty gives 3.1 V from 3 V", s_free.ReasonAt(Volts, 3.1, 0.1));
        Assert.True(double.IsPositiveInfinity(s_free.LackAt(Volts, 3.1, 0.1)));
    }

    // a series-capacitor stage gives half of its duty, which is one half at most: an eighth of the input at a quarter, and what drops above it
    [Fact]
    public void The_duty_is_a_share_of_the_period_where_it_ends_below_one()
    {
        Candidate stage = StageCandidates.SeriesCapacitor();
        (int capacitors, int switches) = (stage.Converter!.Capacitors.Count, stage.Converter.Switches.Count);
        double[] values = [.. Enumerable.Repeat(1e-5, capacitors), .. Enumerable.Repeat(50.0, switches)];
        StageMode mode = new(stage, node => LossyStages.Sized(stage, LossyStages.Process, node, new int[values.Length], values), new(1e5, Ceiling));
        Assert.Equal(0.25, mode.NetworkAt(0.25)!.Value.Converter.Phases[0].Duty.ToDouble());
        RegulatedPoint point = mode.Hold(Volts, Volts / 8, 0.1);
        Assert.True(point.IsHeld);
        Assert.InRange(point.Duty, 0.25, 0.25 + (2 * 0.2 * 0.1 / point.RunningShare / Volts));
    }

    [Fact]
    public void Voltages_and_currents_are_positive()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => s_free.Hold(0, Output, 0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => s_free.Hold(Volts, -1, 0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => s_free.Hold(Volts, Output, double.NaN));
    }

    [Theory]
    [InlineData(0.25, 60)]
    [InlineData(0.2529, 61)]
    public void The_network_at_a_duty_is_that_of_the_nearest_step(double duty, int node) =>
        Assert.Equal(node / 240.0, s_free.NetworkAt(duty)!.Value.Converter.Phases[0].Duty.ToDouble(), 1e-12);

    private static IEnumerable<double> Steps(double from, double to)
    {
        for (double value = from; value <= to; value *= 1.1)
        {
            yield return value;
        }
    }

    private static StageCycle CycleAt(double duty)
    {
        int node = (int)Math.Floor(duty * 240);
        return At(node).Towards(At(node + 1), (duty * 240) - node);

        static StageCycle At(int node) => new(Sized(LossyStages.Process, node), LossyStages.StepDown.Duties.AnalysisAt(node));
    }

    private static StageMode Of(Process process) => new(LossyStages.StepDown, node => Sized(process, node), new(1e5, Ceiling));

    private static SizedConverter Sized(Process process, int node) => LossyStages.Sized(LossyStages.StepDown, process, node, [0, 0], [50, 50]);
}
