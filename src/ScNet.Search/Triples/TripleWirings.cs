namespace ScNet.Search.Triples;

/// <summary>Chooses the wirings of three phases by the switches they take.</summary>
/// <remarks>
/// A phase of n nodes closes as many switches as there are terminals, less n and less those joined for good; a switch
/// serves two phases where its ends are joined in both, and of such there are no more than terminals less the nodes m of
/// what both phases join. So there are at least m12 + m13 + m23 − n1 − n2 − n3 switches, and the wirings of the least bound
/// are tried first, then those that may still have fewer than what was found (docs/theory/atlas.md).
/// </remarks>
internal static class TripleWirings
{
    private const int MostTried = 32;

    /// <summary>The best network found: fewest switches, then lowest blocking voltage, charge–voltage product, swing and charge.</summary>
    /// <param name="candidates">Per triple of loop spaces the wirings of each phase.</param>
    public static SearchedNetwork Choose(IEnumerable<Wiring[][]> candidates)
    {
        SearchedNetwork? best = null;
        int tried = 0;
        foreach (IGrouping<int, Wiring[]> level in candidates.SelectMany(Combinations).GroupBy(c => c.Bound, c => c.Phases).OrderBy(g => g.Key))
        {
            if (best is not null && (level.Key >= best.Measures.SwitchCount || tried >= MostTried))
            {
                break;
            }

            foreach (Wiring[] phases in level.Take(MostTried))
            {
                SearchedNetwork next = Network(phases);
                tried++;
                best = best is null || Compare(next, best) < 0 ? next : best;
            }
        }

        return best ?? throw new ArgumentException("Expected wirings to choose from.", nameof(candidates));
    }

    /// <summary>No switches make three wirings that are fewer than this.</summary>
    public static int FewestSwitches(IReadOnlyList<Wiring> phases) =>
        Meet(phases[0], phases[1]) + Meet(phases[0], phases[2]) + Meet(phases[1], phases[2]) - phases.Sum(p => p.NodeCount);

    private static IEnumerable<(int Bound, Wiring[] Phases)> Combinations(Wiring[][] wirings)
    {
        int[,] ab = Meets(wirings[0], wirings[1]), ac = Meets(wirings[0], wirings[2]), bc = Meets(wirings[1], wirings[2]);
        List<(int, int, int)> least = [];
        int bound = int.MaxValue;
        for (int a = 0; a < wirings[0].Length; a++)
        {
            for (int b = 0; b < wirings[1].Length; b++)
            {
                for (int c = 0; c < wirings[2].Length; c++)
                {
                    int next = ab[a, b] + ac[a, c] + bc[b, c] - wirings[0][a].NodeCount - wirings[1][b].NodeCount - wirings[2][c].NodeCount;
                    if (next < bound)
                    {
                        bound = next;
                        least.Clear();
                    }

                    if (next == bound && least.Count < MostTried)
                    {
                        least.Add((a, b, c));
                    }
                }
            }
        }

        return least.Select(l => (bound, new[] { wirings[0][l.Item1], wirings[1][l.Item2], wirings[2][l.Item3] }));
    }

    private static int[,] Meets(Wiring[] first, Wiring[] second)
    {
        int[,] meets = new int[first.Length, second.Length];
        for (int a = 0; a < first.Length; a++)
        {
            for (int b = 0; b < second.Length; b++)
            {
                meets[a, b] = Meet(first[a], second[b]);
            }
        }

        return meets;
    }

    // the sets of terminals that are joined in both
    private static int Meet(Wiring first, Wiring second)
    {
        Span<uint> seen = stackalloc uint[first.NodeCount];
        int count = 0;
        for (int t = 0; t < first.TerminalCount; t++)
        {
            uint bit = 1u << second.Nodes[t];
            count += (seen[first.Nodes[t]] & bit) == 0 ? 1 : 0;
            seen[first.Nodes[t]] |= bit;
        }

        return count;
    }

    private static int Compare(SearchedNetwork one, SearchedNetwork other)
    {
        NetworkMeasures a = one.Measures, b = other.Measures;
        int order = a.SwitchCount.CompareTo(b.SwitchCount);
        order = order != 0 ? order : a.HighestSwitchVoltage.CompareTo(b.HighestSwitchVoltage);
        order = order != 0 ? order : a.SwitchChargeVoltage.CompareTo(b.SwitchChargeVoltage);
        order = order != 0 ? order : a.PlateSwing.CompareTo(b.PlateSwing);
        return order != 0 ? order : a.SwitchCharge.CompareTo(b.SwitchCharge);
    }

    private static SearchedNetwork Network(Wiring[] phases) =>
        SearchedNetwork.TryCreate(phases, SwitchLayout.LowestBlocking, out SearchedNetwork? network)
            ? network
            : throw new InvalidOperationException($"The wirings {string.Join(", ", phases.Select(p => p.ToCode()))} of the search make no network.");
}
