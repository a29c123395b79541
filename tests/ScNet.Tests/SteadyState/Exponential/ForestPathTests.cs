using ScNet.Kernel;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Paths through a small forest by hand, and forests of inductors.</summary>
public sealed class ForestPathTests
{
    // 0 - 1 - 2 - 3 with a branch 1 - 4, and a tree 5 - 6 apart
    private static readonly NodePair[] s_ends = [new(0, 1), new(2, 1), new(2, 3), new(9, 9), new(4, 1), new(5, 6)];
    private static readonly List<int> s_tree = [0, 1, 2, 4, 5];

    [Fact]
    public void A_path_names_its_elements_in_order_with_their_directions()
    {
        Assert.Equal([(0, 1), (1, -1), (2, 1)], Path(0, 3));
        Assert.Equal([(2, -1), (1, 1), (0, -1)], Path(3, 0));
        Assert.Equal([(4, 1), (1, -1)], Path(4, 2));
        Assert.Equal([(5, -1)], Path(6, 5));
    }

    [Fact]
    public void Every_place_up_to_the_end_looks_at_each_element_once()
    {
        // from 0, 1 and 2 at all five
        int asked = 0;
        _ = ForestPath.Of(s_tree, Ends, 0, 3);
        Assert.Equal(3 * 5, asked);

        NodePair Ends(int element)
        {
            asked++;
            return s_ends[element];
        }
    }

    [Fact]
    public void A_path_to_where_it_starts_is_empty() => Assert.Empty(Path(2, 2));

    [Fact]
    public void Small_inductances_make_the_forest_and_large_ones_close_its_loops()
    {
        // a triangle 1 - 2 - 3, whose largest closes it; nodes are clusters and parts of their own
        SwitchedLinearNetwork network = SmallNetwork.Of(4, [""], inductors: [(1, 2), (2, 3), (1, 3)]);
        CurrentGraph graph = new(network, [0, 1, 2, 3], [0, 1, 2, 3], [3, 1, 2]);
        Assert.Equal(2, graph.TreeCount);
        Assert.Equal([false, true, true], Enumerable.Range(0, 3).Select(graph.IsInTree));
        Assert.Equal([(2, 1), (1, -1)], graph.Path(1, 2));
        Assert.True(graph.AreJoined(1, 3));
        Assert.False(graph.AreJoined(0, 1));
    }

    [Fact]
    public void Inductors_meet_where_clusters_are_joined()
    {
        // nodes 1 and 2 are one cluster, which the phase joins to that of node 3
        SwitchedLinearNetwork network = SmallNetwork.Of(5, [""], inductors: [(1, 3), (2, 4)]);
        CurrentGraph graph = new(network, [0, 1, 1, 2, 3], [0, 1, 1, 3], [1, 2]);
        Assert.Equal(1, graph.TreeCount);
        Assert.Equal([(1, -1)], graph.Path(3, 2));
        Assert.True(graph.AreJoined(2, 3));
    }

    private static List<(int Element, int Sign)> Path(int from, int to) => ForestPath.Of(s_tree, e => s_ends[e], from, to);
}
