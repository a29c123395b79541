using Fractions;
using ScNet.Stress;

namespace ScNet.Tests.Stress;

/// <summary>The extremes of one switch over phases, and over modes.</summary>
public sealed class SwitchStressTests
{
    private static readonly Converter s_converter = RatedNetworks.HalfOfModes().Capacitor("a", "x", "gnd").Capacitor("b", "y", "gnd")
        .Switch("join", "x", "y").Mode("one", RatedNetworks.HalfSwitching).Mode("two", RatedNetworks.HalfSwitching).Build();

    // at 2 V to 3 V every voltage is largest at 3 V; of equal ones the first phase counts
    [Fact]
    public void The_first_of_the_largest_and_of_the_lowest_voltages_is_the_extreme()
    {
        SwitchStress stress = Of(0, Span(1, 3), Span(2, 3), Span(-1, 2), Span(2, 3), Span(-1, 2), Span(0, 1));
        Assert.Equal("s1: 2 V (2/3) at 3 V, mode one, phase 2; -1.5 V (-1/2) at 3 V, mode one, phase 3", stress.ToString());
        Assert.Equal(Quantity.Exact(2, 3), stress.Peak!.PerVoltOfInput);
        Assert.True(stress.BlocksBothWays && stress.IsDetermined && !stress.IsFloating);
        Assert.Empty(stress.Undetermined);
    }

    [Fact]
    public void The_peak_is_the_extreme_of_the_larger_magnitude_and_the_positive_one_on_a_tie()
    {
        Assert.Equal(Quantity.Exact(-2, 3), Of(0, Span(1, 2), Span(-2, 3)).Peak!.PerVoltOfInput);
        Assert.Equal(Quantity.Exact(2, 3), Of(0, Span(2, 3), Span(-1, 2)).Peak!.PerVoltOfInput);
        Assert.Equal(Quantity.Exact(1, 2), Of(0, Span(-1, 2), Span(1, 2)).Peak!.PerVoltOfInput);
        Assert.Null(Of(0, Span(0, 1)).Peak);
    }

    // floating in an even number of phases is floating all the same
    [Fact]
    public void A_switch_that_floats_in_two_phases_floats()
    {
        VoltageSpan floating = new(new Interval<Fraction>(0, 1), VoltageBasis.Floating);
        Assert.True(Of(0, floating, floating).IsFloating);
        Assert.True(Of(0, floating, Span(1, 2)).IsFloating);
        Assert.False(Of(0, Span(1, 2)).IsFloating);
    }

    // phase 2 hangs on a and b, of which only losses fix b
    [Fact]
    public void What_nothing_bounds_is_told_with_the_reason_and_the_other_phases_count()
    {
        SwitchStress stress = Of(1, Span(1, 3), default, Span(-1, 2));
        Assert.Equal(["mode one, phase 2, as only losses fix a, b"], stress.Undetermined);
        Assert.Equal(
            "s2: 1 V (1/3) at 3 V, mode one, phase 1; -1.5 V (-1/2) at 3 V, mode one, phase 3; undetermined in mode one, phase 2, as only losses fix a, b",
            stress.ToString());
        Assert.False(stress.IsDetermined);
    }

    [Fact]
    public void The_worst_of_several_modes_has_both_extremes_and_all_that_is_not_known()
    {
        SwitchStress[] stresses = [Of(0, Span(1, 3), Span(-1, 2)), Of(0, Span(2, 3), Span(-1, 3)), Of(0, new VoltageSpan(new Interval<Fraction>(0, 1), VoltageBasis.Floating))];
        SwitchStress worst = SwitchStress.Worst(s_converter, 0, stresses);
        Assert.Equal("s1: 3 V (1) at 3 V, mode one, phase 1, floating; -1.5 V (-1/2) at 3 V, mode one, phase 2", worst.ToString());
        Assert.True(worst.IsFloating && worst.IsDetermined);
        Assert.Empty(worst.Phases);

        SwitchStress partly = SwitchStress.Worst(s_converter, 1, [Of(1, Span(1, 3)), Of(1, [default])]);
        Assert.Equal("s2: 1 V (1/3) at 3 V, mode one, phase 1; never negative; undetermined in mode one, phase 1, as only losses fix a, b", partly.ToString());
        Assert.False(partly.IsDetermined || partly.IsFloating);
        Assert.False(SwitchStress.Worst(s_converter, 0, []).IsDetermined);
    }

    private static VoltageSpan Span(int numerator, int denominator) => VoltageSpan.Fixed(new Fraction(numerator, denominator));

    private static SwitchStress Of(int @switch, params VoltageSpan[] phases)
    {
        Capacitor[] idle = [s_converter.Capacitors["a"], s_converter.Capacitors["b"]];
        return SwitchStress.Of(
            s_converter, @switch, phases, s_converter.Modes[0], null, new Interval<double>(2, 3), 3, (_, _) => (idle, []), _ => throw new InvalidOperationException(),
            c => c.Name == "b");
    }
}
