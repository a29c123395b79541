using ScNet.Kernel;

namespace ScNet.Tests.Kernel;

public class PhaseForestTests
{
    // a switch from a node to itself closes no loop that charge could take another way round
    [Theory]
    [InlineData("0-0", false)]
    [InlineData("0-1 1-1 1-2", false)]
    [InlineData("0-1 0-1", true)]
    [InlineData("0-1 1-2 2-0", true)]
    [InlineData("0-1 2-3 3-2", true)]
    public void A_loop_of_switches_has_two_or_more(string switches, bool expected)
    {
        NodePair[] pairs = [.. switches.Split(' ').Select(s => new NodePair(s[0] - '0', s[2] - '0'))];
        CandidateNetwork network = new();
        network.Wire(4, [], [], pairs);
        Assert.Equal(expected, PhaseForest.Of(network, [.. pairs.Select(_ => true)]).HasSwitchLoop);
        Assert.False(PhaseForest.Of(network, new bool[pairs.Length]).HasSwitchLoop);
    }
}
