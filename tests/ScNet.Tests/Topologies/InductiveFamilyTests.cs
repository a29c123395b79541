using Fractions;
using ScNet.Analysis;
using ScNet.Design;
using ScNet.Topologies;

namespace ScNet.Tests.Topologies;

/// <summary>
/// The inductive families against R. W. Erickson and D. Maksimović, Fundamentals of Power Electronics (from memory), and the
/// derivations of docs/theory/inductive-families.md, as fractions.
/// </summary>
public sealed class InductiveFamilyTests
{
    public static TheoryData<int, int> Duties => new() { { 1, 2 }, { 1, 5 }, { 3, 10 }, { 7, 9 }, { 1, 100 } };

    [Theory]
    [MemberData(nameof(Duties))]
    public void A_step_down_stage_has_the_duty_for_a_ratio(int p, int q)
    {
        Fraction d = new(p, q);
        ModeAnalysis analysis = ModeAnalysis.Of(InductiveStage.StepDown(d));

        Assert.Equal(d, analysis.Ratio.ToFraction());
        Assert.Equal(1, analysis.Inductors["coil"].Current);
        Assert.Equal([Fraction.One - d, -d], analysis.Inductors["coil"].Voltage.Select(v => v.ToFraction()));
        Assert.Equal([d, Fraction.One - d], analysis.Inductors["coil"].Charge.Select(v => v.ToFraction()));
        Assert.All(analysis.Switches, s => Assert.Equal(1, s.PeakBlocking));
        Assert.Equal(VoltageBalance.Averages, analysis.Balance);
    }

    [Theory]
    [MemberData(nameof(Duties))]
    public void A_step_up_stage_has_the_inverse_of_the_rest_for_a_ratio(int p, int q)
    {
        Fraction d = new(p, q), inverse = Fraction.One / (Fraction.One - d);
        ModeAnalysis analysis = ModeAnalysis.Of(InductiveStage.StepUp(d, ohms: 2, windingOhms: 3));

        Assert.Equal(inverse, analysis.Ratio.ToFraction());
        Assert.Equal(inverse, analysis.Inductors["coil"].Current.ToFraction());
        Assert.All(analysis.Switches, s => Assert.Equal(inverse, s.PeakBlocking.Abs().ToFraction()));

        // the resistance of the loop, seen from the output, divided by (1 - D) squared
        Assert.Equal(5 * inverse.ToDouble() * inverse.ToDouble(), analysis.FastSwitchingLimit.Ohms, 1e-12 * inverse.ToDouble() * inverse.ToDouble() * 5);
    }

    [Theory]
    [MemberData(nameof(Duties))]
    public void An_inverting_stage_has_the_negative_quotient_of_its_duties(int p, int q)
    {
        Fraction d = new(p, q), rest = Fraction.One - d;
        ModeAnalysis analysis = ModeAnalysis.Of(InductiveStage.Inverting(d));

        Assert.Equal(-d / rest, analysis.Ratio.ToFraction());
        Assert.Equal(-Fraction.One / rest, analysis.Inductors["coil"].Current.ToFraction());
        Assert.All(analysis.Switches, s => Assert.Equal(Fraction.One / rest, s.PeakBlocking.Abs().ToFraction()));
    }

    [Theory]
    [MemberData(nameof(Duties))]
    public void A_current_load_changes_no_average(int p, int q)
    {
        Fraction d = new(p, q);
        Assert.Equal(d, ModeAnalysis.Of(InductiveStage.StepDown(d, load: LoadKind.Current)).Ratio.ToFraction());
        Assert.Equal(Fraction.One / (Fraction.One - d), ModeAnalysis.Of(InductiveStage.StepUp(d, load: LoadKind.Current)).Ratio.ToFraction());
        Assert.Equal(d, ModeAnalysis.Of(FlyingCapacitorStage.Of(4, d, load: LoadKind.Current)).Ratio.ToFraction());
    }

    [Theory]
    [InlineData(2, 1, 5)]
    [InlineData(4, 1, 5)]
    [InlineData(4, 1, 3)]
    [InlineData(4, 1, 2)]
    [InlineData(4, 4, 5)]
    [InlineData(6, 1, 7)]
    [InlineData(6, 3, 7)]
    [InlineData(8, 2, 15)]
    public void A_stage_of_an_even_number_of_levels_balances_by_ripple_at_equal_steps(int levels, int p, int q)
    {
        Fraction d = new(p, q);
        ModeAnalysis analysis = ModeAnalysis.Of(FlyingCapacitorStage.Of(levels, d));

        Assert.Equal(d, analysis.Ratio.ToFraction());
        Assert.Equal(levels == 2 ? VoltageBalance.Averages : VoltageBalance.Ripple, analysis.Balance);
        Assert.Equal(
            Enumerable.Range(1, levels - 2).Select(k => new Fraction(levels - 1 - k, levels - 1)),
            analysis.IdealPoint.CapacitorVoltages.Select(v => v.ToFraction()));
        Assert.All(analysis.Switches, s => Assert.Equal(new Fraction(1, levels - 1), s.PeakBlocking.Abs().ToFraction()));
    }

