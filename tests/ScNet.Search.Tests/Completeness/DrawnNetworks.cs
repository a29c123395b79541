using CsCheck;

namespace ScNet.Search.Tests.Completeness;

/// <summary>Two wirings that may be a network: their nodes are as many as one has, the rest is chance.</summary>
internal static class DrawnNetworks
{
    /// <summary>Draws wirings of so many capacitors; in one piece, two phases with one loop more than capacitors have five nodes more than capacitors.</summary>
    public static Gen<Wiring[]> Of(int capacitors) =>
        from nodes in Gen.Int[2, capacitors + 3]
        from first in WiringOf(capacitors, nodes)
        from second in WiringOf(capacitors, capacitors + 5 - nodes)
        select new[] { first, second };

    private static Gen<Wiring> WiringOf(int capacitors, int nodes) =>
        from drawn in Gen.Int[0, nodes - 1].Array[Terminals.Count(capacitors)]
        select Wiring.Of(Apart(drawn, nodes));

    // moves the second end of a branch on where both ends would be one node
    private static int[] Apart(int[] drawn, int nodes)
    {
        int[] apart = [.. drawn];
        for (int t = 1; t < apart.Length; t++)
        {
            int other = t < 3 ? 0 : (t & 1) == 0 ? t - 1 : t;
            apart[t] = other != t && apart[t] == apart[other] ? (apart[t] + 1) % nodes : apart[t];
        }

        return apart;
    }
}
