using ScNet.Design.Losses;
using ScNet.Design.Regulation;
using ScNet.Devices;

namespace ScNet.Tests.Design.Regulation;

public sealed class LinearModeTests
{
    [Fact]
    public void From_4_2_to_0_8_volts_it_has_19_percent() // common practice, no source
    {
        RegulatedPoint point = RegulatedModes.Linear(ControlOverhead.None).Hold(4.2, 0.8, 0.01);
        Assert.Equal(RegulationOutcome.HeldByDropping, point.Outcome);
        Assert.Equal("19", $"{point.Efficiency * 100:F0}");
        Assert.Equal("held by dropping the surplus: 19.0 %", point.ToString());
        Assert.Equal(0.034, point.LossOf(LossKind.LinearDrop), 1e-15);
    }

    [Fact]
    public void Its_control_counts_and_what_is_too_low_is_not_held()
    {
        RegulatedMode linear = RegulatedModes.Linear(new ControlOverhead { FixedWatts = 2e-6, CoulombsPerCycle = 1e-12 });
        Assert.Equal(4e-6, linear.Hold(2, 1, 2e-6).InputWatts - 2e-6, 1e-18);
        Assert.Equal(RegulationOutcome.RatioTooLow, linear.Hold(1.5, 1.6, 1).Outcome);
        Assert.Equal("ratio too low", linear.Hold(1.5, 1.6, 1).ToString());
        Assert.Equal("the input of 1.5 V is below the 1.6 V that is wanted", linear.ReasonAt(1.5, 1.6, 1));
        Assert.Equal(string.Empty, linear.ReasonAt(1.6, 1.6, 1));
    }
}
