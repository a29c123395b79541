using System.Runtime.InteropServices;

namespace ScNet.Kernel;

/// <summary>
/// Finds loops of one capacitor with ports only that other phases have too, where the capacitor is in no
/// other loop: its voltage is the same at the end of every phase.
/// </summary>
/// <remarks>Cost: linear in the total length of the loops.</remarks>
internal sealed class RepeatedLoops
{
    private const int None = -1;

    private readonly List<(int First, int Repeat)> _pairs = [];
    private (int First, int Same, int Uses)[] _counts = [];

    /// <summary>Pairs of a loop and one that repeats it, those of the last loops first; valid until the next call.</summary>
    public ReadOnlySpan<(int First, int Repeat)> Find(LoopSet loops, int capacitorCount)
    {
        Count(loops, capacitorCount);
        _pairs.Clear();
        for (int loop = loops.Count - 1; loop >= 0; loop--)
        {
            // held at different voltages in different phases, a capacitor carries charge after all
            int capacitor = loops.Branches(loop)[0];
            if (capacitor < capacitorCount && _counts[capacitor] is var (first, same, uses) && same > 1 && uses == same && loop != first)
            {
                _pairs.Add((first, loop));
            }
        }

        return CollectionsMarshal.AsSpan(_pairs);
    }

    // Per capacitor: how many loops hold it, which is the first that it closes with ports only, and how many are the same as that.
    private void Count(LoopSet loops, int capacitorCount)
    {
        if (_counts.Length < capacitorCount)
        {
            _counts = new (int, int, int)[capacitorCount];
        }

        _counts.AsSpan(0, capacitorCount).Fill((None, 0, 0));
        for (int loop = 0; loop < loops.Count; loop++)
        {
            ReadOnlySpan<int> branches = loops.Branches(loop);
            foreach (int branch in branches)
            {
                if (branch < capacitorCount)
                {
                    _counts[branch].Uses++;
                }
            }

            if (IsOfPortsAndOneCapacitor(branches, capacitorCount))
            {
                ref (int First, int Same, int Uses) own = ref _counts[branches[0]];
                own.First = own.First == None ? loop : own.First;
                own.Same += IsSame(loops, own.First, loop) ? 1 : 0;
            }
        }
    }

    private static bool IsOfPortsAndOneCapacitor(ReadOnlySpan<int> branches, int capacitorCount)
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

    // Both start at the same capacitor and go on through ports, whose order may differ.
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
