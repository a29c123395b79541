using Fractions;

namespace ScNet.Search.Tests.Completeness;

/// <summary>The atlas against every pair of wirings, both layouts of switches, and a front by comparing all with all.</summary>
public class AtlasFrontTests
{
    public static IEnumerable<object[]> Sizes => AtlasCampaign.UpTo(2, 3, [[1], [2], [3]]);

    [Theory]
    [MemberData(nameof(Sizes))]
    public void Every_front_is_that_of_all_pairs_of_wirings(int capacitors)
    {
        Atlas atlas = MadeAtlases.Of(capacitors);
        Dictionary<Fraction, HashSet<NetworkMeasures>> all = AllMeasures(capacitors);

        Assert.Equal(all.Keys.Order(), atlas.Ratios);
        foreach (Fraction ratio in atlas.Ratios)
        {
            Assert.All(atlas.Front(ratio), network => Assert.Equal(ratio, network.Ratio));
            string[] found = [.. atlas.Front(ratio).Select(n => $"{Reduced(n.Measures)}").Order(StringComparer.Ordinal)];
            Assert.Equal(Front(all[ratio]).Select(m => $"{m}").Order(StringComparer.Ordinal), found);
        }
    }

    [Fact]
    public void A_front_without_one_of_its_networks_is_seen()
    {
        NetworkMeasures small = new(1, 1, 3, 1, 1, 1, 1, 1), other = small with { SwitchCount = 2, SwitchCharge = 2 }, beaten = small with { PlateSwing = 2 };
        Assert.Equal([small, other], Front([small, beaten, other]).OrderBy(m => m.SwitchCharge));
    }

    private static Dictionary<Fraction, HashSet<NetworkMeasures>> AllMeasures(int capacitors)
    {
        Dictionary<Fraction, HashSet<NetworkMeasures>> all = [];
        for (int k = 1; k <= capacitors; k++)
        {
            foreach ((Wiring first, Wiring second) in WiringPairs.Of(k, inOnePiece: true))
            {
                foreach (SwitchLayout layout in Enum.GetValues<SwitchLayout>())
                {
                    if (!SearchedNetwork.TryCreate([first, second], layout, out SearchedNetwork? network))
                    {
                        break;
                    }

                    Fraction ratio = network.Ratio.Reduce();
                    all.TryAdd(ratio, []);
                    all[ratio].Add(Reduced(network.Measures));
                }
            }
        }

        return all;
    }

    private static IEnumerable<NetworkMeasures> Front(IReadOnlyCollection<NetworkMeasures> all) =>
        all.Where(m => !all.Any(other => other != m && IsWithin(other, m)));

    private static bool IsWithin(NetworkMeasures one, NetworkMeasures other) => one.SwitchCount <= other.SwitchCount
        && one.CapacitorChargeVoltage <= other.CapacitorChargeVoltage && one.SwitchChargeVoltage <= other.SwitchChargeVoltage
        && one.HighestCapacitorVoltage <= other.HighestCapacitorVoltage && one.HighestSwitchVoltage <= other.HighestSwitchVoltage
        && one.PlateSwing <= other.PlateSwing && one.CapacitorCharge <= other.CapacitorCharge && one.SwitchCharge <= other.SwitchCharge;

    private static NetworkMeasures Reduced(NetworkMeasures m) => new(
        m.CapacitorChargeVoltage.Reduce(), m.SwitchChargeVoltage.Reduce(), m.SwitchCount, m.HighestCapacitorVoltage.Reduce(),
        m.HighestSwitchVoltage.Reduce(), m.PlateSwing.Reduce(), m.CapacitorCharge.Reduce(), m.SwitchCharge.Reduce());
}
