using ScNet.Design.Sizing;
using ScNet.Tests.Design.Losses;

namespace ScNet.Tests.Design.Sizing;

/// <summary>The figures of a point that is left out for others.</summary>
public sealed class LeftOutPointTests
{
    private const double Area = 1e-8;

    private static readonly double s_least = LeastImpedance.OfHalver(Sized.Capacitor.FaradsPerSquareMetre, Area, InventedSizing.Frequencies.Maximum!.Value);

    [Theory]
    [InlineData(1.02, 1.01)]
    [InlineData(1.005, 1.04)]
    [InlineData(1.04, 1.005)]
    public void What_sizes_for_the_others_allow_is_above_what_is_needed_and_just_enough(double half, double twice) => Check(half, twice);

    // so that every switch has some use also without the one that is left out
    [Theory]
    [InlineData(1.01, 1.02)]
    [InlineData(1.04, 1.003)]
    public void So_it_is_beside_points_of_both_modes_that_need_little(double half, double twice) => Check(half, twice, HalverAndDoubler.Halved(200), HalverAndDoubler.Doubled(500));

    // the least that is told of a heavier point is neither beyond reach nor, as impedances are held below what is needed, within it; what serves a point that
    // needs more of the same mode stands against nothing
    [Fact]
    public void A_point_that_needs_just_the_least_of_its_mode_is_left_out_with_that_figure()
    {
        SizingPoint heavy = InventedSizing.Point(2, 1 - (s_least / 2 * 1e-3), 1e-3), other = InventedSizing.Point(2, 1 - (1.01 * s_least * 1e-3), 1e-3);
        double told = Assert.Single(UnreachableOfHalver(heavy)).LeastOhms!.Value;

        // half of the input less the output is told/1024 without rounding
        SizingPoint just = InventedSizing.Point(4 * told / 1024, told / 1024, 1.0 / 1024);
        IReadOnlyList<UnreachablePoint> unreachable = UnreachableOfHalver(heavy, just, other);
        Assert.Equal([heavy, just], unreachable.Select(u => u.Point));
        Assert.Equal([true, false], unreachable.Select(u => u.IsAlone));
        Assert.Equal(told, unreachable[1].NeededOhms);
        Assert.All(unreachable, u => Assert.Equal(s_least, u.LeastOhms!.Value, 1e-4 * s_least));
    }

    private static void Check(double half, double twice, params SizingPoint[] more)
    {
        SizingPoint[] points = [HalverAndDoubler.Halved(half * s_least), HalverAndDoubler.Doubled(twice * 4 * s_least), .. more];
        UnreachablePoint left = Assert.Single(Unreachable(points));
        Assert.False(left.IsAlone);
        Assert.True(left.LeastOhms > left.NeededOhms, left.Reason);

        // with that impedance, but for a hundredth, it is served beside the others
        Func<double, SizingPoint> ofOhms = left.Point.Mode == "2" ? HalverAndDoubler.Doubled : HalverAndDoubler.Halved;
        SizingPoint[] With(double factor) => [.. points.Where(p => p != left.Point), ofOhms(factor * left.LeastOhms!.Value)];
        Assert.Empty(Unreachable(With(1.01)));
        Assert.Single(Unreachable(With(0.99)));
    }

    private static IReadOnlyList<UnreachablePoint> UnreachableOfHalver(params SizingPoint[] points)
    {
        SizingSearch search = new(InventedSizing.Task(InventedSizing.Halver, points, new AreaBudget(Area)));
        search.Run();
        return search.Unreachable;
    }

    private static IReadOnlyList<UnreachablePoint> Unreachable(SizingPoint[] points)
    {
        SizingSearch search = new(InventedSizing.Task(HalverAndDoubler.Analysis, points, new AreaBudget(Area), InventedSizing.Process(Sized.Switch with { RatedVolts = 4 })));
        Assert.NotNull(search.Run());
        return search.Unreachable;
    }
}
