using Fractions;
using ScNet.Search.LoopSpaces;
using ScNet.Search.Networks;
using ScNet.Search.Queries;
using ScNet.Search.Tests.Completeness;

namespace ScNet.Search.Tests.Queries;

/// <summary>Answers about two or three phases against every network of two phases and every triple of loop spaces, solved one by one.</summary>
public class ThreePhaseAnswerTests
{
    private static readonly Lazy<ThreePhaseAtlas> s_two = new(() => ThreePhaseAtlas.Of(2)), s_three = new(() => ThreePhaseAtlas.Of(3));
    private static readonly Lazy<ILookup<Fraction, (Fraction Product, Fraction Highest, Fraction Charge)>> s_all = new(All);

    [Fact]
    public void Ratings_of_capacitors_are_met_just_where_some_network_meets_them()
    {
        int none = 0, some = 0;
        foreach (IGrouping<Fraction, (Fraction Product, Fraction Highest, Fraction Charge)> networks in s_all.Value)
        {
            foreach (Fraction limit in s_all.Value.SelectMany(n => n).Select(n => n.Highest).Distinct())
            {
                AtlasAnswer answer = Answer(new AtlasQuery(networks.Key) { HighestCapacitorVoltage = limit, Objective = NetworkMeasure.CapacitorChargeVoltage });
                (Fraction Product, Fraction Highest, Fraction Charge)[] within = [.. networks.Where(n => n.Highest <= limit)];
                Assert.Empty(answer.Unproved);
                Assert.Equal(within.Length > 0, answer.Networks.Count > 0);
                if (within.Length > 0)
                {
                    some++;
                    Assert.Equal(within.Min(n => n.Product), answer.Networks[0].Network.Measures.CapacitorChargeVoltage);
                }
                else
                {
                    none++;
                    Assert.Contains($"lowest highest capacitor voltage is {Quantity.Exact(networks.Min(n => n.Highest))} ", answer.Reasons[0], StringComparison.Ordinal);
                    Assert.DoesNotContain("found", answer.ToString(), StringComparison.Ordinal);
                }
            }
        }

        Assert.True(none > 20 && some > 20, $"{none}, {some}");
    }

    [Fact]
    public void Every_ratio_of_two_or_three_phases_and_no_other_has_networks()
    {
        Assert.Equal(s_all.Value.Select(n => n.Key).Order(), MadeAtlases.Of(2).Ratios.Union(s_two.Value.Ratios).Order());
        AtlasAnswer none = Answer(new AtlasQuery(new Fraction(2, 5)));
        Assert.Equal(
            "No network of two or three phases and up to 2 flying capacitors makes 2/5. All 35 networks of two phases and all 3375 ways to put three phases together were tried. "
            + "They make 16 ratios, whose numerators and denominators are at most 4. The nearest that is made: 1/3 below, 1/2 above.",
            none.ToString());
    }

    /// <summary>What is left out is no better in anything; what is left is not beaten.</summary>
    [Fact]
    [Trait("Length", "Long")]
    public void The_networks_of_both_atlases_are_joined_to_those_that_no_other_beats()
    {
        int ofBoth = 0;
        foreach (Fraction ratio in MadeAtlases.Of(3).Ratios.Union(s_three.Value.Ratios))
        {
            AtlasAnswer answer = AtlasAnswer.OfBoth(new AtlasQuery(ratio) { PhaseCount = 3 }, MadeAtlases.Of(3), s_three.Value);
            Fraction[][] listed = [.. answer.Networks.Select(n => Values(n.Network))];
            Assert.All(MadeAtlases.Of(3).Front(ratio).Concat(s_three.Value.Front(ratio)), n => Assert.Contains(listed, l => IsWithin(l, Values(n))));
            Assert.All(listed, l => Assert.Single(listed, other => IsWithin(other, l)));
            Assert.Equal(answer.Networks.Count, answer.Networks.Select(n => n.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count());
            ofBoth += answer.Networks.Select(n => n.Network.Phases.Count).Distinct().Count() == 2 ? 1 : 0;
        }

        Assert.True(ofBoth > 3, $"{ofBoth}");
    }

    [Fact]
    public void What_is_not_proved_of_three_phases_is_said()
    {
        Fraction quarter = new(1, 4);
        AtlasAnswer none = Answer(new AtlasQuery(quarter) { HighestSwitchVoltage = quarter, MostSwitches = 6 });
        Assert.Empty(none.Unproved);
        Assert.StartsWith(
            "No network of two or three phases and up to 2 flying capacitors makes 1/4 with every switch at or below 1/4 of the input and at most 6 switches. Of all networks, the lowest highest switch voltage is 1/2 of the input,",
            none.ToString(),
            StringComparison.Ordinal);
        AtlasAnswer some = Answer(new AtlasQuery(quarter));
        Assert.Contains("no other found beats", some.Statement, StringComparison.Ordinal);
        Assert.EndsWith("; in charge–voltage product of the switches another may be better.", Assert.Single(some.Unproved), StringComparison.Ordinal);
        Assert.Empty(Answer(new AtlasQuery(quarter) { Objective = NetworkMeasure.HighestSwitchVoltage, MostSwitches = 8 }).Unproved);
    }

    /// <summary>Of four capacitors switches are not compared for all networks, and an answer says so.</summary>
    [Fact]
    [Trait("Length", "Long")]
    public void None_of_four_capacitors_within_ratings_of_switches_is_only_not_found()
    {
        ThreePhaseAtlas four = ThreePhaseAtlas.Of(4);
        AtlasQuery query = new(new Fraction(3, 16)) { CapacitorCount = 4, PhaseCount = 3, MostSwitches = 5 };
        AtlasAnswer none = AtlasAnswer.OfBoth(query, MadeAtlases.Of(4), four);
        Assert.StartsWith("No network of two or three phases and up to 4 flying capacitors was found that makes 3/16 with at most 5 switches. Of the networks found, the fewest switches are", none.ToString(), StringComparison.Ordinal);
        Assert.EndsWith("; in number of switches another may be better.", Assert.Single(none.Unproved), StringComparison.Ordinal);
        Assert.DoesNotContain("This is said of all", none.ToString(), StringComparison.Ordinal);

        // no capacitors will do, whatever the switches
        AtlasAnswer capacitors = AtlasAnswer.OfBoth(query with { HighestCapacitorVoltage = new Fraction(1, 16) }, MadeAtlases.Of(4), four);
        Assert.Empty(capacitors.Unproved);
        Assert.Contains(" makes 3/16 with every capacitor", capacitors.Statement, StringComparison.Ordinal);
        Assert.All(four.Front(new Fraction(3, 16)), SearchedNetworkTests.Agree);
    }

    [Fact]
    public void What_is_asked_is_checked()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new AtlasQuery(Fraction.One) { PhaseCount = 1 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new AtlasQuery(Fraction.One) { PhaseCount = 4 });
        Assert.Throws<ArgumentOutOfRangeException>(() => AtlasAnswer.Of(new AtlasQuery(Fraction.One) { PhaseCount = 3, CapacitorCount = 5 }));
        Assert.Throws<ArgumentException>(() => AtlasAnswer.Of(new AtlasQuery(Fraction.One) { PhaseCount = 3, CapacitorCount = 2 }, MadeAtlases.Of(2)));
        Assert.Throws<ArgumentException>(() => AtlasAnswer.OfBoth(new AtlasQuery(Fraction.One) { CapacitorCount = 2 }, MadeAtlases.Of(2), s_two.Value));
        Assert.Throws<ArgumentException>(() => AtlasAnswer.OfBoth(new AtlasQuery(Fraction.One) { PhaseCount = 3, CapacitorCount = 2 }, MadeAtlases.Of(2), s_three.Value));
    }

