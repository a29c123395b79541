namespace ScNet.Kernel;

/// <summary>Which branches touch each node: compressed lists, the branches of a node in ascending order of position given.</summary>
internal sealed class Incidence
{
    private readonly int[] _start;
    private readonly int[] _branches;

    private Incidence(int[] start, int[] branches)
    {
        _start = start;
        _branches = branches;
    }

    public ReadOnlySpan<int> this[int node] => _branches.AsSpan(_start[node], _start[node + 1] - _start[node]);

    /// <summary>Lists the branches at each node. A branch with both ends on one node is listed once.</summary>
    /// <param name="nodeCount">The number of nodes.</param>
    /// <param name="first">The first node of each branch.</param>
    /// <param name="second">The second node of each branch.</param>
    /// <param name="order">The branches in the order in which they are to be listed.</param>
    public static Incidence Of(int nodeCount, int[] first, int[] second, ReadOnlySpan<int> order)
    {
        var start = new int[nodeCount + 1];
        foreach (int branch in order)
        {
            start[first[branch] + 1]++;
            if (second[branch] != first[branch])
            {
                start[second[branch] + 1]++;
            }
        }

        for (int node = 0; node < nodeCount; node++)
        {
            start[node + 1] += start[node];
        }

        int[] next = start[..nodeCount];
        var branches = new int[start[nodeCount]];
        foreach (int branch in order)
        {
            branches[next[first[branch]]++] = branch;
            if (second[branch] != first[branch])
            {
                branches[next[second[branch]]++] = branch;
            }
        }

        return new Incidence(start, branches);
    }
}
