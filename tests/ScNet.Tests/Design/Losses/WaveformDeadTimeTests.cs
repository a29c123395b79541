using Fractions;
using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.SteadyState;
using ScNet.SteadyState.Conduction;
using ScNet.Tests.SteadyState.Conduction;

namespace ScNet.Tests.Design.Losses;

/// <summary>Diodes in dead times by hand, where resistances hardly bend the triangle of the current: 0.75 A peak to peak about the load.</summary>
public sealed class WaveformDeadTimeTests
{
    private const double Volts = 4, Hertz = 1e6, Dead = 1e-9, Ripple = 0.75, Ohms = 1e-6, Recovery = 5e-15;

    private static readonly Converter s_stage = Build(low => low.Switch("low", "x", "gnd", 2, Ohms));

    // the low diode takes the peak after the high switch and the valley before it; it gives back its charge at the input voltage
    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void The_low_diode_takes_peak_and_valley(int inSeries)
    {
        LossBudget budget = Of(s_stage, 1, inSeries);
        Near(Hertz * Dead * inSeries * 0.7 * 2, Watts(budget, LossKind.BodyDiodes, "low"));
        Near(Hertz * inSeries * 1000 / Ohms * Recovery * Volts, Watts(budget, LossKind.ReverseRecovery, "low"));
        Assert.DoesNotContain(budget.Losses, l => l is { Kind: LossKind.BodyDiodes or LossKind.ReverseRecovery, Element: "high" });
    }

    // whichever way the switches are written
    [Fact]
    public void A_switch_written_the_other_way_has_its_diode_as_before()
    {
        LossBudget budget = Of(Build(low => low.Switch("low", "gnd", "x", 2, Ohms)), 1);
        Near(Hertz * Dead * 0.7 * 2, Watts(budget, LossKind.BodyDiodes, "low"));
        Near(Hertz * 1000 / Ohms * Recovery * Volts, Watts(budget, LossKind.ReverseRecovery, "low"));
    }

    // at 0.1 A the valley lies at -0.275 A: the current flows back into the high diode, and the low one, turned off without current, gives nothing back
    [Fact]
    public void A_valley_below_zero_goes_through_the_high_diode()
    {
        LossBudget budget = Of(s_stage, 0.1);
        Near(Hertz * Dead * 0.7 * (0.1 + (Ripple / 2)), Watts(budget, LossKind.BodyDiodes, "low"));
        Near(Hertz * Dead * 0.7 * ((Ripple / 2) - 0.1), Watts(budget, LossKind.BodyDiodes, "high"));
        Assert.DoesNotContain(budget.Losses, l => l.Kind == LossKind.ReverseRecovery);
    }

    // at -1 A the coil drives its current back: the high diode takes both edges, and gives back what it stored as its switch opens
    [Fact]
    public void A_current_back_into_the_source_goes_through_the_high_diode()
    {
        LossBudget budget = Of(s_stage, -1);
        Near(Hertz * Dead * 0.7 * 2, Watts(budget, LossKind.BodyDiodes, "high"));
        Near(Hertz * 1000 / Ohms * Recovery * Volts, Watts(budget, LossKind.ReverseRecovery, "high"));
        Assert.DoesNotContain(budget.Losses, l => l is { Kind: LossKind.BodyDiodes or LossKind.ReverseRecovery, Element: "low" });
    }

    [Fact]
    public void Without_dead_time_or_coils_no_diode_conducts()
    {
        Assert.DoesNotContain(Of(s_stage, 1, dead: 0).Losses, IsOfDiodes);
        Converter half = Converter.Create("Half").Input("vin").Output("vout").Capacitor("fly", "p", "n", 1e-9)
            .Switch("s1", "vin", "p", 1, 2).Switch("s2", "n", "vout", 1, 2).Switch("s3", "p", "vout", 2, 2).Switch("s4", "n", "gnd", 2, 2).Build();
        LossBudget budget = Of(half, 0.01);
        Assert.DoesNotContain(budget.Losses, IsOfDiodes);
        Assert.DoesNotContain(budget.Notes, n => n.Kind == LossKind.ReverseRecovery);
    }

    [Fact]
    public void A_netlist_with_diodes_has_its_own_dead_times_and_says_so_of_their_charge()
    {
        Converter stage = Stages.WithDeadTimes(0.01, highVolts: null);
        OperatingPoint point = new(Volts, 1, Hertz);
        PeriodicSteadyState steady = ConductionModel.Of(stage).At(point).Steady;
        LossBudget budget = WaveformLosses.Of(SizedOf(stage, 1, Dead, Recovery), steady);
        Assert.Equal(new(LossKind.ReverseRecovery, "low", false, "as the netlist has diodes and dead times of its own"), Assert.Single(budget.Notes));
        Assert.DoesNotContain(budget.Losses, l => l.Kind == LossKind.ReverseRecovery);
        Near(steady.Diodes.Sum(d => d.DissipationWatts), budget.WattsOf(LossKind.BodyDiodes));
        Assert.True(budget.WattsOf(LossKind.BodyDiodes) > 0);
        Assert.Empty(WaveformLosses.Of(SizedOf(stage, 1, Dead, 0), steady).Notes);
    }

    private static bool IsOfDiodes(Loss loss) => loss.Kind is LossKind.BodyDiodes or LossKind.ReverseRecovery;

    private static LossBudget Of(Converter stage, double amperes, int inSeries = 1, double dead = Dead) =>
        WaveformLosses.Of(SizedOf(stage, inSeries, dead, Recovery), SteadyStateModel.Of(ModeAnalysis.Of(stage)).At(new OperatingPoint(Volts, amperes, Hertz)));

    private static SizedConverter SizedOf(Converter stage, int inSeries, double dead, double recovery) =>
        Sized.Of(stage, Sized.BareSwitch with { RecoveryCoulombsPerMicrometre = recovery }, Sized.BareCapacitor, inSeries: inSeries, deadSeconds: dead);

    private static Converter Build(Func<ConverterBuilder, ConverterBuilder> low) => low(
        Converter.Create("step-down").Input("vin").Output("vout").Duties(new Fraction(1, 4), new Fraction(3, 4)).Switch("high", "vin", "x", 1, Ohms))
        .Inductor("coil", "x", "vout", henries: 1e-6).Build();

    private static double Watts(LossBudget budget, LossKind kind, string element) => Assert.Single(budget.Losses, l => l.Kind == kind && l.Element == element).Watts;

    private static void Near(double expected, double actual) => LossModelTests.Near(expected, actual, 1e-5);
}
