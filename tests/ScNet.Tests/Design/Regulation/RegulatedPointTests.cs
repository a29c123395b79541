using ScNet.Design.Losses;
using ScNet.Design.Regulation;

namespace ScNet.Tests.Design.Regulation;

public sealed class RegulatedPointTests
{
    [Fact]
    public void Its_text_has_the_duty_or_the_frequency_that_regulates()
    {
        // 1 W of output and 1 W of losses
        Assert.Equal("held: duty 0.25, 50.0 %", new RegulatedPoint(RegulationOutcome.Held, 2e6, 0.25, 1, [0.75, 0.25]).ToString());
        Assert.Equal("held by skipping cycles: 2 MHz, 50.0 %", new RegulatedPoint(RegulationOutcome.HeldBySkipping, 2e6, double.NaN, 1, [0.75, 0.25]).ToString());
        Assert.Equal("held by dropping the surplus: 50.0 %", new RegulatedPoint(RegulationOutcome.HeldByDropping, 0, double.NaN, 1, [0.75, 0.25]).ToString());
    }

    [Fact]
    public void A_kind_of_loss_that_does_not_exist_is_refused()
    {
        RegulatedPoint point = new(RegulationOutcome.Held, 2e6, double.NaN, 1, [0.75, 0.25]);
        Assert.Equal(0.25, point.LossOf(LossKind.ChargeSharing));
        Assert.Throws<ArgumentOutOfRangeException>(() => point.LossOf((LossKind)LossModel.KindCount));
    }
}
