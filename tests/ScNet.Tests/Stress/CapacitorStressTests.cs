using Fractions;
using ScNet.Stress;

namespace ScNet.Tests.Stress;

/// <summary>The voltage of one capacitor in a mode, and over modes.</summary>
public sealed class CapacitorStressTests
{
    private static readonly Converter s_converter = RatedNetworks.HalfOfModes().Mode("one", RatedNetworks.HalfSwitching).Mode("two", RatedNetworks.HalfSwitching).Build();

    [Theory]
    [InlineData(-2, 1, "-2 V (-2/3) at 3 V, mode one, idle")]
    [InlineData(-1, 2, "2 V (2/3) at 3 V, mode one, idle")]
    [InlineData(-2, -1, "-2 V (-2/3) at 3 V, mode one, idle")]
    [InlineData(-1, 1, "1 V (1/3) at 3 V, mode one, idle")]
    public void The_peak_is_the_end_of_the_larger_magnitude_and_the_positive_one_on_a_tie(int thirdsLow, int thirdsHigh, string expected)
    {
        CapacitorStress stress = Of(new VoltageSpan(new Interval<Fraction>(new Fraction(thirdsLow, 3), new Fraction(thirdsHigh, 3)), VoltageBasis.Idle));
        Assert.Equal($"fly: {expected}", stress.ToString());
        Assert.True(stress.IsDetermined);
        Assert.Empty(stress.Undetermined);
    }

    // of one magnitude the voltage that Kirchhoff's law fixes is the surer one
    [Fact]
    public void The_worst_of_several_modes_is_the_largest_magnitude_and_a_fixed_one_on_a_tie()
    {
        CapacitorStress idle = Of(new VoltageSpan(new Interval<Fraction>(new Fraction(1, 3), new Fraction(1, 2)), VoltageBasis.Idle));
        CapacitorStress fix = Of(VoltageSpan.Fixed(new Fraction(-1, 2))), low = Of(VoltageSpan.Fixed(new Fraction(1, 3))), open = Of(default);
        CapacitorStress worst = CapacitorStress.Worst(s_converter.Capacitors[0], [low, idle, fix]);
        Assert.Equal("fly: -1.5 V (-1/2) at 3 V, mode one", worst.ToString());
        Assert.True(worst.IsDetermined);

        CapacitorStress partly = CapacitorStress.Worst(s_converter.Capacitors[0], [low, open]);
        Assert.Equal("fly: 1 V (1/3) at 3 V, mode one", partly.ToString());
        Assert.Equal(["mode one, as fly idles"], partly.Undetermined);
        Assert.False(partly.IsDetermined);
    }

    [Fact]
    public void A_converter_of_which_no_mode_has_a_result_says_nothing_of_its_capacitors()
    {
        CapacitorStress none = Assert.Single(RatedNetworks.Stress(RatedNetworks.Half().Switch("s5", "vin", "gnd", 1).Build()).Capacitors);
        Assert.Equal("fly: undetermined", none.ToString());
        Assert.False(none.IsDetermined);
        Assert.Empty(none.Undetermined);
    }

    private static CapacitorStress Of(VoltageSpan span) =>
        CapacitorStress.Of(s_converter.Capacitors[0], span, s_converter.Modes[0], new Interval<double>(2, 3), 3, isLeftToLosses: false);
}
