using ScNet.Analysis;

namespace ScNet.Tests.Analysis;

/// <summary>What no direction moves stays exact, and what they move back and forth alike is none.</summary>
public sealed class DirectionsThatStayTests
{
    [Fact]
    public void A_capacitor_that_never_moves_is_exact_beside_others_that_share_by_value()
    {
        // 'in' always meets the input alone, through s0; a and b share by capacitance
        ModeAnalysis analysis = ModeAnalysis.Of(Converter.Create("filter").Input("vin").Output("vout")
            .Capacitor("in", "x", "gnd").Capacitor("a", "p", "n", farads: 1).Capacitor("b", "p", "n", farads: 3).Switch("s0", "vin", "x", on: [1, 2])
            .Switch("s1", "x", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2).Build());
        Assert.Equal(FlowDetermination.ComponentValues, analysis.ChargeFlow.DeterminedBy);
        Assert.Equal([Quantity.Zero, Quantity.Zero], analysis.ChargeFlow.Capacitors["in"]);
        Assert.Equal(Quantity.Zero, analysis.SlowSwitchingLimit.Coefficients["in"]);
        Assert.Equal(1 / 8.0, analysis.ChargeFlow.Capacitors["a"][1].ToDouble(), 1e-14);
        Assert.Equal(QuantityKind.Numeric, analysis.ChargeFlow.Capacitors["a"][1].Kind);
        Assert.Equal(1 / 4.0, analysis.ChargeFlow.Input[2].ToDouble(), 1e-14);
    }

    // A bridge in balance: its middle carries nothing, though two loops pass it that add up to nothing in the last digit only.
    [Theory]
    [InlineData(0.1, 0.1, 2)]
    [InlineData(0.1, 0.2, 3)]
    [InlineData(0.1, 0.2, 1.7)]
    public void What_loops_bring_forth_and_back_alike_is_none(double before, double behind, double times)
    {
        ModeAnalysis analysis = ModeAnalysis.Of(Converter.Create("bridge").Input("vin").Output("vout")
            .Capacitor("idle", "a", "z").Capacitor("c1", "p1", "n1").Capacitor("c2", "p2", "n2")
            .Switch("middle", "a", "b", on: 1)
            .Switch("r1", "n1", "a", on: 1, before).Switch("r2", "n1", "b", on: 1, times * before)
            .Switch("r3", "a", "p2", on: 1, behind).Switch("r4", "b", "p2", on: 1, times * behind)
            .Switch("s1", "vin", "p1", on: 1).Switch("s2", "n2", "vout", on: 1)
            .Switch("s3", "p1", "vout", on: 2).Switch("s4", "n1", "gnd", on: 2).Switch("s5", "p2", "vout", on: 2).Switch("s6", "n2", "gnd", on: 2).Build());
        Assert.Equal([Quantity.Numeric(0), Quantity.Zero], analysis.ChargeFlow.Switches["middle"]);
        Assert.Equal(times / (1 + times) / 3, analysis.ChargeFlow.Switches["r1"][1].ToDouble(), 1e-14);
        Assert.Equal(1 / (1 + times) / 3, analysis.ChargeFlow.Switches["r4"][1].ToDouble(), 1e-14);
    }
}
