using ScNet.Kernel;

namespace ScNet.Reconfiguration;

/// <summary>Sorts every set of closed switches into its class and leaves out those that short a port.</summary>
internal static class PhaseClasses
{
    public static List<PhaseClass> Of(SwitchedNetwork network, CancellationToken cancellation)
    {
        int switches = network.SwitchCount, sets = 1 << switches;
        var classOf = new PhaseClass?[sets];
        var keys = new long[sets][];
        Parallel.For(0, sets, new ParallelOptions { CancellationToken = cancellation }, set =>
        {
            Span<bool> closed = stackalloc bool[switches];
            for (int s = 0; s < switches; s++)
            {
                closed[s] = ((set >> s) & 1) != 0;
            }

            keys[set] = PhaseClass.Reduce(network, closed);
        });
        Dictionary<long[], PhaseClass> classes = new(EquationComparer.Instance);
        List<PhaseClass> found = [];
        for (int set = 0; set < sets; set++)
        {
            if (ShortsPort(keys[set], network))
            {
                continue;
            }

            if (!classes.TryGetValue(keys[set], out PhaseClass? own))
            {
                own = new PhaseClass(keys[set], network.BranchCount);
                classes.Add(keys[set], own);
                found.Add(own);
            }

            own.Count++;
            classOf[set] = own;
        }

        CollectLargest(classOf, switches);
        return found;
    }

    // The loop space only grows as switches close, so a set is largest when no single switch can be added.
    private static void CollectLargest(PhaseClass?[] classOf, int switches)
    {
        for (int set = 0; set < classOf.Length; set++)
        {
            if (classOf[set] is not { } own)
            {
                continue;
            }

            bool isLargest = true;
            for (int s = 0; s < switches && isLargest; s++)
            {
                isLargest = ((set >> s) & 1) != 0 || !ReferenceEquals(classOf[set | (1 << s)], own);
            }

            if (isLargest)
            {
                own.Largest.Add(set);
            }
        }
    }

    // An equation of the input alone is a contradiction, one of the output alone holds it at zero.
    private static bool ShortsPort(long[] equations, SwitchedNetwork network)
    {
        int columns = network.BranchCount;
        for (int row = 0; row < equations.Length; row += columns)
        {
            if (!equations.AsSpan(row, network.CapacitorCount).ContainsAnyExcept(0)
                && (equations[row + network.OutputBranch] == 0 || equations[row + network.InputBranch] == 0))
            {
                return true;
            }
        }

        return false;
    }

    private sealed class EquationComparer : IEqualityComparer<long[]>
    {
        public static EquationComparer Instance { get; } = new();

        public bool Equals(long[]? x, long[]? y) => x.AsSpan().SequenceEqual(y);

        public int GetHashCode(long[] obj)
        {
            HashCode hash = default;
            foreach (long value in obj)
            {
                hash.Add(value);
            }

            return hash.ToHashCode();
        }
    }
}
