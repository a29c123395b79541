using ScNet.Analysis;
using ScNet.Kernel;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Tests.SteadyState;

/// <summary>The resistors that a loop runs through: with its branches they close at every node, inner nodes of series resistances included.</summary>
public sealed class LoopResistorsTests
{
    public static TheoryData<string> Names => [.. OperatedConverters.All.Keys, "long ladder", "row", "star"];

    [Theory]
    [MemberData(nameof(Names))]
    public void Branches_and_resistors_of_a_loop_close_at_every_node(string name)
    {
        Converter converter = Make(name);
        SwitchedNetwork network = converter.Network;
        for (int phase = 0; phase < network.PhaseCount; phase++)
        {
            PhaseForest forest = ModeAnalysis.Of(converter, converter.Modes[0]).Topology.Forests[phase];
            LoopSet loops = LoopSet.Of(network, [forest]);
            LoopResistors resistors = new(network, forest);
            for (int loop = 0; loop < loops.Count; loop++)
            {
                // a capacitor and its series resistance follow one another, so that an inner node closes if their signs agree
                int[] leaving = new int[network.NodeCount], capacitor = new int[network.CapacitorCount], resistance = new int[network.CapacitorCount];
                for (int e = 0; e < loops.Branches(loop).Length; e++)
                {
                    (int branch, int sign) = (loops.Branches(loop)[e], loops.Signs(loop)[e]);
                    leaving[network.BranchFirst[branch]] += sign;
                    leaving[network.BranchSecond[branch]] -= sign;
                    if (branch < network.CapacitorCount)
                    {
                        capacitor[branch] = sign;
                    }
                }

                foreach ((int resistor, int sign) in resistors.Of(loops, loop))
                {
                    if (resistor >= network.SwitchCount)
                    {
                        resistance[resistor - network.SwitchCount] += sign;
                        continue;
                    }

                    Assert.True(network.ClosedIn(0, phase)[resistor]);
                    leaving[network.SwitchFirst[resistor]] += sign;
                    leaving[network.SwitchSecond[resistor]] -= sign;
                }

                Assert.All(leaving, l => Assert.Equal(0, l));
                Assert.Equal(capacitor, resistance);
            }
        }
    }

    // in phase 1 from the input through s1, s2, fly and s3 into the output, in phase 2 from the reference through s5, fly and s4
    [Fact]
    public void A_loop_runs_once_through_every_switch_between_its_branches()
    {
        Converter converter = Row();
        Assert.Equal([0, 1, 2, 5], Through(converter, 0));
        Assert.Equal([3, 4, 5], Through(converter, 1));
    }

    private static int[] Through(Converter converter, int phase)
    {
        PhaseForest forest = ModeAnalysis.Of(converter, converter.Modes[0]).Topology.Forests[phase];
        LoopSet loops = LoopSet.Of(converter.Network, [forest]);
        Assert.Equal(1, loops.Count);
        return [.. new LoopResistors(converter.Network, forest).Of(loops, 0).Select(r => r.Resistor).Order()];
    }

    private static Converter Make(string name) => name switch
    {
        "long ladder" => Ladder.StepUp(9),
        "row" => Row(),
        "star" => Star(),
        _ => OperatedConverters.All[name](),
    };

    private static Converter Row() => Converter.Create("row").Input("vin").Output("vout")
        .Capacitor("fly", "p", "n")
        .Switch("s1", "x", "vin", on: 1).Switch("s2", "x", "p", on: 1).Switch("s3", "vout", "n", on: 1)
        .Switch("s4", "p", "vout", on: 2).Switch("s5", Converter.ReferenceNode, "n", on: 2).Build();

    // closed switches branch from the reference, so that ways between two nodes lead up to it and down again
    private static Converter Star() => Converter.Create("star").Input("vin").Output("vout")
        .Capacitor("fly", "p", "n").Capacitor("second", "q", "m", 1, 0.1).Capacitor("third", "c", "d")
        .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2)
        .Switch("s4", Converter.ReferenceNode, "a", on: 2).Switch("s5", "b", "a", on: 2).Switch("s6", "n", "b", on: 2)
        .Switch("s7", "vin", "q", on: 1).Switch("s8", "m", "vout", on: 1).Switch("s9", "q", "vout", on: 2).Switch("s10", "m", "a", on: 2)
        .Switch("s11", "c", "b", on: 2).Switch("s12", "d", "m", on: 2).Build();
}