    [Fact]
    public void A_network_of_three_phases_has_one_name_however_it_is_numbered()
    {
        SearchedNetwork network = s_two.Value.Front(new Fraction(1, 4))[0];
        string name = new FoundNetwork(network).Name;
        foreach (CapacitorMap map in CapacitorMap.All(2))
        {
            foreach (int[] order in (int[][])[[0, 1, 2], [2, 0, 1], [1, 0, 2]])
            {
                Assert.True(SearchedNetwork.TryCreate([.. order.Select(p => network.Phases[p].Moved(map))], network.Layout, out SearchedNetwork? moved));
                Assert.Equal(name, new FoundNetwork(moved).Name);
            }
        }
    }

    /// <summary>The binary converter of two capacitors has three phases: S. Ben-Yaakov and A. Kushnerov, "Algebraic foundation of self adjusting switched capacitors converters", ECCE 2009 (from memory).</summary>
    [Theory]
    [InlineData(1, 4, "binary 2 1")]
    [InlineData(3, 4, "binary 2 3")]
    [InlineData(4, 1, "binary 2 1 --step-up")]
    [InlineData(4, 3, "binary 2 3 --step-up")]
    public void A_family_of_three_phases_is_recognised(int numerator, int denominator, string family)
    {
        AtlasAnswer answer = Answer(new AtlasQuery(new Fraction(numerator, denominator)));
        Assert.Contains(answer.Networks, n => n.Families.Contains(family));
    }

    private static AtlasAnswer Answer(AtlasQuery query) => AtlasAnswer.OfBoth(query with { CapacitorCount = 2, PhaseCount = 3 }, MadeAtlases.Of(2), s_two.Value);

    private static Fraction[] Values(SearchedNetwork network) => [.. Enum.GetValues<NetworkMeasure>().Select(m => UnbeatenNetworks.Compared(network, m))];

    private static bool IsWithin(Fraction[] values, Fraction[] limits) => values.Zip(limits).All(v => v.First <= v.Second);

    private static ILookup<Fraction, (Fraction Product, Fraction Highest, Fraction Charge)> All()
    {
        List<(Fraction Ratio, (Fraction, Fraction, Fraction) Figures)> all =
            [.. EveryNetwork.Upto2.Select(n => (n.Ratio, (n.Measures.CapacitorChargeVoltage, n.Measures.HighestCapacitorVoltage, n.Measures.CapacitorCharge)))];
        LoopSpace[] spaces = [.. AllWirings.Of(2).Select(LoopSpace.Of).DistinctBy(s => s.Key).Where(s => s.Dimension == 1)];
        foreach (LoopSpace first in spaces)
        {
            foreach (LoopSpace second in spaces)
            {
                foreach (LoopSpace third in spaces)
                {
                    if (NetworkSolution.TrySolve([first, second, third], out NetworkSolution? solution))
                    {
                        IReadOnlyList<Fraction> voltages = NetworkQuantities.CapacitorVoltages(solution);
                        Fraction[] moved = [.. Enumerable.Range(0, 2).Select(c => NetworkQuantities.CapacitorCharges(solution).Select(q => q[c].Abs()).Aggregate((a, b) => a + b) / 2)];
                        Fraction ratio = new(solution.Voltages[LoopSpace.OutputColumn], solution.Voltages[LoopSpace.InputColumn]);
                        all.Add((ratio, (moved.Zip(voltages, (q, v) => q * v.Abs()).Aggregate((a, b) => a + b) / ratio.Abs(), voltages.Max(v => v.Abs()), moved[0] + moved[1])));
                    }
                }
            }
        }

        return all.ToLookup(n => n.Ratio.Reduce(), n => n.Figures);
    }
}
