namespace ScNet.Kernel;

/// <summary>
/// The ways in which held currents can flow where some of them meet at pieces of the network that branches of held
/// voltage do not reach: Kirchhoff's current law of these pieces, in every phase, leaves some combinations free.
/// </summary>
/// <remarks>Equations: docs/theory/averages-with-inductors.md. Cost: the cube of the number of held currents, times phases.</remarks>
internal static class HeldCurrentMeshes
{
    /// <summary>Independent combinations that obey the law, each by amount of every held current.</summary>
    /// <param name="network">The network.</param>
    /// <param name="forests">Its phases.</param>
    /// <param name="rests">As in <see cref="LoopSet.Of"/>.</param>
    /// <param name="interruptions">Receives, for each current that can but be zero, a phase or all phases that alone make it so, and its branch.</param>
    /// <exception cref="OverflowException">A machine integer does not hold an amount.</exception>
    public static List<int[]> Find(
        NetworkGraph network, ReadOnlySpan<PhaseForest> forests, ReadOnlySpan<bool> rests, List<(int Phase, int Branch)> interruptions)
    {
        int held = network.HeldCurrentCount, phases = forests.Length;
        List<int> all = [];
        List<(int Phase, int Held)> stopped = [];
        var firstWithout = new int[held];
        firstWithout.AsSpan().Fill(-1);
        for (int phase = 0; phase < phases; phase++)
        {
            int[] rows = Cuts(network, forests[phase], phase, phases, rests, firstWithout);
            all.AddRange(rows);
            Integers.Demand(EchelonForm.TryReduce(rows, held, held, out int rank));
            for (int row = 0; row < rank; row++)
            {
                ReadOnlySpan<int> entries = rows.AsSpan(row * held, held);
                int lead = EchelonForm.Leading(entries);
                if (!entries[(lead + 1)..].ContainsAnyExcept(0))
                {
                    stopped.Add((phase, lead));
                }
            }
        }

        List<int[]> meshes = FreeCombinations([.. all], held);
        for (int k = 0; k < held; k++)
        {
            if (meshes.Exists(m => m[k] != 0))
            {
                continue;
            }

            int own = k;
            List<(int Phase, int Held)> alone = stopped.FindAll(s => s.Held == own);
            foreach ((int phase, _) in alone.Count > 0 ? alone : [(firstWithout[k], k)])
            {
                interruptions.Add((phase, network.HeldCurrents[k]));
            }
        }

        return meshes;
    }

    /// <summary>The branches of a mesh in one phase and how often it runs through each from first to second terminal, held currents first; none where all of them rest.</summary>
    public static List<(int Branch, int Amount)> Loop(NetworkGraph network, PhaseForest forest, int[] mesh)
    {
        Dictionary<int, int> amounts = [];
        List<(int Branch, int Amount)> loop = [];
        Dictionary<int, int> surplus = [];
        for (int k = 0; k < mesh.Length; k++)
        {
            int branch = network.HeldCurrents[k];
            int first = forest.Group[network.BranchFirst[branch]], second = forest.Group[network.BranchSecond[branch]];
            if (mesh[k] == 0)
            {
                continue;
            }

            bool isConnected = forest.Component[first] == forest.Component[second];
            loop.Add((branch, mesh[k]));
            if (isConnected)
            {
                Follow(forest.GroupPath(second, first), mesh[k]);
            }
            else
            {
                int from = Root(forest, second), to = Root(forest, first);
                Follow(forest.GroupPath(second, from), mesh[k]);
                Follow(forest.GroupPath(to, first), mesh[k]);
                surplus[from] = surplus.GetValueOrDefault(from) + mesh[k];
                surplus[to] = surplus.GetValueOrDefault(to) - mesh[k];
            }
        }

        // a mesh of currents that rest in this phase leaves charge over: it does not flow
        return surplus.Values.Any(s => s != 0)
            ? []
            : [.. loop, .. amounts.Where(a => a.Value != 0).OrderBy(a => a.Key).Select(a => (a.Key, a.Value))];

        void Follow(TreePath path, int amount)
        {
            while (path.MoveNext())
            {
                amounts[path.Edge] = amounts.GetValueOrDefault(path.Edge) + (amount * path.Sign);
            }
        }
    }

    private static int Root(PhaseForest forest, int group)
    {
        while (forest.ParentGroup[group] >= 0)
        {
            group = forest.ParentGroup[group];
        }

        return group;
    }

    // One row per piece of a phase that a held current joins to another one: what flows into it.
    private static int[] Cuts(
        NetworkGraph network, PhaseForest forest, int phase, int phases, ReadOnlySpan<bool> rests, int[] firstWithout)
    {
        int held = network.HeldCurrentCount;
        SortedDictionary<int, int[]> rows = [];
        for (int k = 0; k < held; k++)
        {
            int branch = network.HeldCurrents[k];
            int first = forest.Component[forest.Group[network.BranchFirst[branch]]];
            int second = forest.Component[forest.Group[network.BranchSecond[branch]]];
            if (first == second || (!rests.IsEmpty && rests[(k * phases) + phase]))
            {
                continue;
            }

            firstWithout[k] = firstWithout[k] < 0 ? phase : firstWithout[k];
            RowOf(first)[k]--;
            RowOf(second)[k]++;
        }

        return [.. rows.Values.SelectMany(r => r)];

        int[] RowOf(int component)
        {
            if (!rows.TryGetValue(component, out int[]? row))
            {
                rows.Add(component, row = new int[held]);
            }

            return row;
        }
    }

    private static List<int[]> FreeCombinations(int[] rows, int held)
    {
        Integers.Demand(EchelonForm.TryReduce(rows, held, held, out int rank));
        int[] leads = [.. Enumerable.Range(0, rank).Select(r => EchelonForm.Leading(rows.AsSpan(r * held, held)))];
        List<int[]> free = [];
        for (int k = 0; k < held; k++)
        {
            if (leads.Contains(k))
            {
                continue;
            }

            int scale = 1;
            for (int r = 0; r < rank; r++)
            {
                int pivot = rows[(r * held) + leads[r]], entry = rows[(r * held) + k];
                int part = pivot / Integers.Gcd(pivot, entry == 0 ? pivot : entry);
                scale = checked(scale / Integers.Gcd(scale, part) * part);
            }

            var mesh = new int[held];
            mesh[k] = scale;
            for (int r = 0; r < rank; r++)
            {
                mesh[leads[r]] = checked(-rows[(r * held) + k] * scale / rows[(r * held) + leads[r]]);
            }

            free.Add(mesh);
        }

        return free;
    }
}
