using ScNet.Design.Sizing;
using ScNet.Tests.Design.Losses;

namespace ScNet.Tests.Design.Sizing;

/// <summary>The search for sizes of a halver against what follows by hand.</summary>
public sealed class SizingSearchTests
{
    private const double Area = 1e-8, Ceiling = 1e8;

    private static readonly SizingPoint s_light = InventedSizing.Point(2, 0.95, 1e-3), s_tooHeavy = InventedSizing.Point(2, 0.95, 4e-3);

    [Fact]
    public void A_ratio_that_is_too_low_or_just_enough_without_load_reaches_no_point()
    {
        // half of 2 V is 1 V
        SizingPoint none = InventedSizing.Point(2, 1, 1e-3), low = InventedSizing.Point(2, 1.1, 1e-3);
        SizingSearch search = Search(none, s_light, low);
        Assert.Equal([s_light], search.Run()!.Points);
        Assert.Equal([none, low], search.Unreachable.Select(u => u.Point));
        Assert.All(search.Unreachable, u => Assert.Null(u.LeastOhms));
        Assert.All(search.Unreachable, u => Assert.True(u.IsAlone));
        Assert.Equal(0, search.Unreachable[0].NeededOhms, 1e-12);
        Assert.Equal(-100, search.Unreachable[1].NeededOhms, 1e-9);
    }

    [Fact]
    public void Without_any_point_that_is_reached_nothing_is_found()
    {
        Assert.Null(Search(InventedSizing.Point(2, 1.1, 1e-3)).Run());
        Assert.Null(Search(s_tooHeavy).Run());
    }

    [Fact]
    public void The_least_impedance_is_that_of_the_best_split_of_the_area_at_the_ceiling()
    {
        SizingSearch search = Search(s_tooHeavy, s_light);
        Assert.Equal([s_light], search.Run()!.Points);
        UnreachablePoint beyond = Assert.Single(search.Unreachable);
        Assert.Same(s_tooHeavy, beyond.Point);
        Assert.True(beyond.IsAlone);
        Assert.Equal(12.5, beyond.NeededOhms, 1e-9);
        double least = LeastOhms();
        Assert.Equal(least, beyond.LeastOhms!.Value, 2e-6 * least);
    }

    [Fact]
    public void A_point_at_the_very_edge_is_told_from_one_beyond_it()
    {
        double least = LeastOhms();
        Assert.NotNull(Search(Needing(least * 1.001)).Run());
        Assert.Null(Search(Needing(least * 0.999)).Run());
    }

    [Fact]
    public void Steps_count_in_all_also_those_that_found_a_point_beyond_reach()
    {
        // 250 Ω are had at the sizes to start from
        SizingPoint easy = Needing(250);
        int alone = Search(easy).Run()!.Steps, beyond = Search(easy, s_tooHeavy).Run()!.Steps;
        Assert.InRange(alone, 1, 1000);
        Assert.InRange(beyond, alone + 1, alone + 1000);
    }

    [Fact]
    public void The_gap_has_what_the_margin_of_the_impedance_costs()
    {
        // held a ten millionth below what is needed, a loss that goes with R⁻ᵐ is so much higher, and areas count alike: slopes by differences of two searches.
        // With all the area switches alone have 0.8 Ω, so that at 1 Ω little can give way
        SizingPoint point = Needing(1);
        double byOhms = -Slope(h => LogWatts(Needing(Math.Exp(h)), Area)), byArea = -Slope(h => LogWatts(point, Area * Math.Exp(h)));
        Assert.InRange(byOhms, 4, 1000);
        Assert.InRange(byArea, 4, 1000);
        double gap = Unbound(point, Area).Gap, margin = 1e-7 * (byOhms + byArea);
        // sizes that are within 3·10⁻⁷ of the best have multipliers within some hundredths
        Assert.InRange(gap, 0.9 * margin, (1.1 * margin) + 3e-7);
    }

    private static SizingSolution Unbound(SizingPoint point, double area) =>
        new SizingSearch(InventedSizing.Task(InventedSizing.Halver, [point], new AreaBudget(area), frequencyHz: new(1e5, 1e13))).Run()!;

    private static double LogWatts(SizingPoint point, double area) => Math.Log(Unbound(point, area).Watts);

    private static double Slope(Func<double, double> value) => (value(1e-3) - value(-1e-3)) / 2e-3;

    private static SizingSearch Search(params SizingPoint[] points) => new(InventedSizing.Task(InventedSizing.Halver, points, new AreaBudget(Area)));

    // (1 − V) V over 1 mA
    private static SizingPoint Needing(double ohms) => InventedSizing.Point(2, 1 - (ohms * 1e-3), 1e-3);

    private static double LeastOhms() => LeastImpedance.OfHalver(Sized.Capacitor.FaradsPerSquareMetre, Area, Ceiling);
}
