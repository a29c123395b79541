using ScNet.Kernel;

namespace ScNet.SteadyState.Exponential;

/// <summary>The path through a forest of elements from one place to another.</summary>
internal static class ForestPath
{
    /// <summary>The elements in order, each with 1 where it is passed from its first terminal to its second; none where the ends are one.</summary>
    /// <param name="tree">The elements of the forest.</param>
    /// <param name="ends">The places that an element joins.</param>
    /// <param name="from">The place at which the path starts.</param>
    /// <param name="to">The place at which it ends, in the same tree.</param>
    public static List<(int Element, int Sign)> Of(List<int> tree, Func<int, NodePair> ends, int from, int to)
    {
        Dictionary<int, (int Before, int Element, int Sign)> found = new() { [from] = (from, -1, 0) };
        Queue<int> open = new([from]);
        while (!found.ContainsKey(to) && open.TryDequeue(out int place))
        {
            foreach (int e in tree)
            {
                NodePair pair = ends(e);
                (int other, int sign) = pair.First == place ? (pair.Second, 1) : pair.Second == place ? (pair.First, -1) : (place, 0);
                if (sign != 0 && found.TryAdd(other, (place, e, sign)))
                {
                    open.Enqueue(other);
                }
            }
        }

        List<(int Element, int Sign)> path = [];
        for (int place = to; place != from; place = found[place].Before)
        {
            path.Add((found[place].Element, found[place].Sign));
        }

        path.Reverse();
        return path;
    }
}
