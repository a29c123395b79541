using Fractions;
using ScNet.Analysis;
using ScNet.Stress;

namespace ScNet.Tests.Stress;

/// <summary>Ranges of the input voltage: which are refused, and what they make of a share of the input.</summary>
public sealed class InputIntervalTests
{
    public static TheoryData<Interval<double>> Wrong => [default, new(0, 1), new(-1, 1), new(1e-61, 1), new(1, 1e61)];

    [Theory]
    [MemberData(nameof(Wrong))]
    public void A_range_without_ends_or_beyond_all_voltages_is_refused_by_every_entry(Interval<double> wrong)
    {
        Converter half = RatedNetworks.Half().Build();
        Assert.Throws<ArgumentOutOfRangeException>("inputVolts", () => ModeStress.Of(ModeAnalysis.Of(half), wrong));
        Assert.Throws<ArgumentOutOfRangeException>("inputVolts", () => RatedNetworks.Stress(half, wrong));

        // no mode has a result: nothing but the entry itself looks at the range
        Converter shorted = RatedNetworks.Half().Switch("s5", "vin", "gnd", 1).Build();
        Assert.Throws<ArgumentOutOfRangeException>("inputVolts", () => RatedNetworks.Stress(shorted, wrong));
        Assert.Throws<ArgumentOutOfRangeException>("name", () => InputInterval.Check(wrong, "name"));
    }

    [Fact]
    public void The_smallest_and_the_largest_voltage_are_taken()
    {
        Interval<double> all = new(1e-60, 1e60);
        Assert.Equal(all, InputInterval.Check(all, "name"));
    }

    // of 2 V to 4 V: -1/2 to 1/4 is lowest and highest at 4 V; 1/4 to 1/2 is lowest at 2 V, and so is -1/2 to -1/4 highest
    [Fact]
    public void A_share_of_the_input_is_scaled_by_the_end_that_takes_it_furthest()
    {
        Interval<Fraction> input = new(2, 4);
        Assert.Equal(new Interval<Fraction>(-2, 1), InputInterval.Scale(new(new(-1, 2), new(1, 4)), input));
        Assert.Equal(new Interval<Fraction>(new Fraction(1, 2), 2), InputInterval.Scale(new(new(1, 4), new(1, 2)), input));
        Assert.Equal(new Interval<Fraction>(-2, new Fraction(-1, 2)), InputInterval.Scale(new(new(-1, 2), new(-1, 4)), input));
        Assert.Equal(default, InputInterval.Scale(default, input));
    }
}
