using ScNet.Kernel;

namespace ScNet.SteadyState.Exponential;

/// <summary>The loops that capacitors close in one phase where everything else but open switches is taken as a connection.</summary>
internal static class CapacitorLoops
{
    /// <summary>Adds a row of 1, 0 and -1 per independent loop, one number per capacitor.</summary>
    public static void AddTo(List<int> rows, SwitchedLinearNetwork network, bool[] closed)
    {
        DisjointSets joined = new(network.NodeCount);
        joined.Join(0, network.InputNode);
        if (network.IsStiff)
        {
            joined.Join(0, network.OutputNode);
        }

        for (int r = 0; r < closed.Length; r++)
        {
            if (closed[r])
            {
                joined.Join(network.Resistors[r].First, network.Resistors[r].Second);
            }
        }

        foreach (NodePair inductor in network.Inductors)
        {
            joined.Join(inductor.First, inductor.Second);
        }

        DisjointSets sets = new(network.NodeCount);
        List<int> tree = [];
        int count = network.Capacitors.Length;
        for (int i = 0; i < count; i++)
        {
            NodePair ends = Ends(i);
            if (sets.Find(ends.First) != sets.Find(ends.Second))
            {
                sets.Join(ends.First, ends.Second);
                tree.Add(i);
                continue;
            }

            int at = rows.Count;
            rows.AddRange(Enumerable.Repeat(0, count));
            rows[at + i] = 1;
            foreach ((int capacitor, int sign) in ForestPath.Of(tree, Ends, ends.First, ends.Second))
            {
                rows[at + capacitor] = -sign;
            }
        }

        NodePair Ends(int capacitor) => new(joined.Find(network.Capacitors[capacitor].First), joined.Find(network.Capacitors[capacitor].Second));
    }
}
