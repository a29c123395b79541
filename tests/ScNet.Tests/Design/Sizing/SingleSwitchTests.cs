using ScNet.Analysis;
using ScNet.Design.Sizing;
using ScNet.Netlists;

namespace ScNet.Tests.Design.Sizing;

/// <summary>A switch from input to output that is always closed: no capacitor, and an impedance that is its resistance.</summary>
public sealed class SingleSwitchTests
{
    private static readonly ConverterAnalysis s_through = ConverterAnalysis.Of(NetlistReader.Read("""
        name = "through"
        input = "vin"
        output = "vout"
        [switches]
        s = { between = ["vin", "vout"], on = [1, 2] }
        """).GetConverter());

    [Fact]
    public void Its_least_impedance_is_that_of_all_the_area_of_switches()
    {
        // 10⁻⁸ m² are 10 mm of 1000 Ω µm, whatever the area of capacitors
        UnreachablePoint beyond = Assert.Single(Search(0.099).Unreachable);
        Assert.True(beyond.IsAlone);
        Assert.Equal(0.1, beyond.LeastOhms!.Value, 1e-6);
        Assert.Empty(Search(0.101).Unreachable);
    }

    // (1 − V) V over 1 A
    private static SizingSearch Search(double ohms)
    {
        SizingSearch search = new(InventedSizing.Task(s_through, [InventedSizing.Point(1, 1 - ohms, 1)], new AreaBudget(null, 1e-4, 1e-8)));
        search.Run();
        return search;
    }
}
