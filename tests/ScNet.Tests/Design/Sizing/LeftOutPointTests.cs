using ScNet.Design.Sizing;
using ScNet.Tests.Design.Losses;

namespace ScNet.Tests.Design.Sizing;

/// <summary>The figures of a point that is left out for others.</summary>
public sealed class LeftOutPointTests
{
    private const double Area = 1e-8;

    [Theory]
    [InlineData(1.02, 1.01)]
    [InlineData(1.005, 1.04)]
    [InlineData(1.04, 1.005)]
    public void What_sizes_for_the_others_allow_is_above_what_is_needed_and_just_enough(double half, double twice)
    {
        double least = LeastImpedance.OfHalver(Sized.Capacitor.FaradsPerSquareMetre, Area, InventedSizing.Frequencies.Maximum!.Value);
        SizingPoint[] points = [HalverAndDoubler.Halved(half * least), HalverAndDoubler.Doubled(twice * 4 * least)];
        UnreachablePoint left = Assert.Single(Unreachable(points));
        Assert.False(left.IsAlone);
        Assert.True(left.LeastOhms > left.NeededOhms, left.Reason);

        // with that impedance, but for a hundredth, it is served beside the others
        Func<double, SizingPoint> ofOhms = left.Point.Mode == "2" ? HalverAndDoubler.Doubled : HalverAndDoubler.Halved;
        SizingPoint[] With(double factor) => [.. points.Where(p => p != left.Point), ofOhms(factor * left.LeastOhms!.Value)];
        Assert.Empty(Unreachable(With(1.01)));
        Assert.Single(Unreachable(With(0.99)));
    }

    private static IReadOnlyList<UnreachablePoint> Unreachable(SizingPoint[] points)
    {
        SizingSearch search = new(InventedSizing.Task(HalverAndDoubler.Analysis, points, new AreaBudget(Area), InventedSizing.Process(Sized.Switch with { RatedVolts = 4 })));
        Assert.NotNull(search.Run());
        return search.Unreachable;
    }
}
