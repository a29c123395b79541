using ScNet.Design.Maps;
using ScNet.Design.Regulation;

namespace ScNet.Tests.Design.Maps;

public sealed class GearCountsTests
{
    private static readonly double[] s_inputs = InventedGears.Range(2.8, 4.2, 8);

    [Fact]
    public void The_best_set_of_each_number_is_the_one_whose_own_map_is_best()
    {
        OperatingMap map = OperatingMap.Of(InventedGears.All, s_inputs, [0.8, 1.2], [1e-3, 1e-2]);
        IReadOnlyList<GearCount> counts = GearCounts.Of(map);
        Assert.Equal(4, counts.Count);
        for (int count = 1; count <= 4; count++)
        {
            (double Held, double Efficiency) best = Enumerable.Range(1, 15).Where(set => int.PopCount(set) == count)
                .Select(set => OperatingMap.Of([.. InventedGears.All.Where((_, m) => (set >> m & 1) == 1)], s_inputs, [0.8, 1.2], [1e-3, 1e-2]))
                .Max(m => (m.HeldShare, m.AverageEfficiency ?? 0));
            Assert.Equal(count, counts[count - 1].Modes.Count);
            Assert.Equal(best.Held, counts[count - 1].HeldShare);
            Assert.Equal(best.Efficiency, counts[count - 1].AverageEfficiency!.Value, 1e-12);
            Assert.True(counts[count - 1].IsCertain);
        }
    }

    [Fact]
    public void Many_modes_are_added_one_by_one_where_sets_are_too_many()
    {
        RegulatedMode[] many = [.. Enumerable.Repeat(InventedGears.Half, 20), InventedGears.Linear];
        IReadOnlyList<GearCount> counts = GearCounts.Of(OperatingMap.Of(many, [3, 4], [1.2], [1e-3]));
        Assert.Equal(21, counts.Count);
        Assert.True(counts[3].IsCertain);
        Assert.False(counts[10].IsCertain);
        Assert.Equal(counts[0].AverageEfficiency, counts[20].AverageEfficiency);
        Assert.Equal(11, counts[10].Modes.Count);
    }

    [Fact]
    public void What_is_missing_is_a_ratio_or_an_impedance()
    {
        MissingModes none = MissingModes.Of(OperatingMap.Of(InventedGears.All, [3], [1.2], [1e-3]));
        Assert.Equal((0, "every point is held"), (none.Points, none.ToString()));

        // 1.6 of 3 V takes more than a half: 6/11 is above 0.5333, 5/9 = 0.5556 and 4/7 = 0.571 are simpler
        MissingModes ratio = MissingModes.Of(OperatingMap.Of([InventedGears.Half, InventedGears.Third], [3, 4], [1.2, 1.6], [1e-3]));
        Assert.Equal((1, new Fractions.Fraction(4, 7)), (ratio.Points, ratio.Ratio));
        Assert.Equal(1.6 / 3, ratio.RatioAbove!.Value, 1e-15);
        Assert.Null(ratio.OhmsNeeded);
        Assert.Equal("1 point is not held; a ratio above 0.5333 is missing, such as 4/7", ratio.ToString());

        MissingModes impedance = MissingModes.Of(OperatingMap.Of([InventedGears.Half], [3], [1.2, 1.4], [0.1]));
        Assert.Equal((2, null), (impedance.Points, impedance.Ratio));
        Assert.Equal(1, impedance.OhmsNeeded!.Value, 1e-12);
        Assert.Equal("2 points are not held; from 3 V to 1.4 V at 100 mA the ratio above needs an output impedance of at most 1 Ω", impedance.ToString());
    }
}
