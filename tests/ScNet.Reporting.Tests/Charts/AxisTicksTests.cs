using ScNet.Reporting.Charts.Plotting;

namespace ScNet.Reporting.Tests.Charts;

public sealed class AxisTicksTests
{
    [Theory]
    [InlineData(0, 0.95, "V", "0.0 V|0.5 V|1.0 V")]
    [InlineData(0, 3.6, "V", "0 V|1 V|2 V|3 V|4 V")]
    [InlineData(1.7375, 1.8625, "V", "1.70 V|1.75 V|1.80 V|1.85 V|1.90 V")]
    [InlineData(0, 50e-9, "s", "0 ns|20 ns|40 ns|60 ns")]
    [InlineData(-0.02, 0.04, "A", "-20 mA|0 mA|20 mA|40 mA")]
    [InlineData(12, 97, "%", "0 %|50 %|100 %")]
    [InlineData(0.496, 0.4993, "", "0.496|0.497|0.498|0.499|0.500")]
    public void Even_ticks_share_a_prefix(double minimum, double maximum, string unit, string expected) =>
        Assert.Equal(expected.Split('|'), ChartAxis.Linear("x", minimum, maximum, unit, 4).Ticks.Select(t => t.Label));

    [Theory]
    [InlineData(1e3, 1e7, "Hz", "1 kHz|10 kHz|100 kHz|1 MHz|10 MHz")]
    [InlineData(0.15, 40, "Ω", "200 mΩ|500 mΩ|1 Ω|2 Ω|5 Ω|10 Ω|20 Ω")]
    [InlineData(3e6, 4e7, "Hz", "5 MHz|10 MHz|20 MHz")]
    [InlineData(1e-6, 1e6, "Hz", "1 µHz|100 µHz|10 mHz|1 Hz|100 Hz|10 kHz|1 MHz")]
    public void Logarithmic_ticks_stand_at_decades(double minimum, double maximum, string unit, string expected)
    {
        ChartAxis axis = ChartAxis.Logarithmic("x", minimum, maximum, unit);
        Assert.Equal(expected.Split('|'), axis.Ticks.Select(t => t.Label));
        Assert.All(axis.TicksBetween, t => Assert.InRange(t, minimum * 0.999, maximum * 1.001));
    }

    [Fact]
    public void One_value_has_a_range_about_it()
    {
        ChartAxis axis = ChartAxis.Linear("x", 1.8, 1.8, "V");
        Assert.InRange(axis.ShareOf(1.8), 0.2, 0.8);
        Assert.InRange(ChartAxis.Linear("x", 0, 0, "V").ShareOf(0), 0.2, 0.8);
    }

    [Fact]
    public void Lines_are_cut_where_they_leave_the_panel()
    {
        (double, double?)[] line = [(0, -1), (1, 1), (2, 3), (3, 1), (4, null), (5, 1), (6, 1)];
        IReadOnlyList<IReadOnlyList<(double X, double Y)>> pieces = LineClip.Between(line, 0, 2);
        Assert.Equal([[(0.5, 0), (1, 1), (1.5, 2)], [(2.5, 2), (3, 1)], [(5, 1), (6, 1)]], pieces);
        Assert.Empty(LineClip.Between([(0, 5), (1, 6)], 0, 2));
        Assert.Equal([[(0.25, 0), (0.75, 2)]], LineClip.Between([(0, -1), (1, 3)], 0, 2));
    }
}