    [Theory]
    [InlineData(3)]
    [InlineData(5)]
    [InlineData(7)]
    public void A_stage_of_an_odd_number_of_levels_leaves_its_voltages_to_the_losses(int levels)
    {
        ModeAnalysis analysis = ModeAnalysis.Of(FlyingCapacitorStage.Of(levels, new Fraction(2, 15)));

        Assert.Equal(VoltageBalance.Losses, analysis.Balance);
        Assert.Equal(new Fraction(2, 15), analysis.Ratio.ToFraction());
        Assert.Contains(analysis.IdealPoint.CapacitorVoltages, v => !v.IsDetermined);
        Assert.Equal(1, analysis.Inductors[0].Current);
    }

    [Fact]
    public void A_four_level_stage_is_that_of_the_trade()
    {
        // common practice, no source: the first flying capacitor holds two thirds of the input, 2.8 V of 4.2 V, so that a
        // device of 1.4 V needs two in series and four times the area; the switching node swings by a third of the input;
        // three devices of 1.8 V in series withstand a cell of 4.2 V
        ModeAnalysis analysis = ModeAnalysis.Of(FlyingCapacitorStage.Of(4, new Fraction(4, 21)));

        double first = 4.2 * analysis.IdealPoint.CapacitorVoltages["fly1"].ToDouble();
        Assert.Equal(2.8, first, 1e-12);
        int stack = (int)Math.Ceiling((first / 1.4) - 1e-9);
        Assert.Equal((2, 4), (stack, stack * stack));
        Quantity[] levels = [.. analysis.IdealPoint.NodePotentials["x"]];
        Assert.Equal(new Fraction(1, 3), levels.Max(v => v.ToFraction()) - levels.Min(v => v.ToFraction()));
        Assert.True(4.2 * analysis.Switches.Max(s => s.PeakBlocking.Abs().ToDouble()) <= 1.8);
    }

    [Theory]
    [InlineData(1, 5)]
    [InlineData(1, 3)]
    [InlineData(4, 21)]
    public void A_series_charged_stage_holds_a_third_in_each_capacitor(int p, int q)
    {
        Fraction d = new(p, q);
        ModeAnalysis analysis = ModeAnalysis.Of(SeriesChargedStage.Of(d));

        Assert.Equal(d, analysis.Ratio.ToFraction());
        Assert.Equal(VoltageBalance.Ripple, analysis.Balance);
        Assert.Equal([new Fraction(1, 3), new Fraction(1, 3)], analysis.IdealPoint.CapacitorVoltages.Select(v => v.ToFraction()));
    }

    [Fact]
    public void A_series_capacitor_stage_halves_the_duty_and_shares_the_current()
    {
        Fraction d = new(2, 7);
        ModeAnalysis analysis = ModeAnalysis.Of(SeriesCapacitorStage.Of(d));

        Assert.Equal(d / 2, analysis.Ratio.ToFraction());
        Assert.Equal(VoltageBalance.Averages, analysis.Balance);
        Assert.Equal(new Fraction(1, 2), analysis.IdealPoint.CapacitorVoltages["fly"].ToFraction());
        Assert.All(analysis.Inductors, l => Assert.Equal(new Fraction(1, 2), l.Current.ToFraction()));
        Assert.Equal(
            [new Fraction(1, 2), new Fraction(1, 2), Fraction.One, new Fraction(1, 2)],
            analysis.Switches.Select(s => s.PeakBlocking.Abs().ToFraction()));
    }

    public static TheoryData<int> Sizes => [2, 3, 4, 5, 8];

    [Theory]
    [MemberData(nameof(Sizes))]
    public void Behind_an_inductor_a_series_parallel_converter_charges_softly(int n)
    {
        ModeAnalysis analysis = ModeAnalysis.Of(InductorFed.Behind(SeriesParallel.StepDown(n)));

        Assert.Equal(new Fraction(1, n), analysis.Ratio.ToFraction());
        Assert.Equal([new Fraction(1, n), new Fraction(n - 1, n)], analysis.Converter.Phases.Select(p => p.Duty));
        Assert.Equal(1, analysis.Inductors["coil"].Current);
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void Ladders_and_Dickson_converters_keep_their_ratio_behind_an_inductor(int n)
    {
        foreach (Converter source in new[] { Ladder.StepDown(n), Dickson.StepDown(n) })
        {
            ModeAnalysis before = ModeAnalysis.Of(source), after = ModeAnalysis.Of(InductorFed.Behind(source));
            Assert.Equal(before.Ratio, after.Ratio);
            Assert.Equal(before.ChargeFlow.Capacitors.Select(c => c.ToString()), after.ChargeFlow.Capacitors.Select(c => c.ToString()));
            Assert.Equal(VoltageBalance.Losses, after.Balance);
        }
    }

    [Fact]
    public void An_inductor_is_refused_where_its_current_would_have_no_path()
    {
        ArgumentException error = Assert.Throws<ArgumentException>(() => InductorFed.Behind(SeriesParallel.StepUp(2)));
        Assert.Contains("delivers 0 in phase", error.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => InductorFed.Behind(Ladder.StepDown(3, load: LoadKind.Current)));
    }

    [Fact]
    public void Duties_out_of_range_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => InductiveStage.StepDown(Fraction.Zero));
        Assert.Throws<ArgumentOutOfRangeException>(() => InductiveStage.StepUp(Fraction.One));
        Assert.Throws<ArgumentOutOfRangeException>(() => FlyingCapacitorStage.Of(1, new Fraction(1, 2)));
        Assert.Throws<ArgumentOutOfRangeException>(() => SeriesChargedStage.Of(new Fraction(1, 2)));
        Assert.Throws<ArgumentOutOfRangeException>(() => SeriesCapacitorStage.Of(new Fraction(1, 2)));
    }
}
