using ScNet.Search.Atlases;

namespace ScNet.Search.Tests;

public class FrontTests
{
    [Theory]
    [InlineData(1, 12, 4)]
    [InlineData(2, 94, 31)]
    [InlineData(3, 2208, 428)]
    [InlineData(4, 65868, 10775)]
    public void Measures_of_the_search_are_those_of_the_networks(int capacitors, long pairs, long networks)
    {
        PairShard all = PairShard.Run(capacitors, 1, 1, 2);
        Assert.Equal((pairs, networks), (all.PairCount, all.NetworkCount));
        foreach (((int output, int input), FrontOfRatio front) in all.Fronts)
        {
            foreach (FrontEntry entry in front.Entries.Take(20))
            {
                SearchedNetwork network = AtlasNetworks.Of(entry);
                Assert.Equal(new Fractions.Fraction(output, input), network.Ratio);
                NetworkMeasures measures = network.Measures;
                double[] expected =
                [
                    (double)measures.CapacitorChargeVoltage, (double)measures.SwitchChargeVoltage, measures.SwitchCount, (double)measures.HighestCapacitorVoltage,
                    (double)measures.HighestSwitchVoltage, (double)measures.PlateSwing, (double)measures.CapacitorCharge, (double)measures.SwitchCharge,
                ];
                for (int m = 0; m < expected.Length; m++)
                {
                    Assert.Equal(expected[m], entry.Key[m], 1e-12);
                }
            }
        }
    }

    [Fact]
    public void Shards_together_find_what_one_search_finds()
    {
        PairShard whole = PairShard.Run(3, 1, 1, 2);
        PairShard merged = PairShard.Run(3, 5, 5, 1);
        for (int shard = 4; shard > 0; shard--)
        {
            merged.Take(PairShard.Run(3, shard, 5, 1));
        }

        Assert.Equal((whole.PairCount, whole.NetworkCount, whole.WiringCount), (merged.PairCount, merged.NetworkCount, merged.WiringCount));
        Assert.Equal(whole.Fronts.Keys, merged.Fronts.Keys);
        Assert.All(whole.Fronts, f => Assert.Equal(f.Value.Entries, merged.Fronts[f.Key].Entries));
    }
}
