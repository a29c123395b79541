using ScNet.Kernel;

namespace ScNet.SteadyState.Exponential;

/// <summary>Inductors between parts of a network that are joined otherwise: a forest of them, whose currents follow from the others'.</summary>
internal sealed class CurrentGraph
{
    private readonly SwitchedLinearNetwork _network;
    private readonly int[] _cluster;
    private readonly int[] _group;
    private readonly DisjointSets _sets;
    private readonly List<int> _tree = [];

    /// <summary>Grows the forest, small inductances first.</summary>
    /// <param name="network">The network.</param>
    /// <param name="cluster">The cluster of each node.</param>
    /// <param name="group">The part of each cluster.</param>
    /// <param name="henries">The inductances.</param>
    public CurrentGraph(SwitchedLinearNetwork network, int[] cluster, int[] group, double[] henries)
    {
        _network = network;
        _cluster = cluster;
        _group = group;
        _sets = new(group.Length);
        foreach (int e in Enumerable.Range(0, henries.Length).OrderBy(e => henries[e]))
        {
            NodePair ends = Ends(e);
            if (_sets.Find(ends.First) != _sets.Find(ends.Second))
            {
                _sets.Join(ends.First, ends.Second);
                _tree.Add(e);
            }
        }
    }

    /// <summary>The number of inductors in the forest: of independent laws that tie their currents.</summary>
    public int TreeCount => _tree.Count;

    public bool IsInTree(int inductor) => _tree.Contains(inductor);

    public bool AreJoined(int first, int second) => _sets.Find(_group[first]) == _sets.Find(_group[second]);

    /// <summary>The forest's path from one cluster to another that it joins.</summary>
    public List<(int Inductor, int Sign)> Path(int from, int to) => ForestPath.Of(_tree, Ends, _group[from], _group[to]);

    private NodePair Ends(int inductor)
    {
        NodePair nodes = _network.Inductors[inductor];
        return new(_group[_cluster[nodes.First]], _group[_cluster[nodes.Second]]);
    }
}
