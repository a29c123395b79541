using Fractions;
using ScNet.Analysis;
using ScNet.Design.Losses;

namespace ScNet.Tests.Design.Losses;

public sealed class RippleCurrentsTests
{
    [Fact]
    public void The_ripple_of_a_coil_is_straight_lines_about_its_mean()
    {
        RippleCurrents ripple = Of(FourSwitchStage.Build());
        for (int j = 0; j < 3; j++)
        {
            Assert.Equal(FourSwitchStage.Rises[j], ripple.Inductors.Rises[j][0], 1e-15);
            Assert.Equal(FourSwitchStage.Means[j], ripple.Inductors.Means[j][0], 1e-15);
        }

        Assert.False(ripple.Inductors.IsNone || ripple.Switches.IsNone || ripple.Capacitors.IsNone);
        Assert.Equal(1 / 6.0, ripple.PeakToPeak(0), 1e-15);
    }

    // s1 to the coil, s2 against it from the reference, s3 and s4 from it
    [Fact]
    public void A_closed_switch_carries_the_ripple_of_its_coil_in_its_own_direction()
    {
        RippleCurrents ripple = Of(FourSwitchStage.Build());
        double[][] signs = [[1, 0, 1, 0], [1, 0, 0, 1], [0, -1, 0, 1]];
        for (int j = 0; j < 3; j++)
        {
            for (int s = 0; s < 4; s++)
            {
                Assert.Equal(signs[j][s] * FourSwitchStage.Rises[j], ripple.Switches.Rises[j][s], 1e-15);
                Assert.Equal(signs[j][s] * FourSwitchStage.Means[j], ripple.Switches.Means[j][s], 1e-15);
            }
        }
    }

    // wherever the period starts and whichever way the coil is counted
    [Theory]
    [InlineData(false, 0)]
    [InlineData(true, 0)]
    [InlineData(false, 1)]
    [InlineData(true, 1)]
    [InlineData(false, 2)]
    public void The_ripple_peak_to_peak_is_that_of_the_whole_period(bool isTurned, int start)
    {
        Fraction[] duties = [.. Enumerable.Range(0, 3).Select(j => FourSwitchStage.Duties[(j + start) % 3])];
        Converter turned = Converter.Create("turned").Input("vin").Output("vout").Duties(duties)
            .Switch("s1", "vin", "x", On(1, 2)).Switch("s2", "x", "gnd", On(3)).Inductor("coil", isTurned ? "y" : "x", isTurned ? "x" : "y", henries: 2)
            .Switch("s3", "y", "gnd", On(1)).Switch("s4", "y", "vout", On(2, 3)).Build();
        Assert.Equal(1 / 6.0, Of(turned).PeakToPeak(0), 1e-15);

        PhaseSet On(params int[] phases) => PhaseSet.Of([.. phases.Select(p => ((p - 1 - start + 3) % 3) + 1)]);
    }

    // a ripple of 3/32 at 1 H and a duty of 1/4, whose triangles have no mean; 1 Ω and 3 Ω share it as 3 to 1
    [Fact]
    public void Output_capacitors_share_the_ripple_by_their_series_conductances()
    {
        Converter stage = Converter.Create("two outputs").Input("vin").Output("vout", LoadKind.Current).Duties(new Fraction(1, 4), new Fraction(3, 4))
            .Switch("high", "vin", "x", 1, 1).Switch("low", "x", "gnd", 2, 1).Inductor("coil", "x", "vout", 1)
            .Capacitor("a", "vout", "gnd", 1, 1).Capacitor("b", "gnd", "vout", 1, 3).Build();
        RippleCurrents ripple = Of(stage);
        for (int j = 0; j < 2; j++)
        {
            double rise = j == 0 ? 3 / 16.0 : -3 / 16.0;
            Assert.Equal(0.75 * rise, ripple.Capacitors.Rises[j][0], 1e-15);
            Assert.Equal(-0.25 * rise, ripple.Capacitors.Rises[j][1], 1e-15);
            Assert.Equal(0, ripple.Capacitors.Means[j][0], 1e-15);
        }
    }

    [Fact]
    public void Without_inductors_there_is_no_ripple()
    {
        Converter half = Converter.Create("Half").Input("vin").Output("vout").Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2).Build();
        RippleCurrents ripple = Of(half);
        Assert.True(ripple.Inductors.IsNone && ripple.Switches.IsNone && ripple.Capacitors.IsNone);
        Assert.Equal([0, 0, 0, 0], ripple.Switches.Rises[1]);
    }

    // a three-level stage balances by losses alone; a second stage beside it by its duty
    [Fact]
    public void A_coil_whose_voltage_only_losses_fix_is_named_and_has_no_ripple()
    {
        Converter stage = InductiveStages.MultiLevel(3, new Fraction(1, 4)).Inductor("other", "z", "vout", 1)
            .Switch("high", "vin", "z", 1, 1).Switch("low", "z", "gnd", [2, 3, 4], 1).Build();
        RippleCurrents ripple = RippleCurrents.Of(ModeAnalysis.Of(stage), [0.25, 0.25, 0.25, 0.25], out IReadOnlyList<string> unknown);
        Assert.Equal(["coil"], unknown);
        Assert.Equal(0, ripple.PeakToPeak(0));
        Assert.Equal(3 / 16.0, ripple.PeakToPeak(1), 1e-15);
    }

    private static RippleCurrents Of(Converter converter) =>
        RippleCurrents.Of(ModeAnalysis.Of(converter), [.. converter.Phases.Select(p => p.Duty.ToDouble())], out _);
}
