using Fractions;
using ScNet.Analysis;
using ScNet.Topologies;

namespace ScNet.Tests.Analysis;

public class ChargeSharingTests
{
    [Fact]
    public void A_stiff_load_without_inductors_has_none() =>
        Assert.Null(ModeAnalysis.Of(Ladder.StepDown(3)).ChargeSharing);

    [Fact]
    public void A_divider_on_a_current_load_shares_by_capacitance()
    {
        // fly and out are in series and parallel with each other: a load of 1 per period. By hand, C = 1 and C_out = 3.
        // Phase 1: vin - fly - out. The load's half splits 1/4 through fly, 3/4 out of it. Phase 2: side by side likewise.
        ModeAnalysis analysis = ModeAnalysis.Of(Converter.Create("half").Input("vin").Output("vout", LoadKind.Current)
            .Capacitor("fly", "p", "n", farads: 1).Capacitor("out", "vout", "gnd", farads: 3)
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2).Build());

        // fly takes 1/2 and gives 1/2, of which 1/8 each is steady; out takes nothing on the whole, but its steady part is -3/8
        Assert.Equal(9.0 / 64, analysis.ChargeSharing!.Coefficients["fly"].ToDouble(), 1e-14);
        Assert.Equal(9.0 / 64, analysis.ChargeSharing.Coefficients["out"].ToDouble(), 1e-14);
        Assert.Equal((9.0 / 64) + (3.0 / 64), analysis.ChargeSharing.OhmsAtOneHertz, 1e-14);
        Assert.Equal(analysis.ChargeSharing.OhmsAtOneHertz / 1e6, analysis.ChargeSharing.Ohms(1e6), 1e-18);
    }

    [Fact]
    public void A_capacitor_that_only_the_load_charges_shares_nothing()
    {
        // behind the input and before the load in turn, with nothing beside it
        ModeAnalysis analysis = ModeAnalysis.Of(Converter.Create("soft").Input("vin").Output("vout", LoadKind.Current).Phases(2)
            .Capacitor("fly", "p", "n").Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2).Build());
        Assert.Equal("0", analysis.ChargeSharing!.Coefficients["fly"].ToString());
        Assert.Equal("1/4", analysis.SlowSwitchingLimit.Coefficients["fly"].ToString());
    }

    [Fact]
    public void A_divider_before_a_coil_charges_softly_in_one_phase_and_hard_in_the_other()
    {
        // a divider onto a capacitor in the middle feeds a step-down stage: fly charges hard, the coil takes its current from mid
        ModeAnalysis analysis = ModeAnalysis.Of(Converter.Create("two steps").Input("vin").Output("vout").Duties(new Fraction(1, 2), new Fraction(1, 2))
            .Capacitor("fly", "p", "n").Capacitor("mid", "m", "gnd", farads: 1)
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "m", on: 1).Switch("s3", "p", "m", on: 2).Switch("s4", "n", "gnd", on: 2)
            .Switch("high", "m", "x", on: 1).Switch("low", "x", "gnd", on: 2).Inductor("coil", "x", "vout").Build());
        Assert.Equal("1/4", analysis.Ratio.ToString());

        // in phase 1 the coil draws 1/2 from fly and mid alike, which is all that they give; in phase 2 it takes nothing
        // from their loop, and all charge comes in an impulse
        Assert.Equal("[1/4, -1/4]", analysis.Capacitors["fly"].Charge.ToString());
        Assert.False(analysis.ChargeSharing!.Coefficients["fly"].IsExact);
        Assert.Equal(1.0 / 32, analysis.ChargeSharing.Coefficients["fly"].ToDouble(), 1e-15);
        Assert.Equal(1.0 / 16, analysis.ChargeSharing.OhmsAtOneHertz, 1e-15);
        Assert.Equal(1.0 / 8, analysis.SlowSwitchingLimit.OhmsAtOneHertz, 1e-15);
    }
}
