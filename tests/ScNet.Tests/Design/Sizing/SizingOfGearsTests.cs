using ScNet.Design.Sizing;
using ScNet.Devices;
using ScNet.Tests.Design.Losses;

namespace ScNet.Tests.Design.Sizing;

/// <summary>What a halver or a doubler of the same capacitor reaches with all the area for itself, both together do not.</summary>
public sealed class SizingOfGearsTests
{
    private const double Area = 1e-8, Ceiling = 1e8;

    // less dense, but with so light plates that it is tried first
    private static readonly CapacitorDevice s_sparse = Sized.Capacitor with { Name = "sparse", FaradsPerSquareMetre = 2e-3, BottomPlateFraction = 1e-5, TopPlateFraction = 0 };

    private static readonly SizingPoint s_free = new("1/2", 1.5, null, 1e-5), s_easy = new("2", 0.8, 1.5, 1e-5);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(3)]
    public void Of_points_that_are_reached_alone_but_not_together_the_one_that_needs_most_is_left_out(int place)
    {
        double least = LeastImpedance.OfHalver(Sized.Capacitor.FaradsPerSquareMetre, Area, Ceiling);
        SizingPoint half = HalverAndDoubler.Halved(1.02 * least), twice = HalverAndDoubler.Doubled(1.01 * 4 * least);
        List<SizingPoint> points = [s_free, half, s_easy];
        Assert.Single(Search([half], Sized.Capacitor).Run()!.Points);
        Assert.Single(Search([twice], Sized.Capacitor).Run()!.Points);
        points.Insert(place, twice);
        SizingSearch search = Search([.. points], Sized.Capacitor);
        SizingSolution found = search.Run()!;
        UnreachablePoint left = Assert.Single(search.Unreachable);
        Assert.Same(twice, left.Point);
        Assert.False(left.IsAlone);
        Assert.Equal(1.01 * 4 * least, left.NeededOhms, 1e-9);
        Assert.NotNull(left.LeastOhms);
        Assert.Equal([s_free, half, s_easy], found.Points);
        Assert.InRange(found.Gap, 0, 2e-6);
    }

    // the sizes that are found prove that there are some
    [Fact]
    public void Points_that_some_sizes_reach_together_are_all_served_with_no_more_than_they_need()
    {
        double least = LeastImpedance.OfHalver(Sized.Capacitor.FaradsPerSquareMetre, Area, Ceiling);
        SizingPoint half = HalverAndDoubler.Halved(1.003 * least), twice = HalverAndDoubler.Doubled(1.5 * 4 * least);
        SizingSearch search = Search([half, twice], Sized.Capacitor);
        SizingSolution found = search.Run()!;
        Assert.Empty(search.Unreachable);
        Assert.True(found.Modes[0].Ohms(found.FrequenciesHz[0]) <= 1.003 * least);
        Assert.True(found.Modes[1].Ohms(found.FrequenciesHz[1]) <= 1.5 * 4 * least);
    }

    [Fact]
    public void Denser_capacitors_are_taken_where_a_point_is_beyond_the_reach_of_what_was_tried()
    {
        double least = LeastImpedance.OfHalver(Sized.Capacitor.FaradsPerSquareMetre, Area, Ceiling);
        Assert.True(LeastImpedance.OfHalver(s_sparse.FaradsPerSquareMetre, Area, Ceiling) > 1.5 * least);
        SizingSearch search = Search([HalverAndDoubler.Halved(1.1 * least)], s_sparse, Sized.Capacitor);
        SizingSolution found = search.Run()!;
        Assert.Empty(search.Unreachable);
        Assert.Equal(1, found.Options[0]);
        Assert.InRange(found.Gap, 0, 2e-6);
    }

    [Fact]
    public void Denser_capacitors_are_taken_where_points_are_reached_alone_but_not_together()
    {
        double least = LeastImpedance.OfHalver(s_sparse.FaradsPerSquareMetre, Area, Ceiling);
        SizingPoint[] points = [s_free, HalverAndDoubler.Halved(1.004 * least), HalverAndDoubler.Doubled(1.002 * 4 * least)];
        Assert.NotEmpty(Unreachable(points, s_sparse));
        SizingSearch search = Search(points, s_sparse, Sized.Capacitor);
        SizingSolution found = search.Run()!;
        Assert.Empty(search.Unreachable);
        Assert.Equal(points, found.Points);
        Assert.Equal(1, found.Options[0]);
        Assert.InRange(found.Gap, 0, 2e-6);
    }

    private static IReadOnlyList<UnreachablePoint> Unreachable(SizingPoint[] points, params CapacitorDevice[] capacitors)
    {
        SizingSearch search = Search(points, capacitors);
        search.Run();
        return search.Unreachable;
    }

    private static SizingSearch Search(SizingPoint[] points, params CapacitorDevice[] capacitors)
    {
        Process process = new() { Name = "invented", Switches = [Sized.Switch with { RatedVolts = 4 }], Capacitors = capacitors };
        return new(InventedSizing.Task(HalverAndDoubler.Analysis, points, new AreaBudget(Area), process));
    }
}
