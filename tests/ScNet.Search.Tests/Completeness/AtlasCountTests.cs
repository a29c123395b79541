using Fractions;
using ScNet.Topologies;

namespace ScNet.Search.Tests.Completeness;

/// <summary>Counts, ratios and numbers of switches of the atlas against Burnside's lemma, published bounds and the table of the library.</summary>
public class AtlasCountTests
{
    public static IEnumerable<object[]> Bounds => AtlasCampaign.UpTo(4, 5, [[1, 2], [2, 3], [3, 5], [4, 8], [5, 13]]);

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Networks_are_as_many_as_Burnsides_lemma_says(int capacitors) =>
        Assert.Equal(Enumerable.Range(1, capacitors).Sum(PairCountTests.Count), MadeAtlases.Of(capacitors).NetworkCount);

    // the bound and the statement that it is reached: Makowski and Maksimovic, see RatioTests
    [Theory]
    [MemberData(nameof(Bounds))]
    public void Positive_ratios_are_all_fractions_of_the_Fibonacci_bound(int capacitors, int bound)
    {
        Atlas atlas = MadeAtlases.Of(capacitors);
        SortedSet<Fraction> fractions = [];
        for (int p = 1; p <= bound; p++)
        {
            for (int q = 1; q <= bound; q++)
            {
                fractions.Add(new Fraction(p, q).Reduce());
            }
        }

        Assert.Equal(fractions, atlas.Ratios.Where(r => r > 0));
        Assert.All(atlas.Ratios, r => Assert.Contains(1 / r, atlas.Ratios));
        Assert.All(atlas.Ratios.Where(r => r != 1), r => Assert.Contains(1 - r, atlas.Ratios));
    }

    // their bound of 3k - 2 switches, k counting the output's capacitor, is what the extreme ratios need and no network exceeds
    [Theory]
    [MemberData(nameof(Bounds))]
    public void Extreme_ratios_need_as_many_switches_as_any_network_can(int capacitors, int bound)
    {
        Atlas atlas = MadeAtlases.Of(capacitors);
        int most = (3 * (capacitors + 1)) - 2;
        Assert.Equal(most, atlas.Front(bound).Min(n => n.Measures.SwitchCount));
        Assert.Equal(most, atlas.Front(new Fraction(1, bound)).Min(n => n.Measures.SwitchCount));
        Assert.All(atlas.Ratios.SelectMany(atlas.Front), n => Assert.True(n.Measures.SwitchCount <= (3 * n.CapacitorCount) + 1));
    }

    // the library's dividers and inverters have the fewest capacitors, then switches, then the least products
    [Fact]
    public void The_fractional_dividers_and_inverters_of_the_library_are_the_best_of_the_atlas()
    {
        for (int p = 1; p <= 5; p++)
        {
            for (int q = 1; q <= 5; q++)
            {
                IsBest(new Fraction(p, q).Reduce(), FractionalDivider.Of(p, q));
                if (p + q <= 5)
                {
                    IsBest(new Fraction(-p, q).Reduce(), PolarityInverter.Of(p, q));
                }
            }
        }
    }

    private static void IsBest(Fraction ratio, Converter converter)
    {
        Atlas smallest = Enumerable.Range(1, 3).Select(MadeAtlases.Of).First(a => a.Front(ratio).Count > 0);
        SearchedNetwork best = smallest.Front(ratio)
            .OrderBy(n => n.Measures.SwitchCount)
            .ThenBy(n => n.Measures.SwitchChargeVoltage)
            .ThenBy(n => n.Measures.CapacitorChargeVoltage)
            .First();
        Analysis.ModeAnalysis analysis = Analysis.ModeAnalysis.Of(converter);
        Assert.Equal(ratio, analysis.Ratio.ToFraction());
        Assert.Equal((best.CapacitorCount, best.Measures.SwitchCount), (converter.Capacitors.Count, converter.Switches.Count));
        Fraction switches = Products(converter.Switches.Count, s => (analysis.ChargeFlow.Switches[s].Peak(), analysis.BlockingVoltages.Peaks[s]));
        Fraction capacitors = Products(converter.Capacitors.Count, c => (analysis.ChargeFlow.Capacitors[c].Peak(), analysis.IdealPoint.CapacitorVoltages[c]));
        Assert.Equal(best.Measures.SwitchChargeVoltage.Reduce(), (switches / ratio.Abs()).Reduce());
        Assert.Equal(best.Measures.CapacitorChargeVoltage.Reduce(), (capacitors / ratio.Abs()).Reduce());
    }

    private static Fraction Products(int count, Func<int, (Quantity Charge, Quantity Voltage)> of) => Enumerable.Range(0, count)
        .Select(i => (of(i).Charge.ToFraction() * of(i).Voltage.ToFraction()).Abs())
        .Aggregate(Fraction.Zero, (sum, product) => sum + product);
}
