using ScNet.Analysis;

namespace ScNet.Tests.Analysis;

/// <summary>What phases of a mode share.</summary>
public sealed class TopologySolverTests
{
    [Fact]
    public void Phases_that_close_the_same_switches_have_one_forest()
    {
        Converter converter = Converter.Create("again").Input("vin").Output("vout").Phases(4).Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", on: [1, 3]).Switch("s2", "n", "vout", on: [1, 3])
            .Switch("s3", "p", "vout", on: [2, 4]).Switch("s4", "n", "gnd", on: 2).Switch("s5", "n", "gnd", on: 4).Build();
        TopologySolution topology = TopologySolver.Solve(converter, converter.Modes[0]);

        Assert.Same(topology.Forests[0], topology.Forests[2]);
        Assert.NotSame(topology.Forests[1], topology.Forests[3]);
        Assert.NotSame(topology.Forests[0], topology.Forests[1]);
    }
}
