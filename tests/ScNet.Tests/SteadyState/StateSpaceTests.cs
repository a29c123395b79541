using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>States of small networks: xᵀx/2 is the stored energy, and every node is a sum of sources and states.</summary>
public sealed class StateSpaceTests
{
    [Fact]
    public void Of_independent_capacitors_each_has_a_state_of_its_own_that_is_its_voltage_times_the_root_of_its_farads()
    {
        Converter converter = Start(LoadKind.Stiff).Capacitor("a", "p", "n", 4).Capacitor("b", "q", "gnd", 0.25).Capacitor("c", "m", "p", 16).Build();
        StateSpace space = StateSpace.Of(converter);
        Assert.Equal(3, space.StateCount);
        (int State, double Weight)[][] rows = [.. Enumerable.Range(0, 3).Select(space.CapacitorRow)];
        Assert.Equal([0.5, 2, 0.25], rows.Select(row => Assert.Single(row).Weight));
        Assert.Equal(3, rows.Select(row => row[0].State).Distinct().Count());
        AssertVoltages(space, converter);
        AssertEnergy(space, converter);
    }

    [Fact]
    public void Sources_and_capacitors_join_nodes_to_clusters_of_which_the_first_holds_the_reference()
    {
        Converter stiff = Start(LoadKind.Stiff).Capacitor("a", "p", "n", 4).Capacitor("b", "q", "vin", 1).Build();
        StateSpace space = StateSpace.Of(stiff);
        Assert.Equal((0, 0, 0, 0), (Cluster("gnd"), Cluster("vin"), Cluster("vout"), Cluster("q")));
        Assert.Equal((1, 1, 2), (Cluster("p"), Cluster("n"), space.ClusterCount - (stiff.Nodes.Count - 6)));
        Assert.Equal(stiff.Nodes.Count, space.NodeCount);

        // v(q) = v(vin) + v(b), and the capacitor's second node is the input
        Assert.Equal([0, 0], space.SourcesOf(stiff.Nodes.PositionOf("gnd")).ToArray());
        Assert.Equal([1, 0], space.SourcesOf(stiff.Nodes.PositionOf("vin")).ToArray());
        Assert.Equal([0, 1], space.SourcesOf(stiff.Nodes.PositionOf("vout")).ToArray());
        Assert.Equal([1, 0], space.SourcesOf(stiff.Nodes.PositionOf("q")).ToArray());
        Assert.Equal([0, 0], space.SourcesOf(stiff.Nodes.PositionOf("p")).ToArray());

        int Cluster(string node) => space.Cluster[stiff.Nodes.PositionOf(node)];
    }

    [Fact]
    public void A_load_current_holds_no_node()
    {
        Converter converter = Start(LoadKind.Current).Capacitor("a", "p", "n", 4).Build();
        StateSpace space = StateSpace.Of(converter);
        int output = converter.Nodes.PositionOf("vout");
        Assert.NotEqual(0, space.Cluster[output]);
        Assert.Equal([0, 0], space.SourcesOf(output).ToArray());
        Assert.Equal([1, 0], space.SourcesOf(converter.Nodes.PositionOf("vin")).ToArray());
    }

    [Fact]
    public void A_series_resistance_puts_a_node_between_the_positive_node_and_the_capacitance()
    {
        Converter converter = Start(LoadKind.Stiff).Capacitor("a", "p", "n", 4).Capacitor("b", "q", "n", 9, esrOhms: 3).Capacitor("c", "m", "n", 1, esrOhms: 1).Build();
        StateSpace space = StateSpace.Of(converter);
        int nodes = converter.Nodes.Count;
        Assert.Equal([converter.Nodes.PositionOf("p"), nodes, nodes + 1], space.InnerNode);
        Assert.Equal(nodes + 2, space.NodeCount);
        Assert.Equal(space.Cluster[converter.Nodes.PositionOf("n")], space.Cluster[nodes]);
        Assert.NotEqual(space.Cluster[converter.Nodes.PositionOf("n")], space.Cluster[converter.Nodes.PositionOf("q")]);
        AssertVoltages(space, converter);
        AssertEnergy(space, converter);
    }

    // the third capacitor closes a triangle, the fourth is by itself, and the fifth lies across the source
    [Fact]
    public void Capacitors_that_close_loops_are_sums_of_the_others_and_add_to_the_energy()
    {
        Converter converter = Start(LoadKind.Stiff).Capacitor("ab", "p", "n", 1).Capacitor("bc", "n", "q", 2).Capacitor("alone", "m", "s", 5)
            .Capacitor("ac", "p", "q", 3).Capacitor("in", "vin", "gnd", 7).Capacitor("held", "vin", "k", 0.5).Build();
        StateSpace space = StateSpace.Of(converter);
        Assert.Equal(4, space.StateCount);
        AssertVoltages(space, converter);
        AssertEnergy(space, converter);
        Assert.Empty(space.CapacitorRow(4));
        Assert.Equal(1 / Math.Sqrt(5), Math.Abs(Assert.Single(space.CapacitorRow(2)).Weight), 1e-15);
        Assert.Equal([1, 0], space.SourcesOf(converter.Nodes.PositionOf("k")).ToArray());
        for (int x = 0; x < 4; x++)
        {
            Assert.Equal(Weight(space, 3, x), Weight(space, 0, x) + Weight(space, 1, x), 1e-14);
        }
    }

    [Fact]
    public void The_product_of_a_row_takes_the_states_it_names() => Assert.Equal(2 * 5.0 - (3 * 11), StateSpace.Dot([(0, 2), (2, -3)], [5, 7, 11]));

    // the switches only hold nodes that nothing else touches
    private static ConverterBuilder Start(LoadKind load) => Converter.Create("states").Input("vin").Output("vout", load)
        .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)
        .Switch("s5", "q", "gnd", on: 1).Switch("s6", "m", "gnd", on: 1).Switch("s7", "s", "gnd", on: 1).Switch("s8", "k", "gnd", on: 1);

    private static double Weight(StateSpace space, int capacitor, int state) =>
        space.CapacitorRow(capacitor).Where(e => e.State == state).Sum(e => e.Weight);

    // the voltage behind the series resistance is the difference of two potentials
    private static void AssertVoltages(StateSpace space, Converter converter)
    {
        Assert.All(space.StatesOf(converter.Nodes.PositionOf("gnd")).ToArray(), state => Assert.Equal(0, state));
        for (int i = 0; i < converter.Capacitors.Count; i++)
        {
            double[] first = space.StatesOf(space.InnerNode[i]).ToArray(), second = space.StatesOf(converter.Nodes.PositionOf(converter.Capacitors[i].BottomNode)).ToArray();
            Assert.Equal(Enumerable.Range(0, space.StateCount).Select(x => Weight(space, i, x)), first.Zip(second, (a, b) => a - b), (a, b) => Math.Abs(a - b) < 1e-14);
        }
    }

    // Σ C v² = xᵀx for every x
    private static void AssertEnergy(StateSpace space, Converter converter)
    {
        for (int x = 0; x < space.StateCount; x++)
        {
            for (int y = 0; y < space.StateCount; y++)
            {
                double product = Enumerable.Range(0, converter.Capacitors.Count).Sum(i => converter.Capacitors[i].Farads * Weight(space, i, x) * Weight(space, i, y));
                Assert.Equal(x == y ? 1 : 0, product, 1e-14);
            }
        }
    }
}
