namespace ScNet.Search.Networks;

/// <summary>
/// Switches that make given wirings: within each node of a phase just enough of them to join its terminals, those that
/// are together in every phase being one node without a switch.
/// </summary>
/// <remarks>
/// A switch that is closed in one phase blocks, in another, the difference of its terminals' potentials there. Joining
/// neighbours in the order of that potential gives the lowest blocking voltages that any switches of the wiring have,
/// and in two phases the least charge–voltage product too (docs/theory/atlas.md). <see cref="SwitchLayout.LeastCharge"/>
/// instead leads each charge through one switch from where it comes from to where it goes. <see cref="SwitchLayout.Fewest"/>
/// first takes the switches that serve several phases.
/// </remarks>
internal static class SwitchPlan
{
    /// <summary>The switches.</summary>
    /// <param name="phases">The wirings.</param>
    /// <param name="potentials">Per phase the potential of each terminal.</param>
    /// <param name="charges">Per phase the charge that flows out of the node into each terminal's branch.</param>
    /// <param name="layout">What they are chosen for.</param>
    /// <param name="limit">The most that one of the fewest may block; null for any voltage.</param>
    public static List<PlannedSwitch> Of(
        IReadOnlyList<Wiring> phases, IReadOnlyList<long[]> potentials, IReadOnlyList<long[]> charges, SwitchLayout layout, long? limit = null)
    {
        int[] groups = PermanentGroups(phases);
        long Blocking(int first, int second) => SwitchLimits.Blocking(phases, potentials, first, second);
        (int First, int Second)[] shared = layout == SwitchLayout.Fewest ? SwitchLimits.Of(phases, groups, potentials).Shared(limit) : [];
        List<PlannedSwitch> switches = [];
        for (int phase = 0; phase < phases.Count; phase++)
        {
            for (int node = 0; node < phases[phase].NodeCount; node++)
            {
                int[] members = [.. Enumerable.Range(0, groups.Length).Where(t => groups[t] == t && phases[phase].Nodes[t] == node)];
                long[] amounts = [.. members.Select(m => Enumerable.Range(0, groups.Length).Where(t => groups[t] == m).Sum(t => charges[phase][t]))];
                (int, int)[] wanted =
                [
                    .. shared.Select(s => (First: Array.IndexOf(members, s.First), Second: Array.IndexOf(members, s.Second))).Where(s => s.First >= 0 && s.Second >= 0),
                    .. phases.Count == 2 ? InRow(phases[1 - phase], potentials[1 - phase], members, amounts, layout) : [],
                ];
                Join(phase, phases.Count, members, amounts, wanted, Blocking, switches);
            }
        }

        return switches;
    }

    /// <summary>For each terminal the first terminal that it is joined to in every phase.</summary>
    public static int[] PermanentGroups(IReadOnlyList<Wiring> phases)
    {
        int[] groups = new int[phases[0].TerminalCount];
        for (int t = 0; t < groups.Length; t++)
        {
            groups[t] = Enumerable.Range(0, t + 1).First(earlier => phases.All(p => p.Joins(earlier, t)));
        }

        return groups;
    }

    // pairs of members, by position
    private static IEnumerable<(int First, int Second)> InRow(Wiring other, long[] potentials, int[] members, long[] amounts, SwitchLayout layout)
    {
        int[] row = [.. Enumerable.Range(0, members.Length)
            .OrderBy(m => potentials[members[m]])
            .ThenBy(m => other.Nodes[members[m]])];
        return NodeRow.Pairs(row, amounts, layout);
    }

    // a tree over the node's members: wanted pairs first, then the ones that block least
    private static void Join(
        int phase, int phaseCount, int[] members, long[] amounts, (int First, int Second)[] wanted, Func<int, int, long> blocking, List<PlannedSwitch> switches)
    {
        int[] piece = [.. Enumerable.Range(0, members.Length)];
        List<(int First, int Second)> tree = [];
        void Try(int first, int second)
        {
            int old = piece[second], kept = piece[first];
            if (old != kept)
            {
                tree.Add((first, second));
                for (int m = 0; m < piece.Length; m++)
                {
                    piece[m] = piece[m] == old ? kept : piece[m];
                }
            }
        }

        foreach ((int first, int second) in wanted)
        {
            Try(first, second);
        }

        var pairs =
            from second in Enumerable.Range(0, members.Length)
            from first in Enumerable.Range(0, second)
            let isThere = switches.Any(s => s.Joins(members[first], members[second]))
            orderby blocking(members[first], members[second]), isThere ? 0 : 1
            select (first, second);
        foreach ((int first, int second) in pairs)
        {
            Try(first, second);
        }

        foreach ((int first, int second) in tree)
        {
            long charge = ChargeThrough(tree, members.Length, amounts, first, second);
            PlannedSwitch? same = switches.Find(s => s.Joins(members[first], members[second]));
            if (same is null)
            {
                switches.Add(same = new PlannedSwitch(members[first], members[second], phaseCount));
            }

            same.Close(phase, same.First == members[first] ? charge : -charge);
        }
    }

    // what the second end's side of the tree takes comes through the branch
    private static long ChargeThrough(List<(int First, int Second)> tree, int members, long[] amounts, int first, int second)
    {
        bool[] isBehind = new bool[members];
        isBehind[second] = true;
        bool hasGrown = true;
        while (hasGrown)
        {
            hasGrown = false;
            foreach ((int a, int b) in tree)
            {
                if ((a, b) != (first, second) && isBehind[a] != isBehind[b])
                {
                    isBehind[a] = isBehind[b] = hasGrown = true;
                }
            }
        }

        return Enumerable.Range(0, members).Where(m => isBehind[m]).Sum(m => amounts[m]);
    }
}
