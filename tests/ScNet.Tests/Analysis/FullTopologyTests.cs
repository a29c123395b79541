using ScNet.Analysis;

namespace ScNet.Tests.Analysis;

/// <summary>A mode's topology with its parasitic capacitances, against flows and potentials found by hand.</summary>
public sealed class FullTopologyTests
{
    /// <summary>
    /// The plate n is at the output in phase 1 and at the reference in phase 2, so that a wire's capacitance there is charged by one and
    /// emptied by the other. With q on fly in phase 1 and -q in phase 2 the output gets 2q, of which the wire takes all:
    /// the input gives q, and nothing reaches the load.
    /// </summary>
    [Fact]
    public void Charge_that_the_input_circulates_through_a_wire_is_a_direction()
    {
        Converter converter = Half().Parasitic("wire", "n", "gnd", 1e-12).Build();
        FullTopology full = FullTopology.Of(converter, ModeAnalysis.Of(converter).Topology);
        FlowDirection direction = Assert.Single(full.Directions);
        double q = direction.Branches.Values[0];

        // branches: fly, a, b, lone, wire, output, input; index branch · 2 + phase
        Assert.Equal((5, 2), (full.Network.CapacitorCount, full.Forests.Length));
        Assert.Equal([0, 1, 8, 9, 10, 11, 12], direction.Branches.Indices.ToArray());
        Assert.Equal([1, -1, 2, -2, -1, 1, -1], direction.Branches.Values.ToArray().Select(v => v / q));
        Assert.Equal(q, direction.InputCharge(full.Network));

        // s1 brings q to fly, s2 what the wire takes beyond that, s3 gives back q, and s4 takes what the wire gives less what fly needs
        Assert.Equal([0, 2, 5, 7], direction.Switches.Indices.ToArray());
        Assert.Equal([1, -1, 1, 1], direction.Switches.Values.ToArray().Select(v => v / q));
        Assert.Null(direction.Path);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Voltages_are_known_where_loops_fix_them_or_sums_of_them(bool hasWire)
    {
        Converter converter = (hasWire ? Half().Parasitic("wire", "n", "gnd", 1e-12) : Half()).Build();
        ModeAnalysis analysis = ModeAnalysis.Of(converter);
        KnownPotentials known = FullTopology.Of(converter, analysis.Topology).Known;
        int[] nodes = [.. new[] { "p", "n", "u", "v", "w", "z" }.Select(n => converter.Nodes.ToList().IndexOf(n))];

        // a and b divide the input as they like, lone hangs from it in phase 1 and floats in phase 2
        Assert.Equal([true, false, false, false], Enumerable.Range(0, 4).Select(known.OfCapacitor));
        Assert.Equal([true, true, true, false, true, false], nodes.Select(n => known.OfNode(n, 0)));
        Assert.Equal([true, true, true, false, false, false], nodes.Select(n => known.OfNode(n, 1)));
        Assert.Equal([true, true, true, true, true, true], Enumerable.Range(0, 6).Select(s => known.AcrossSwitch(s, 0)));
        Assert.Equal([true, true, true, true, true, false], Enumerable.Range(0, 6).Select(s => known.AcrossSwitch(s, 1)));
    }

    [Fact]
    public void What_was_solved_is_kept_for_the_same_parasitic_capacitances_alone()
    {
        Converter wired = Half().Parasitic("wire", "n", "gnd", 1e-12).Build();
        TopologySolution topology = ModeAnalysis.Of(wired).Topology;
        FullTopology first = FullTopology.Of(wired, topology);

        Assert.Same(first, FullTopology.Of(wired, topology));
        Assert.Same(first, FullTopology.Of(wired.WithValues(farads: [2, 2, 2, 2]), topology));
        Converter other = wired.WithParasitics([.. wired.Capacitors.Select(_ => CapacitorPlates.None)], [.. wired.Parasitics]);
        Assert.NotSame(first, FullTopology.Of(other, topology));
    }

    /// <summary>The voltages of this cascade are Fibonacci's numbers, the hundredth of which no machine integer holds.</summary>
    [Fact]
    public void Numbers_that_outgrow_machine_integers_are_solved_all_the_same()
    {
        Converter converter = ModeAnalysisTests.Fibonacci(100).Parasitic("wire", "p1", "gnd", 1e-12).Build();
        FullTopology full = FullTopology.Of(converter, ModeAnalysis.Of(converter).Topology);

        // p1 is at the input while c1 is charged, and at twice the input while it is stacked
        FlowDirection direction = Assert.Single(full.Directions);
        Assert.Equal(0, direction.Branches[2 * 100] + direction.Branches[(2 * 100) + 1]);
        Assert.NotEqual(0, direction.Branches[2 * 100]);
        Assert.True(full.Known.OfCapacitor(100));
    }

    private static ConverterBuilder Half() => Converter.Create("half").Input("vin").Output("vout")
        .Capacitor("fly", "p", "n").Capacitor("a", "u", "v").Capacitor("b", "v", "gnd").Capacitor("lone", "w", "z")
        .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)
        .Switch("t1", "vin", "u", on: 1).Switch("t2", "vin", "w", on: 1);
}
