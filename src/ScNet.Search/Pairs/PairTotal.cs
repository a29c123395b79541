using ScNet.Search.LoopSpaces;

namespace ScNet.Search.Pairs;

/// <summary>How many pairs of loop spaces a search must decide, counted without making them.</summary>
/// <remarks>
/// Burnside's lemma: pairs up to renaming, turning and exchanging phases are as many as an element of the group leaves
/// as they are, on average. An element g that keeps the phases leaves a pair when it leaves both spaces; one that
/// exchanges them leaves (X, gX) when g² leaves X. How many spaces an element leaves depends on its class alone, and is
/// read from the stabilisers of the orbits.
/// </remarks>
internal static class PairTotal
{
    /// <summary>The number of pairs with one loop more than there are capacitors, each of which lies on loops of both phases.</summary>
    public static long Of(int capacitors, CancellationToken cancellationToken = default)
    {
        Dictionary<SignedCycles, Int128[]> counts = [];
        SignedPermutations group = new(capacitors);
        int[] positions = new int[capacitors];
        foreach (LoopSpaceOrbit orbit in LoopSpaceOrbits.Of(capacitors, usingAll: true, cancellationToken).Orbits)
        {
            foreach (int element in orbit.Stabiliser)
            {
                SignedCycles kind = SignedCycles.Of(positions, group.Read(element, positions));
                if (!counts.TryGetValue(kind, out Int128[]? byLoops))
                {
                    counts.Add(kind, byLoops = new Int128[capacitors + LoopSpace.FirstCapacitorColumn + 1]);
                }

                byLoops[orbit.Space.Dimension] += orbit.Size;
            }
        }

        Int128 Fixed(SignedCycles kind, int loops) => counts.TryGetValue(kind, out Int128[]? byLoops) ? byLoops[loops] / kind.ElementCount : 0;
        Int128 sum = 0;
        foreach (SignedCycles kind in SignedCycles.All(capacitors))
        {
            for (int loops = 0; loops <= capacitors + 1; loops++)
            {
                sum += kind.ElementCount * Fixed(kind, loops) * Fixed(kind, capacitors + 1 - loops);
            }

            sum += capacitors % 2 == 0 ? 0 : kind.ElementCount * Fixed(kind.Squared(), (capacitors + 1) / 2);
        }

        return (long)(sum / (2 * group.Count));
    }
}
