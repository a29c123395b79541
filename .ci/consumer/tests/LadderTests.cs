using ScNet.Derivations;
using ScNet.Topologies;
using Xunit;

public class LadderTests
{
    [Fact]
    public void My_two_to_one_ladder_is_right()
    {
        DerivationReport report = Derivation.Of(Ladder.StepDown(2))
            .Ratio("1/2")
            .Capacitor("fly1", "1/2", "-1/2")
            .SlowSwitchingLimit("1/(4*C_fly1*f)")
            .Check();
        Assert.True(report.IsRight, report.ToString());
    }

    [Fact]
    public void A_slip_in_it_is_named() =>
        Assert.Contains(
            "slip",
            Derivation.Of(Ladder.StepDown(2)).Ratio("1/2").SlowSwitchingLimit("1/(2*C_fly1*f)").Check().ToString(),
            StringComparison.Ordinal);
}
