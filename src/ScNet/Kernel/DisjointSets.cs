namespace ScNet.Kernel;

/// <summary>
/// Items in disjoint sets that can be joined; the least item of a set stands for it. Source: R. E. Tarjan,
/// "Efficiency of a good but not linear set union algorithm", Journal of the ACM 22(2), 1975 (from memory).
/// Cost: next to constant per step.
/// </summary>
internal sealed class DisjointSets
{
    private int[] _parent = [];

    public DisjointSets(int count = 0) => Reset(count);

    /// <summary>Puts every item into a set of its own.</summary>
    public void Reset(int count)
    {
        if (_parent.Length < count)
        {
            _parent = new int[count];
        }

        for (int i = 0; i < count; i++)
        {
            _parent[i] = i;
        }
    }

    /// <summary>The item that stands for the set of another.</summary>
    public int Find(int item)
    {
        int[] parent = _parent;
        while (parent[item] != item)
        {
            // halving the path as it is walked keeps later walks short
            item = parent[item] = parent[parent[item]];
        }

        return item;
    }

    /// <summary>Joins the sets of two items.</summary>
    public void Join(int a, int b)
    {
        (a, b) = (Find(a), Find(b));
        _parent[Math.Max(a, b)] = Math.Min(a, b);
    }
}
