using Fractions;
using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Regulation;
using ScNet.Tests.Design.Losses;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Regulation;

/// <summary>
/// Bursts of a step-down stage without ripple at 4 V and 1 MHz, by hand: two switches of 0.05 Ω, 20000 µm wide each, and a winding of
/// 0.03 Ω, so that R is 0.08 Ω at every duty.
/// </summary>
public sealed class DutyModeBurstTests
{
    private const double Hertz = 1e6;
    private const double InputVolts = 4;
    private const double OutputVolts = 1.2;
    private const double Ohms = 0.08;
    private const double FixedWatts = 1e-3;

    // two gates of 40 pC at 1.5 V; two junctions of 20 pC/2 V, each with two steps of 4 V a period; 10 pC a cycle for the control
    private const double GateWatts = Hertz * 2 * 40e-12 * 1.5;
    private const double JunctionWatts = Hertz * 2 * 10e-12 * InputVolts * InputVolts;
    private const double CycleWatts = Hertz * 10e-12 * InputVolts;

    // one of the two is open at any time: 20000 µm of 1 nA/µm
    private const double LeakageWatts = 20e-6 * InputVolts;

    private static readonly double s_burstAmperes = Math.Sqrt((GateWatts + JunctionWatts + CycleWatts) / Ohms);

    private readonly RegulatedMode _mode = RegulatedModes.OfDuty("step-down", Stage, new(0.02, 0.95), Hertz);

    [Theory]
    [InlineData(1e-4)]
    [InlineData(0.01)]
    [InlineData(0.07)]
    public void A_burst_has_the_current_at_which_a_cycle_costs_what_the_current_costs(double loadAmperes)
    {
        RegulatedPoint point = _mode.Hold(InputVolts, OutputVolts, loadAmperes);
        double share = loadAmperes / s_burstAmperes;
        Assert.Equal(RegulationOutcome.HeldBySkipping, point.Outcome);
        Assert.Equal(share, point.RunningShare, 1e-9 * share);
        Assert.Equal(share * Hertz, point.FrequencyHz, 1e-9 * share * Hertz);
        Assert.Equal((OutputVolts + (Ohms * s_burstAmperes)) / InputVolts, point.Duty, 1e-9);
        Assert.Equal(OutputVolts * loadAmperes, point.OutputWatts, 1e-15);
    }

    [Fact]
    public void Between_bursts_leakage_and_the_fixed_power_of_the_control_go_on_and_nothing_else()
    {
        RegulatedPoint point = _mode.Hold(InputVolts, OutputVolts, 0.01);
        double share = 0.01 / s_burstAmperes;
        Assert.Equal(LeakageWatts, point.LossOf(LossKind.Leakage), 1e-12);
        Assert.Equal(FixedWatts + (share * CycleWatts), point.LossOf(LossKind.Control), 1e-12);
        Assert.Equal(share * GateWatts, point.LossOf(LossKind.GateDrive), 1e-12);
        Assert.Equal(share * JunctionWatts, point.LossOf(LossKind.Junctions), 1e-12);
        Assert.Equal(LeakageWatts + FixedWatts + (2 * 0.01 * s_burstAmperes * Ohms), point.TotalLossWatts, 1e-12);
    }

    [Theory]
    [InlineData(0.99, RegulationOutcome.HeldBySkipping)]
    [InlineData(1.01, RegulationOutcome.Held)]
    public void It_rests_below_that_current_alone(double shareOfBurst, RegulationOutcome expected)
    {
        RegulatedPoint point = _mode.Hold(InputVolts, OutputVolts, shareOfBurst * s_burstAmperes);
        Assert.Equal(expected, point.Outcome);
        Assert.Equal(shareOfBurst * OutputVolts * s_burstAmperes, point.OutputWatts, 1e-15);
    }

    [Fact]
    public void What_is_not_held_has_the_output_power_that_is_wanted() => Assert.Equal(2, _mode.Hold(InputVolts, 4, 0.5).OutputWatts);

    private static LossModel Stage(Fraction duty)
    {
        Converter converter = InductiveStage.StepDown(duty, 1, 0.05, 0.03);
        SizedConverter sized = Sized.Of(converter, capacitor: Sized.BareCapacitor, control: new() { FixedWatts = FixedWatts, CoulombsPerCycle = 10e-12 });
        return LossModel.Of(sized, ModeAnalysis.Of(converter));
    }
}
