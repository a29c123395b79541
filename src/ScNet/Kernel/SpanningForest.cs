namespace ScNet.Kernel;

/// <summary>
/// A breadth-first spanning forest of a multigraph of numbered vertices and edges. It can be built again, and
/// then takes new memory only where the graph is larger than all before.
/// </summary>
/// <remarks>
/// Edges are known by their number: parallel ones and edges from a vertex to itself are routine. The arrays are
/// read up to <see cref="VertexCount"/>. Cost: time and memory linear in vertices and edges.
/// </remarks>
internal sealed class SpanningForest
{
    public const int None = -1;

    /// <summary>Up to so many integers a build takes from the stack.</summary>
    public const int SmallCount = 64;

    private int[] _start = [];
    private int[] _incident = [];

    public int VertexCount { get; private set; }

    /// <summary>The number of trees: connected components.</summary>
    public int TreeCount { get; private set; }

    /// <summary>The vertices in the order of the search: tree after tree, each vertex after its parent.</summary>
    public int[] Order { get; private set; } = [];

    /// <summary>The vertex through which the search reached each vertex, or -1 for the root of a tree.</summary>
    public int[] Parent { get; private set; } = [];

    /// <summary>The edge through which it did, or -1.</summary>
    public int[] ParentEdge { get; private set; } = [];

    /// <summary>1 where that edge has its first end at the vertex, -1 where it has it at the parent.</summary>
    public sbyte[] Sign { get; private set; } = [];

    /// <summary>The number of edges up to the root.</summary>
    public int[] Depth { get; private set; } = [];

    /// <summary>The tree of each vertex; vertex 0 is in tree 0.</summary>
    public int[] Tree { get; private set; } = [];

    /// <summary>Searches from the vertices in ascending order, at each vertex along the edges as they are listed.</summary>
    /// <param name="vertexCount">The number of vertices.</param>
    /// <param name="first">The first end of each edge.</param>
    /// <param name="second">The second end of each edge.</param>
    /// <param name="edges">The edges to use, in the order in which they are taken at each vertex.</param>
    public void Build(int vertexCount, ReadOnlySpan<int> first, ReadOnlySpan<int> second, ReadOnlySpan<int> edges)
    {
        Reserve(vertexCount);

        // the lists of edges are needed for the search only: on the stack where they are short
        Span<int> start = Scratch(ref _start, vertexCount + 1, stackalloc int[SmallCount]);
        Span<int> incident = Scratch(ref _incident, 2 * edges.Length, stackalloc int[SmallCount]);
        start.Clear();
        foreach (int edge in edges)
        {
            start[first[edge]]++;
            start[second[edge]]++;
        }

        for (int vertex = 1; vertex < start.Length; vertex++)
        {
            start[vertex] += start[vertex - 1];
        }

        // filled from the end, each list's start comes down to where it belongs
        for (int k = edges.Length - 1; k >= 0; k--)
        {
            incident[--start[second[edges[k]]]] = edges[k];
            incident[--start[first[edges[k]]]] = edges[k];
        }

        Search(first, second, start, incident);
    }

    /// <summary>The edges between two vertices of one tree.</summary>
    public TreePath Path(int from, int to) => new(this, from, to);

    /// <summary>Room for so many integers: the small one, or where that does not do the large one, grown.</summary>
    public static Span<int> Scratch(ref int[] large, int count, Span<int> small)
    {
        if (count <= small.Length)
        {
            return small[..count];
        }

        if (large.Length < count)
        {
            large = new int[count];
        }

        return large.AsSpan(0, count);
    }

    private void Reserve(int vertexCount)
    {
        VertexCount = vertexCount;
        if (Order.Length < vertexCount)
        {
            Order = new int[vertexCount];
            Parent = new int[vertexCount];
            ParentEdge = new int[vertexCount];
            Sign = new sbyte[vertexCount];
            Depth = new int[vertexCount];
            Tree = new int[vertexCount];
        }
    }

    private void Search(ReadOnlySpan<int> first, ReadOnlySpan<int> second, ReadOnlySpan<int> start, ReadOnlySpan<int> incident)
    {
        int count = start.Length - 1;
        Span<int> order = Order.AsSpan(0, count), tree = Tree.AsSpan(0, count), depth = Depth.AsSpan(0, count);
        Span<int> parent = Parent.AsSpan(0, count), parentEdge = ParentEdge.AsSpan(0, count);
        Span<sbyte> sign = Sign.AsSpan(0, count);
        tree.Fill(None);
        TreeCount = 0;
        int found = 0;
        for (int root = 0; root < count; root++)
        {
            if (tree[root] != None)
            {
                continue;
            }

            int next = found;
            (tree[root], depth[root], parent[root], parentEdge[root]) = (TreeCount, 0, None, None);
            order[found++] = root;
            for (; next < found; next++)
            {
                int vertex = order[next];
                foreach (int edge in incident[start[vertex]..start[vertex + 1]])
                {
                    int end = first[edge];
                    bool isForward = end == vertex;
                    end = isForward ? second[edge] : end;
                    if (tree[end] == None)
                    {
                        (tree[end], depth[end], parent[end], parentEdge[end]) = (TreeCount, depth[vertex] + 1, vertex, edge);
                        sign[end] = (sbyte)(isForward ? -1 : 1);
                        order[found++] = end;
                    }
                }
            }

            TreeCount++;
        }
    }
}
