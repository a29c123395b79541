using Fractions;
using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.SteadyState;

namespace ScNet.Tests.Design.Losses;

/// <summary>Which way diodes lie by what their switches block in waveforms: 0.75 A peak to peak at 4 V, by hand, where resistances hardly bend the triangle.</summary>
public sealed class WaveformDiodesTests
{
    private const double Hertz = 1e6, Dead = 1e-9, Ripple = 0.75, Ohms = 1e-6, Recovery = 5e-15, Drop = 0.7;

    // at a millionth of voltage and current the low diode takes peak and valley as before, at the same drop, and gives back its charge at the lesser voltage
    [Fact]
    public void Diodes_lie_the_same_way_at_any_voltage()
    {
        LossBudget budget = Of(StepDown().Build(), 4e-6, 1e-6);
        Near(Hertz * Dead * Drop * 2e-6, Watts(budget, LossKind.BodyDiodes, "low"));
        Near(Hertz * 1000 / Ohms * Recovery * 4e-6, Watts(budget, LossKind.ReverseRecovery, "low"));
    }

    // "pull" and "push" tie m to one side after the other and carry nothing: their diodes have no charge to give back, whichever way they are written
    [Fact]
    public void A_diode_without_a_current_gives_nothing_back()
    {
        LossBudget budget = Of(StepDown().Switch("pull", "gnd", "m", 1, Ohms).Switch("push", "m", "vin", 2, Ohms).Build(), 4, 1);
        Assert.Equal("low", Assert.Single(budget.Losses, l => l.Kind == LossKind.ReverseRecovery).Element);
    }

    // in the last phase both high switches are open, and nothing tells what is across each of them; before, the second blocks the input. At 0.1 A the
    // valley of -0.275 A flows back through its diode
    [Fact]
    public void What_is_unknown_in_one_phase_leaves_the_diode_as_the_others_have_it()
    {
        Converter two = Converter.Create("two in series").Input("vin").Output("vout").Duties(new Fraction(1, 4), new Fraction(1, 4), new Fraction(1, 2))
            .Switch("first", "vin", "m", [1, 2], Ohms).Switch("second", "m", "x", 1, Ohms).Switch("low", "x", "gnd", [2, 3], Ohms).Inductor("coil", "x", "vout", henries: 1e-6).Build();
        LossBudget budget = Of(two, 4, 0.1);
        Near(Hertz * Dead * Drop * ((Ripple / 2) - 0.1), Watts(budget, LossKind.BodyDiodes, "second"));
        Near(Hertz * Dead * Drop * ((Ripple / 2) + 0.1), Watts(budget, LossKind.BodyDiodes, "low"));
    }

    private static ConverterBuilder StepDown() => Converter.Create("step-down").Input("vin").Output("vout").Duties(new Fraction(1, 4), new Fraction(3, 4))
        .Switch("high", "vin", "x", 1, Ohms).Switch("low", "x", "gnd", 2, Ohms).Inductor("coil", "x", "vout", henries: 1e-6);

    private static LossBudget Of(Converter stage, double volts, double amperes) => WaveformLosses.Of(
        Sized.Of(stage, Sized.BareSwitch with { RecoveryCoulombsPerMicrometre = Recovery }, Sized.BareCapacitor, deadSeconds: Dead),
        SteadyStateModel.Of(ModeAnalysis.Of(stage)).At(new OperatingPoint(volts, amperes, Hertz)));

    private static double Watts(LossBudget budget, LossKind kind, string element) => Assert.Single(budget.Losses, l => l.Kind == kind && l.Element == element).Watts;

    private static void Near(double expected, double actual) => LossModelTests.Near(expected, actual, 1e-5);
}
