namespace ScNet.Kernel;

/// <summary>
/// Items in disjoint sets that can be joined. Source: R. E. Tarjan, "Efficiency of a good but not linear set
/// union algorithm", Journal of the ACM 22(2), 1975 (from memory). Cost: next to constant per step.
/// </summary>
internal sealed class DisjointSets
{
    private readonly int[] _parent;

    public DisjointSets(int count)
    {
        _parent = new int[count];
        for (int i = 0; i < count; i++)
        {
            _parent[i] = i;
        }
    }

    /// <summary>The item that stands for the set of another.</summary>
    public int Find(int item)
    {
        while (_parent[item] != item)
        {
            // halving the path as it is walked keeps later walks short
            item = _parent[item] = _parent[_parent[item]];
        }

        return item;
    }

    /// <summary>Joins the sets of two items; the one with the smaller standing item stands for both.</summary>
    public void Join(int a, int b)
    {
        (a, b) = (Find(a), Find(b));
        _parent[Math.Max(a, b)] = Math.Min(a, b);
    }
}
