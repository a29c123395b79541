using Fractions;
using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.SteadyState;

namespace ScNet.Tests.Design.Losses;

/// <summary>
/// A step-down stage whose coil runs free through a switch across it in half of the period, after a quarter at the input and one at ground, by hand. That
/// switch blocks both ways, so it has no diode, and nothing takes the coil's current as it opens.
/// </summary>
/// <remarks>
/// Volts across the coil balance at a ratio of 1/2, its current rises and falls by an eighth of V/(f L). The load takes it in the first two quarters
/// alone: twice the load on average.
/// </remarks>
public sealed class FreewheelDiodeTests
{
    private const double Volts = 4, Hertz = 1e6, Dead = 1e-9, Recovery = 5e-15, Ohms = 1e-6;

    // an average of 1/32 above the valley: at the peak of 3/32 the low diode takes over, at the valley it hands over and its switch blocks 1/2
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void By_straight_lines_the_low_diode_conducts_at_two_edges_and_none_at_the_third(bool isTurned)
    {
        Converter stage = Build(1, 1, isTurned);
        LossTerms terms = LossTerms.Of(Sized.Of(stage, Sized.BareSwitch, deadSeconds: Dead), ModeAnalysis.Of(stage));
        DiodeTerm[] expected = [new("low", 0.7, -2, -3 / 32.0), new("low", 0.7, -2, 1 / 32.0, 0.5)];
        Assert.Equal(expected.Length, terms.Diodes.Count);
        foreach ((DiodeTerm e, DiodeTerm a) in expected.Zip(terms.Diodes))
        {
            Assert.Equal((e.Element, e.DiodeVolts), (a.Element, a.DiodeVolts));
            Assert.Equal(e.PerAmpere, a.PerAmpere, 1e-12);
            Assert.Equal(e.PerVoltSecond, a.PerVoltSecond, 1e-12);
            Assert.Equal(e.BlockedPerVolt, a.BlockedPerVolt, 1e-12);
        }

        Assert.Equal(new(LossKind.BodyDiodes, string.Empty, false, "after phase 3, as no body diodes give the current a path"), Assert.Single(terms.Notes));
    }

    // 1 µH at 4 V and 1 MHz: half an ampere up and down about 2 A. As the low switch opens it comes to block the output's 2 V
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void By_waveforms_the_low_diode_takes_peak_and_valley_and_the_free_switch_has_none(bool isTurned)
    {
        Converter stage = Build(1e-6, Ohms, isTurned);
        PeriodicSteadyState steady = SteadyStateModel.Of(ModeAnalysis.Of(stage)).At(new OperatingPoint(Volts, 1, Hertz));
        LossBudget budget = WaveformLosses.Of(
            Sized.Of(stage, Sized.BareSwitch with { RecoveryCoulombsPerMicrometre = Recovery }, Sized.BareCapacitor, deadSeconds: Dead), steady);
        Assert.Equal("low", Assert.Single(budget.Losses, l => l.Kind == LossKind.BodyDiodes).Element);
        Assert.Equal("low", Assert.Single(budget.Losses, l => l.Kind == LossKind.ReverseRecovery).Element);
        LossModelTests.Near(Hertz * Dead * 0.7 * (2.25 + 1.75), budget.WattsOf(LossKind.BodyDiodes), 1e-5);
        LossModelTests.Near(Hertz * 1000 / Ohms * Recovery * 2, budget.WattsOf(LossKind.ReverseRecovery), 1e-5);
    }

    // a large coil: 1 A always. The low switch opens once, though a phase begins within the time that it is closed, and comes to block what the high one of
    // 0.5 Ω leaves of 4 V
    [Fact]
    public void A_charge_comes_back_where_a_switch_opens_and_not_where_it_stays_closed()
    {
        Converter stage = Converter.Create("step-down").Input("vin").Output("vout").Phases(3).Switch("high", "vin", "x", 1, 0.5).Switch("low", "x", "gnd", [2, 3], 0.5)
            .Inductor("coil", "x", "vout", henries: 1).Build();
        PeriodicSteadyState steady = SteadyStateModel.Of(ModeAnalysis.Of(stage)).At(new OperatingPoint(Volts, 1, Hertz));
        LossBudget budget = WaveformLosses.Of(Sized.Of(stage, Sized.BareSwitch with { RecoveryCoulombsPerMicrometre = Recovery }, deadSeconds: Dead), steady);
        LossModelTests.Near(Hertz * 1000 / 0.5 * Recovery * 3.5, Assert.Single(budget.Losses, l => l.Kind == LossKind.ReverseRecovery).Watts, 1e-5);
        LossModelTests.Near(Hertz * Dead * 0.7 * 2, Assert.Single(budget.Losses, l => l.Kind == LossKind.BodyDiodes).Watts, 1e-5);
    }

    private static Converter Build(double henries, double ohms, bool isTurned) => Converter.Create("free-running").Input("vin").Output("vout")
        .Duties(new Fraction(1, 4), new Fraction(1, 4), new Fraction(1, 2)).Switch("high", "vin", "x", 1, ohms).Switch("low", "x", "gnd", 2, ohms)
        .Switch("free", isTurned ? "vout" : "x", isTurned ? "x" : "vout", 3, ohms).Inductor("coil", "x", "vout", henries).Build();
}
