namespace ScNet.Search.Tests;

/// <summary>Every wiring of a number of capacitors, by going through all ways to join terminals.</summary>
internal static class AllWirings
{
    /// <summary>The admissible wirings, in the order of their nodes.</summary>
    public static IEnumerable<Wiring> Of(int capacitors)
    {
        int[] nodes = new int[Terminals.Count(capacitors)];
        return From(nodes, 1, 1);
    }

    private static IEnumerable<Wiring> From(int[] nodes, int terminal, int used)
    {
        if (terminal == nodes.Length)
        {
            Wiring wiring = Wiring.Of(nodes);
            if (wiring.IsAdmissible)
            {
                yield return wiring;
            }

            yield break;
        }

        for (int node = 0; node <= used; node++)
        {
            nodes[terminal] = node;
            foreach (Wiring wiring in From(nodes, terminal + 1, Math.Max(used, node + 1)))
            {
                yield return wiring;
            }
        }
    }
}
