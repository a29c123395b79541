using ScNet.Design.Sizing;
using ScNet.Tests.Design.Losses;

namespace ScNet.Tests.Design.Sizing;

/// <summary>A halver that just misses what it needs, with areas of each kind or of both: the least impedance that these allow, beyond which no point is reached even alone.</summary>
public sealed class LeastOfBudgetsTests
{
    private const double Ceiling = 1e8;

    [Fact]
    public void Where_the_area_of_switches_decides_it_is_twice_the_resistance_of_a_quarter_each()
    {
        // 0.25·10⁻⁸ m² are 2.5 mm, 0.4 Ω; 1 µF adds (1/(8 f r C))²/3, three millionths
        AssertLeast(0.8, 1e-5, new AreaBudget(null, 1e-4, 1e-8));
    }

    [Fact]
    public void Where_the_area_of_capacitors_decides_it_is_that_of_charge_sharing()
    {
        // 10⁻¹⁰ m² are 1 pF: 1/(4 f C); four switches of 0.25 m each have 4 mΩ
        AssertLeast(2500, 1e-6, new AreaBudget(null, 1e-10, 1e-6));
    }

    [Fact]
    public void A_total_below_the_areas_of_each_kind_decides_alone()
    {
        double least = LeastImpedance.OfHalver(Sized.Capacitor.FaradsPerSquareMetre, 1e-8, Ceiling);
        AssertLeast(least, 2e-6, new AreaBudget(1e-8, 1e-7, 1e-7));
    }

    [Fact]
    public void It_is_found_in_few_steps()
    {
        // a point that is had at the sizes to start from needs no look at the least; one beyond reach needs some rounds until they gain nothing: five of twenty steps at most
        AreaBudget area = new(1e-8);
        SizingPoint easy = Needing(250);
        int alone = Search(area, easy).Run()!.Steps, both = Search(area, easy, Needing(20)).Run()!.Steps;
        Assert.InRange(both - alone, 1, 100);
    }

    private static void AssertLeast(double ohms, double relative, AreaBudget area)
    {
        SizingSearch search = Search(area, Needing(0.99 * ohms));
        Assert.Null(search.Run());
        UnreachablePoint beyond = Assert.Single(search.Unreachable);
        Assert.True(beyond.IsAlone);
        Assert.Equal(ohms, beyond.LeastOhms!.Value, relative * ohms);
        Assert.NotNull(Search(area, Needing(1.01 * ohms)).Run());
    }

    private static SizingSearch Search(AreaBudget area, params SizingPoint[] points) => new(InventedSizing.Task(InventedSizing.Halver, points, area));

    // (1 − V) V over 0.1 mA
    private static SizingPoint Needing(double ohms) => InventedSizing.Point(2, 1 - (ohms * 1e-4), 1e-4);
}
