using ScNet.Design.Maps;
using ScNet.Tests.Design.Choice;

namespace ScNet.Tests.Design.Maps;

/// <summary>Which of equal modes serves, and lists that are no map.</summary>
public sealed class OperatingMapOrderTests
{
    // neither loses anything: none can take less, and the one of the higher ratio, asked last, is the first that is given
    [Fact]
    public void Of_modes_without_loss_the_first_serves()
    {
        InventedMode half = new("half", amperes => InventedMode.Held(1e6, 1, amperes), ratio: Quantity.Exact(1, 2));
        InventedMode third = new("third", amperes => InventedMode.Held(1e6, 1, amperes), ratio: Quantity.Exact(1, 3));
        Assert.Same(half, OperatingMap.Of([half, third], [4], [1], [0.5]).At(0, 0).BestMode);
        Assert.Same(third, OperatingMap.Of([third, half], [4], [1], [0.5]).At(0, 0).BestMode);
    }

    [Fact]
    public void A_current_or_voltage_of_zero_is_refused_whatever_the_modes()
    {
        InventedMode any = new("any", amperes => InventedMode.Held(1e6, 1, amperes));
        Assert.Throws<ArgumentOutOfRangeException>(() => OperatingMap.Of([any], [2], [1], [0]));
        Assert.Throws<ArgumentOutOfRangeException>(() => OperatingMap.Of([any], [2], [0], [1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => OperatingMap.Of([any], [0], [1], [1]));
    }

    // 65536 times 65537 points are more than a number of 32 bits holds
    [Fact]
    public void Too_many_points_are_no_map()
    {
        InventedMode any = new("any", amperes => InventedMode.Held(1e6, 1, amperes));
        double[] inputs = [.. Enumerable.Repeat(2.0, 65536)], outputs = [.. Enumerable.Repeat(1.0, 65537)];
        Assert.Throws<OverflowException>(() => OperatingMap.Of([any], inputs, outputs, [1]));
    }

    // a ratio of one half has 3/4 at best for 1.5 of 4 V, a duty whatever it takes
    [Fact]
    public void One_mode_that_a_duty_regulates_leaves_nothing_over()
    {
        InventedMode duty = new("duty", amperes => InventedMode.Held(1e6, 1, amperes));
        Assert.Equal(0.75, MapRatios.Of([InventedGears.Half]).IdealEfficiency(4, 1.5));
        Assert.Equal(1, MapRatios.Of([InventedGears.Half, duty]).IdealEfficiency(4, 1.5));
    }

    // 1.7 of 3 V is the most that is missing, told first; of ten times the input eleven times is just a tenth higher
    [Fact]
    public void The_missing_ratio_is_above_the_highest_and_at_most_a_tenth_higher()
    {
        Assert.Equal(1.7 / 3, MissingModes.Of(OperatingMap.Of([InventedGears.Half], [3], [1.7, 1.6], [1e-3])).RatioAbove!.Value, 1e-15);
        Assert.Equal(new Fractions.Fraction(11), MissingModes.Of(OperatingMap.Of([InventedGears.Half], [1], [10], [1e-3])).Ratio);
    }
}
