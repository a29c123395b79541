using ScNet.Analysis;
using ScNet.Search.Tests.Completeness;

namespace ScNet.Search.Tests;

[Trait("Kind", "Law")]
public class SearchedNetworkTests
{
    [Theory]
    [InlineData(1, 1, SwitchLayout.LowestBlocking)]
    [InlineData(1, 1, SwitchLayout.LeastCharge)]
    [InlineData(2, 7, SwitchLayout.LowestBlocking)]
    [InlineData(2, 7, SwitchLayout.LeastCharge)]
    public void Every_figure_is_that_of_the_ordinary_analysis(int capacitors, int step, SwitchLayout layout)
    {
        Wiring[] wirings = [.. AllWirings.Of(capacitors)];
        int found = 0;
        for (int pair = 0; pair < wirings.Length * wirings.Length; pair += step)
        {
            if (SearchedNetwork.TryCreate([wirings[pair / wirings.Length], wirings[pair % wirings.Length]], layout, out SearchedNetwork? network))
            {
                found++;
                Agree(network);
            }
        }

        Assert.True(found > 5, $"{found} networks");
    }

    [Theory]
    [InlineData(3, 15000, SwitchLayout.LowestBlocking, 60)]
    [InlineData(3, 15000, SwitchLayout.LeastCharge, 60)]
    [InlineData(4, 30000, SwitchLayout.LowestBlocking, 30)]
    [InlineData(4, 30000, SwitchLayout.LeastCharge, 30)]
    public void Every_figure_of_a_larger_network_is_that_of_the_ordinary_analysis(int capacitors, int draws, SwitchLayout layout, int networks)
    {
        int found = 0;
        DrawnNetworks.Of(capacitors).Holds(
            pair =>
            {
                if (SearchedNetwork.TryCreate(pair, layout, out SearchedNetwork? network))
                {
                    found++;
                    Agree(network);
                }
            },
            count: draws);
        Assert.True(found >= networks, $"{found} networks");
    }

    internal static void Agree(SearchedNetwork network)
    {
        ModeAnalysis analysis = ModeAnalysis.Of(network.ToConverter("found"));
        Assert.Equal(network.Ratio, analysis.Ratio.ToFraction());
        for (int c = 0; c < network.CapacitorCount; c++)
        {
            Assert.Equal(network.CapacitorVoltages[c], analysis.IdealPoint.CapacitorVoltages[c].ToFraction());
            for (int phase = 0; phase < network.Phases.Count; phase++)
            {
                Assert.Equal(network.Charges[phase][c], analysis.ChargeFlow.Capacitors[c][phase + 1].ToFraction());
            }
        }

        for (int s = 0; s < network.Switches.Count; s++)
        {
            for (int phase = 0; phase < network.Phases.Count; phase++)
            {
                Assert.Equal(network.Switches[s].Charges[phase], analysis.ChargeFlow.Switches[s][phase + 1].ToFraction());
                Assert.Equal(network.Switches[s].Voltages[phase], analysis.BlockingVoltages.Switches[s][phase + 1].ToFraction());
            }
        }
    }
}
