using ScNet.Search;

namespace ScNet.Synthesis.Candidates;

/// <summary>Every wiring that short-circuits no branch, by giving one terminal after the other an earlier node or one of its own.</summary>
internal static class AdmissibleWirings
{
    public static IEnumerable<Wiring> Of(int capacitors)
    {
        int[] nodes = new int[Terminals.Count(capacitors)];
        return From(nodes, 1, 1);
    }

    private static IEnumerable<Wiring> From(int[] nodes, int terminal, int used)
    {
        if (terminal == nodes.Length)
        {
            yield return Wiring.Of(nodes);
            yield break;
        }

        for (int node = 0; node <= used; node++)
        {
            if (IsForbidden(nodes, terminal, node))
            {
                continue;
            }

            nodes[terminal] = node;
            foreach (Wiring wiring in From(nodes, terminal + 1, Math.Max(used, node + 1)))
            {
                yield return wiring;
            }
        }
    }

    // input and output stand on the reference, a bottom plate beside its own positive plate
    private static bool IsForbidden(int[] nodes, int terminal, int node) =>
        terminal <= Terminals.Output ? node == 0 : (terminal & 1) == 0 && nodes[terminal - 1] == node;
}
