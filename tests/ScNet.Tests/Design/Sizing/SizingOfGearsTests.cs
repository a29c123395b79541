using ScNet.Analysis;
using ScNet.Design.Sizing;
using ScNet.Devices;
using ScNet.Netlists;
using ScNet.Tests.Design.Losses;

namespace ScNet.Tests.Design.Sizing;

/// <summary>
/// A halver and a doubler of one capacitor, each of which closes one switch that the other does not: what either reaches with all the area for itself, both together do not.
/// </summary>
public sealed class SizingOfGearsTests
{
    private const double Area = 1e-8, Ceiling = 1e8;

    private static readonly ConverterAnalysis s_gears = ConverterAnalysis.Of(NetlistReader.Read("""
        name = "gears"
        input = "vin"
        output = "vout"
        [capacitors]
        c = { between = ["p", "n"] }
        [switches]
        a = { between = ["vin", "p"] }
        b = { between = ["vin", "n"] }
        d = { between = ["vout", "p"] }
        e = { between = ["vout", "n"] }
        g = { between = ["gnd", "n"] }
        [modes."1/2"]
        a = 1
        d = 2
        e = 1
        g = 2
        [modes."2"]
        a = 1
        b = 2
        d = 2
        g = 1
        """).GetConverter());

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
        SizingPoint half = Halved(1.02 * least), twice = Doubled(1.01 * 4 * least);
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

    [Fact]
    public void Denser_capacitors_are_taken_where_a_point_is_beyond_the_reach_of_what_was_tried()
    {
        double least = LeastImpedance.OfHalver(Sized.Capacitor.FaradsPerSquareMetre, Area, Ceiling);
        Assert.True(LeastImpedance.OfHalver(s_sparse.FaradsPerSquareMetre, Area, Ceiling) > 1.5 * least);
        SizingSearch search = Search([Halved(1.1 * least)], s_sparse, Sized.Capacitor);
        SizingSolution found = search.Run()!;
        Assert.Empty(search.Unreachable);
        Assert.Equal(1, found.Options[0]);
        Assert.InRange(found.Gap, 0, 2e-6);
    }

    [Fact]
    public void Denser_capacitors_are_taken_where_points_are_reached_alone_but_not_together()
    {
        double least = LeastImpedance.OfHalver(s_sparse.FaradsPerSquareMetre, Area, Ceiling);
        SizingPoint[] points = [s_free, Halved(1.004 * least), Doubled(1.002 * 4 * least)];
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
        return new(InventedSizing.Task(s_gears, points, new AreaBudget(Area), process));
    }

    // (V/2 − V_out) and (2 V − V_out) over 1 mA
    private static SizingPoint Halved(double ohms) => new("1/2", 2, 1 - (ohms * 1e-3), 1e-3);

    private static SizingPoint Doubled(double ohms) => new("2", 1, 2 - (ohms * 1e-3), 1e-3);
}
