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
}
