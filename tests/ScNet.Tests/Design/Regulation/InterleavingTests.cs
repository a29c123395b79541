using Fractions;
using ScNet.Analysis;
using ScNet.Design.Regulation;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Regulation;

/// <summary>Interleaved parts against the whole, and against what the trade knows of two coils.</summary>
public sealed class InterleavingTests
{
    private static readonly OperatingPoint s_point = new(3.6, 10e-3, 20e6);

    [Fact]
    public void One_part_is_the_converter_itself_on_its_load_current()
    {
        Converter converter = Third(LoadKind.Current);
        Interleaving one = Interleaving.Of(converter, converter.Modes[0], s_point, 1);
        PeriodicSteadyState whole = PeriodicSteadyState.Of(ModeAnalysis.Of(converter, converter.Modes[0]), s_point);
        Assert.Equal(whole.OutputRippleVolts!.Value, one.OutputRippleVolts!.Value, 1e-12);
        Assert.Equal(whole.InputRippleAmperes, one.InputRippleAmperes, 1e-12);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Parts_keep_ratio_and_total_and_lower_both_ripples(int parts)
    {
        Converter converter = Third(LoadKind.Current);
        Interleaving one = Interleaving.Of(converter, converter.Modes[0], s_point, 1);
        Interleaving several = Interleaving.Of(converter, converter.Modes[0], s_point, parts);
        Assert.Equal(one.Converter.Switches.Sum(s => 1 / s.Ohms), several.Converter.Switches.Sum(s => 1 / s.Ohms), 1e-9);
        Assert.Equal(one.Converter.Capacitors.Sum(c => c.Farads), several.Converter.Capacitors.Sum(c => c.Farads), 1e-18);
        Assert.Equal(one.Steady.IdealOutputVoltageVolts, several.Steady.IdealOutputVoltageVolts, 1e-12);
        Assert.Equal(one.Steady.AverageInputCurrentAmperes, several.Steady.AverageInputCurrentAmperes, 1e-12);
        Assert.True(several.OutputRippleVolts < one.OutputRippleVolts && several.InputRippleAmperes < one.InputRippleAmperes, $"{one}; {several}");
    }

    /// <summary>On an output that hardly moves each part is the whole n times smaller: n times its impedance, side by side.</summary>
    [Fact]
    public void On_a_large_output_capacitor_the_impedance_is_that_of_a_stiff_load()
    {
        Converter converter = Third(LoadKind.Stiff, outFarads: 1e-3);
        double stiff = SteadyStateModel.Of(ModeAnalysis.Of(converter, converter.Modes[0])).Impedance.Ohms(s_point.FrequencyHz);
        Assert.All(Enumerable.Range(1, 4), n => Assert.Equal(stiff, Interleaving.Of(converter, converter.Modes[0], s_point, n).Steady.OutputImpedanceOhms, 1e-5 * stiff));
    }

    /// <summary>At a duty of one half the currents of two coils in opposite step add up to a constant (common practice, no source).</summary>
    [Fact]
    public void Two_coils_at_a_duty_of_one_half_cancel_their_ripple()
    {
        Converter converter = InductiveStage.StepDown(new(1, 2), 1e-6, 1e-3, 0, LoadKind.Current, 1e-6);
        OperatingPoint point = new(2, 0.5, 2e6);
        double one = Interleaving.Of(converter, converter.Modes[0], point, 1).OutputRippleVolts!.Value;
        double two = Interleaving.Of(converter, converter.Modes[0], point, 2).OutputRippleVolts!.Value;

        // the ripple charge of one coil: ΔI/(8 f C), textbook (Erickson and Maksimovic, chapter 2, from memory)
        Assert.Equal(0.25 / (8 * 2e6 * 1e-6), one, 0.02 * one);
        Assert.True(two < 1e-3 * one, $"{two} against {one}");
    }

    [Fact]
    public void The_least_number_of_parts_is_the_first_that_is_smooth_enough()
    {
        Converter converter = Third(LoadKind.Stiff);
        Interleaving[] all = [.. Enumerable.Range(1, 5).Select(n => Interleaving.Of(converter, converter.Modes[0], s_point, n))];
        double allowed = 1.001 * all[2].OutputRippleVolts!.Value;
        IReadOnlyList<Interleaving> tried = Interleaving.Least(converter, converter.Modes[0], s_point, allowed);
        Assert.True(tried[^1].OutputRippleVolts <= allowed);
        Assert.All(tried.SkipLast(1), t => Assert.True(t.OutputRippleVolts > allowed));
        Assert.Equal(2, Interleaving.Least(converter, converter.Modes[0], s_point, 1e-12, maximumParts: 2).Count);
    }

    [Fact]
    public void A_ripple_that_is_just_allowed_is_small_enough_and_none_at_all_is_refused()
    {
        Converter converter = Third(LoadKind.Stiff);
        double two = Interleaving.Of(converter, converter.Modes[0], s_point, 2).OutputRippleVolts!.Value;
        Assert.Equal(2, Interleaving.Least(converter, converter.Modes[0], s_point, two).Count);
        Assert.Throws<ArgumentOutOfRangeException>(() => Interleaving.Least(converter, converter.Modes[0], s_point, 0, maximumParts: 1));
    }

    /// <summary>A halving converter delivers alike in both halves of its period: a second part half a period later does the same at the same time.</summary>
    [Fact]
    public void Two_parts_of_a_mode_with_like_halves_are_a_quarter_of_the_period_apart()
    {
        Converter converter = WithOutput(SeriesParallel.StepDown(2, 1e-9, 2), LoadKind.Current, 2e-9);
        Interleaving one = Interleaving.Of(converter, converter.Modes[0], s_point, 1), two = Interleaving.Of(converter, converter.Modes[0], s_point, 2);
        Assert.Equal((new(1, 1), new Fraction(1, 2)), (one.SpreadOfPeriod, two.SpreadOfPeriod));
        Assert.True(two.OutputRippleVolts < 0.7 * one.OutputRippleVolts, $"{one}; {two}");
    }

    /// <summary>The same with its second half cut in two: of an odd number of phases half of the period is not tried.</summary>
    [Fact]
    public void Parts_of_an_odd_number_of_phases_are_spread_over_the_whole_period()
    {
        Converter cut = Converter.Create("half in three").Input("vin").Output("vout", LoadKind.Current).Duties(0.5, 0.25, 0.25)
            .Capacitor("fly", "p", "n", 1e-9).Capacitor("out", "vout", "gnd", 2e-9)
            .Switch("s1", "vin", "p", 1, 2).Switch("s2", "n", "vout", 1, 2).Switch("s3", "p", "vout", PhaseSet.Of(2, 3), 2).Switch("s4", "n", "gnd", PhaseSet.Of(2, 3), 2).Build();
        Assert.Equal(Fraction.One, Interleaving.Of(cut, cut.Modes[0], s_point, 2).SpreadOfPeriod);
    }

    [Fact]
    public void Parts_without_ripple_are_spread_over_the_whole_period()
    {
        Converter through = Converter.Create("through").Input("vin").Output("vout", LoadKind.Current).Capacitor("out", "vout", "gnd", 1e-9)
            .Switch("s1", "vin", "vout", on: PhaseSet.Of(1, 2), ohms: 2).Build();
        Interleaving two = Interleaving.Of(through, through.Modes[0], s_point, 2);
        Assert.Equal(0, two.OutputRippleVolts!.Value, 1e-12);
        Assert.Equal(Fraction.One, two.SpreadOfPeriod);
    }

    [Fact]
    public void A_phase_that_ends_with_the_current_of_an_inductor_is_refused()
    {
        Converter converter = Converter.Create("until zero").Input("vin").Output("vout", LoadKind.Current).Inductor("coil", "x", "vout", untilZero: 2)
            .Capacitor("out", "vout", "gnd").Switch("s1", "vin", "x", on: 1).Switch("s2", "x", "gnd", on: 2).Build();
        ArgumentException thrown = Assert.Throws<ArgumentException>(() => Interleaving.Of(converter, converter.Modes[0], s_point, 2));
        Assert.Contains("an inductor's current ends a phase of mode", thrown.Message, StringComparison.Ordinal);
    }

    private static Converter Third(LoadKind load, double outFarads = 2e-9) => WithOutput(SeriesParallel.StepDown(3, 1e-9, 2), load, outFarads);

    private static Converter WithOutput(Converter family, LoadKind load, double outFarads)
    {
        ConverterBuilder builder = Converter.Create("family with its output capacitor").Input(family.InputNode).Output(family.OutputNode, load);
        builder.AddElements(family, string.Empty, n => n);
        return builder.Capacitor("out", family.OutputNode, Converter.ReferenceNode, outFarads)
            .Mode(Mode.DefaultName, [.. family.Entries(family.Modes[0], string.Empty, p => [p])]).Build();
    }
}
