namespace ScNet.Kernel;

/// <summary>
/// Finds loops of one capacitor with sources only that other phases have too, where the capacitor is in no
/// other loop: its voltage is the same at the end of every phase.
/// </summary>
internal static class RepeatedLoops
{
    /// <summary>Pairs of a loop and one that repeats it, in an order in which the repeats may be removed one by one.</summary>
    public static List<(int First, int Repeat)> Find(LoopSet loops, int capacitorCount)
    {
        var own = new List<int>?[capacitorCount];
        var uses = new int[capacitorCount];
        for (int loop = 0; loop < loops.Count; loop++)
        {
            foreach (int branch in loops.Branches(loop))
            {
                if (branch < capacitorCount)
                {
                    uses[branch]++;
                }
            }

            if (IsOfSourcesAndOneCapacitor(loops.Branches(loop), capacitorCount))
            {
                (own[loops.Branches(loop)[0]] ??= []).Add(loop);
            }
        }

        List<(int First, int Repeat)> pairs = [];
        for (int capacitor = 0; capacitor < capacitorCount; capacitor++)
        {
            // Held at different voltages in different phases, a capacitor carries charge after all.
            if (own[capacitor] is { Count: > 1 } held && uses[capacitor] == held.Count && held.TrueForAll(l => IsSame(loops, held[0], l)))
            {
                pairs.AddRange(held.Skip(1).Select(repeat => (held[0], repeat)));
            }
        }

        pairs.Sort((a, b) => b.Repeat.CompareTo(a.Repeat));
        return pairs;
    }

    private static bool IsOfSourcesAndOneCapacitor(ReadOnlySpan<int> branches, int capacitorCount)
    {
        if (branches[0] >= capacitorCount)
        {
            return false;
        }

        foreach (int branch in branches[1..])
        {
            if (branch < capacitorCount)
            {
                return false;
            }
        }

        return true;
    }

    // Both start at the same capacitor and go on through one or two sources, whose order may differ.
    private static bool IsSame(LoopSet loops, int left, int right)
    {
        ReadOnlySpan<int> branches = loops.Branches(right);
        if (loops.Branches(left).Length != branches.Length)
        {
            return false;
        }

        for (int e = 0; e < branches.Length; e++)
        {
            int other = loops.Branches(left).IndexOf(branches[e]);
            if (other < 0 || loops.Signs(left)[other] != loops.Signs(right)[e])
            {
                return false;
            }
        }

        return true;
    }
}
