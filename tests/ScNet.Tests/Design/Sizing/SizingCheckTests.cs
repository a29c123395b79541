using ScNet.Design.Sizing;

namespace ScNet.Tests.Design.Sizing;

public sealed class SizingCheckTests
{
    private static readonly SizingPoint s_point = InventedSizing.Point(2, 0.9, 1e-3);

    public static TheoryData<double, double?, double, double> OutOfRange => new()
    {
        { 0, 0.9, 1e-3, 1 },
        { -2, 0.9, 1e-3, 1 },
        { 2, 0.9, 0, 1 },
        { 2, 0.9, double.NaN, 1 },
        { 2, 0.9, 1e-3, 0 },
        { 2, 0.9, 1e-3, double.PositiveInfinity },
        { 2, double.NaN, 1e-3, 1 },
        { 2, double.NegativeInfinity, 1e-3, 1 },
    };

    [Fact]
    public void A_point_in_range_is_allowed_also_one_whose_output_follows_or_is_below_zero()
    {
        SizingPoint[] points = [s_point, s_point with { OutputVolts = null }, s_point with { OutputVolts = -0.9 }, s_point with { OutputVolts = 0 }];
        Assert.Null(Record.Exception(() => SizingCheck.Points(points, InventedSizing.Halver)));
    }

    [Theory]
    [MemberData(nameof(OutOfRange))]
    public void Each_value_of_a_point_out_of_range_is_refused_by_itself(double inputVolts, double? outputVolts, double amperes, double weight)
    {
        ArgumentException error = Assert.Throws<ArgumentException>(
            () => SizingCheck.Points([s_point, InventedSizing.Point(inputVolts, outputVolts, amperes, weight)], InventedSizing.Halver));
        Assert.Equal("points", error.ParamName);
    }

    [Fact]
    public void No_points_are_refused() => Assert.Throws<ArgumentException>(() => SizingCheck.Points([], InventedSizing.Halver));

    [Fact]
    public void A_mode_that_the_converter_does_not_have_is_refused() =>
        Assert.Throws<ArgumentException>(() => SizingCheck.Points([s_point with { Mode = "no such mode" }], InventedSizing.Halver));

    [Theory]
    [InlineData(1e-6, null, null, true)]
    [InlineData(null, 1e-6, 1e-6, true)]
    [InlineData(null, 1e-6, null, false)]
    [InlineData(null, null, 1e-6, false)]
    public void An_area_bounds_capacitors_and_switches(double? total, double? capacitors, double? switches, bool isAllowed)
    {
        Exception? error = Record.Exception(() => SizingCheck.Area(new AreaBudget(total, capacitors, switches)));
        Assert.Equal(isAllowed, error is null);
    }

    [Theory]
    [InlineData(0, 1e6)]
    [InlineData(-1, 1e6)]
    public void The_floor_of_the_frequency_is_above_zero(double floorHz, double ceilingHz) =>
        Assert.Throws<ArgumentException>(() => SizingCheck.Frequency(new(floorHz, ceilingHz)));

    [Fact]
    public void A_frequency_without_floor_and_ceiling_is_refused() => Assert.Throws<ArgumentException>(() => SizingCheck.Frequency(default));

    [Fact]
    public void A_frequency_that_is_given_is_allowed() => Assert.Null(Record.Exception(() => SizingCheck.Frequency(new(1e6, 1e6))));

    [Fact]
    public void Sizes_are_not_looked_for_before_points_area_and_frequency_are_checked()
    {
        AreaBudget area = new(1e-8);
        Assert.Throws<ArgumentException>(() => SizedDesign.Try(InventedSizing.Halver, InventedSizing.Process(), [s_point with { LoadAmperes = 0 }], area, InventedSizing.Frequencies));
        Assert.Throws<ArgumentException>(() => SizedDesign.Try(InventedSizing.Halver, InventedSizing.Process(), [s_point], new AreaBudget(null, 1e-8), InventedSizing.Frequencies));
        Assert.Throws<ArgumentException>(() => SizedDesign.Try(InventedSizing.Halver, InventedSizing.Process(), [s_point], area, new(0, 1e6)));
    }
}
