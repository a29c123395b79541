using ScNet.Design.Choice;
using ScNet.Design.Losses;
using ScNet.Design.Regulation;
using ScNet.Devices;

namespace ScNet.Tests.Design.Choice;

/// <summary>A step-down stage whose coil bears little, where its least frequency is the ceiling.</summary>
public sealed class StageModeLimitsTests
{
    private const double Volts = 2, Most = 0.02;

    // 10 zA and what its doubles drop change nothing in the last digit: the least frequency of each of the first doubles is the ceiling
    [Fact]
    public void A_current_whose_least_frequency_is_just_the_ceiling_runs()
    {
        const double Load = 1e-20;
        const int Node = 60;
        double ceiling = LeastHertz(Node, Load), output = Volts * LossyStages.StepDown.Duties.RatioAt(Node);
        Assert.Equal(ceiling, LeastHertz(Node, 4 * Load));
        RegulatedPoint point = Of(ceiling).Hold(Volts, output, Load);
        Assert.Equal(RegulationOutcome.HeldBySkipping, point.Outcome);
        Assert.InRange(point.RunningShare, 0, 0.5);
    }

    // a coil of more than 20 mA would take more than that for a light load: I + V D (1 − D)/(2 f L) stays below, with a ceiling of 12 MHz I below some 4 mA
    [Fact]
    public void Cycles_of_a_light_load_carry_no_more_than_the_coil_bears()
    {
        const double Load = 1e-4;
        RegulatedPoint point = Of(12e6).Hold(Volts, 0.5, Load);
        Assert.Equal(RegulationOutcome.HeldBySkipping, point.Outcome);
        double amperes = Load / point.RunningShare, hertz = point.FrequencyHz / point.RunningShare;
        Assert.InRange(amperes + (Volts * point.Duty * (1 - point.Duty) / (2 * hertz * 1e-6)), 0, Most * (1 + 1e-6));
        RegulatedPoint free = Of(12e6, null).Hold(Volts, 0.5, Load);
        Assert.True(Load / free.RunningShare > Most);
    }

    // at three quarters a larger duty, by what drops, takes a lower frequency
    [Fact]
    public void A_load_that_leaves_no_room_for_a_larger_current_runs_every_cycle()
    {
        const int Node = 180;
        double output = Volts * LossyStages.StepDown.Duties.RatioAt(Node);
        for (int k = 50; k < 100; k++)
        {
            double load = Most * k / 100;
            RegulatedPoint point = Of(LeastHertz(Node, load)).Hold(Volts, output, load);
            Assert.Equal((RegulationOutcome.Held, 1), (point.Outcome, point.RunningShare));
        }
    }

    private static double LeastHertz(int node, double amperes) =>
        new StageCycle(Sized(ProcessOf(Most), node), LossyStages.StepDown.Duties.AnalysisAt(node)).LeastHertz(Volts, amperes);

    private static StageMode Of(double ceiling, double? mostAmperes = Most) => new(LossyStages.StepDown, node => Sized(ProcessOf(mostAmperes), node), new(1e3, ceiling));

    private static Process ProcessOf(double? mostAmperes) => LossyStages.Process with { Inductors = [LossyStages.Coil with { MaximumAmperes = mostAmperes }] };

    private static SizedConverter Sized(Process process, int node) => LossyStages.Sized(LossyStages.StepDown, process, node, [0, 0], [50, 50]);
}
