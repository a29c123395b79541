using ScNet.Kernel;

namespace ScNet.Reconfiguration;

/// <summary>Sorts every set of closed switches into its class and leaves out those that short a port.</summary>
internal static class PhaseClasses
{
    public static List<PhaseClass> Of(SwitchedNetwork network, CancellationToken cancellation)
    {
        int switches = network.SwitchCount, sets = 1 << switches;
        var classOf = new PhaseClass?[sets];
        Dictionary<int[], PhaseClass> classes = new(EquationComparer.Instance);
        var known = classes.GetAlternateLookup<ReadOnlySpan<int>>();
        List<PhaseClass> found = [];
        CandidateSolver solver = new();
        Span<bool> closed = stackalloc bool[switches];
        for (int set = 0; set < sets; set++)
        {
            cancellation.ThrowIfCancellationRequested();
            for (int s = 0; s < switches; s++)
            {
                closed[s] = ((set >> s) & 1) != 0;
            }

            ReadOnlySpan<int> equations = solver.PhaseEquations(network, closed);
            if (ShortsPort(equations, network))
            {
                continue;
            }

            if (!known.TryGetValue(equations, out PhaseClass? own))
            {
                own = new PhaseClass(equations.ToArray());
                classes.Add(own.Equations, own);
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

    // An equation of one port alone holds it at zero, or contradicts the voltage that it is given.
    private static bool ShortsPort(ReadOnlySpan<int> equations, SwitchedNetwork network)
    {
        int columns = network.BranchCount;
        for (int row = 0; row < equations.Length; row += columns)
        {
            ReadOnlySpan<int> own = equations.Slice(row, columns);
            int leading = EchelonForm.Leading(own);
            if (leading >= network.CapacitorCount && !own[(leading + 1)..].ContainsAnyExcept(0))
            {
                return true;
            }
        }

        return false;
    }

    private sealed class EquationComparer : IEqualityComparer<int[]>, IAlternateEqualityComparer<ReadOnlySpan<int>, int[]>
    {
        public static EquationComparer Instance { get; } = new();

        public bool Equals(int[]? x, int[]? y) => x.AsSpan().SequenceEqual(y);

        public bool Equals(ReadOnlySpan<int> alternate, int[] other) => alternate.SequenceEqual(other);

        public int GetHashCode(int[] obj) => GetHashCode(obj.AsSpan());

        public int GetHashCode(ReadOnlySpan<int> alternate)
        {
            HashCode hash = default;
            hash.AddBytes(System.Runtime.InteropServices.MemoryMarshal.AsBytes(alternate));
            return hash.ToHashCode();
        }

        public int[] Create(ReadOnlySpan<int> alternate) => alternate.ToArray();
    }
}
