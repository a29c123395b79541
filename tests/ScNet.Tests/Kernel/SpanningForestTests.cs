using CsCheck;
using ScNet.Kernel;

namespace ScNet.Tests.Kernel;

[Trait("Kind", "Law")]
public class SpanningForestTests
{
    private static readonly Gen<(int Count, (int First, int Second)[] Edges)> s_graphs =
        from count in Gen.Int[1, 9]
        from edges in Gen.Select(Gen.Int[0, count - 1], Gen.Int[0, count - 1]).Array[0, 14]
        select (count, edges);

    private static void ForAll(Action<SpanningForest, int, (int First, int Second)[]> law) => s_graphs.Holds(
        graph =>
        {
            // built twice: the second time on memory that held another graph
            SpanningForest forest = new();
            forest.Build(12, [3, 1, 4], [1, 5, 9], [2, 0]);
            forest.Build(graph.Count, [.. graph.Edges.Select(e => e.First)], [.. graph.Edges.Select(e => e.Second)], [.. Enumerable.Range(0, graph.Edges.Length)]);
            law(forest, graph.Count, graph.Edges);
        },
        2000);

    [Fact]
    public void Trees_are_the_components_and_every_vertex_comes_after_its_parent() => ForAll((forest, count, edges) =>
    {
        DisjointSets sets = new(count);
        foreach ((int first, int second) in edges)
        {
            sets.Join(first, second);
        }

        Assert.Equal(Enumerable.Range(0, count).Select(sets.Find).Distinct().Count(), forest.TreeCount);
        int[] order = forest.Order[..count];
        Assert.Equal(Enumerable.Range(0, count), order.Order());
        for (int v = 0; v < count; v++)
        {
            Assert.All(Enumerable.Range(0, count), w => Assert.Equal(sets.Find(v) == sets.Find(w), forest.Tree[v] == forest.Tree[w]));
            int parent = forest.Parent[v], edge = forest.ParentEdge[v];
            Assert.Equal(parent == SpanningForest.None, edge == SpanningForest.None);
            if (parent != SpanningForest.None)
            {
                Assert.Equal(forest.Depth[parent] + 1, forest.Depth[v]);
                Assert.True(Array.IndexOf(order, parent) < Array.IndexOf(order, v));
                Assert.Equal(forest.Sign[v] > 0 ? (v, parent) : (parent, v), edges[edge]);
            }
        }
    });

    [Fact]
    public void A_path_leads_along_tree_edges_from_one_vertex_to_the_other() => ForAll((forest, count, edges) =>
    {
        for (int from = 0; from < count; from++)
        {
            for (int to = 0; to < count; to++)
            {
                if (forest.Tree[from] != forest.Tree[to])
                {
                    continue;
                }

                List<(int Edge, int Sign)> up = [], down = [];
                TreePath path = forest.Path(from, to);
                while (path.MoveNext())
                {
                    (path.IsUp ? up : down).Add((path.Edge, path.Sign));
                }

                down.Reverse();
                int at = from;
                foreach ((int edge, int sign) in up.Concat(down))
                {
                    Assert.Equal(at, sign > 0 ? edges[edge].First : edges[edge].Second);
                    at = sign > 0 ? edges[edge].Second : edges[edge].First;
                }

                Assert.Equal(to, at);
                Assert.Equal(up.Count + down.Count, up.Concat(down).Select(e => e.Edge).Distinct().Count());
            }
        }
    });
}
