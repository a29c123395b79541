namespace ScNet.Search.LoopSpaces;

/// <summary>
/// The least of all lists of loop spaces, one per phase, that a network's list becomes by renaming and turning capacitors and
/// by putting its phases in another order, and every way in which it becomes it.
/// </summary>
/// <remarks>
/// The first phase is brought to its canonical form; what else does that are the elements that leave the form as it is, and
/// among them the rest of the phases decides. Cost: orders of phases · order of a stabiliser · branches³.
/// </remarks>
internal sealed class PhasesForm
{
    private readonly List<PhasesWay> _ways = [];
    private ulong[] _keys = [];

    private PhasesForm()
    {
    }

    /// <summary>The keys of the spaces of the least list: equal for networks that become one another, and for no others of as many capacitors.</summary>
    public ReadOnlySpan<ulong> Keys => _keys;

    /// <summary>Every way to get there.</summary>
    public IReadOnlyList<PhasesWay> Ways => _ways;

    /// <summary>The form of a list.</summary>
    /// <param name="phases">A space per phase, all of the same capacitors.</param>
    public static PhasesForm Of(IReadOnlyList<LoopSpace> phases)
    {
        PhasesForm form = new();
        foreach (int[] order in CapacitorMap.Permutations(phases.Count))
        {
            form.Try([.. order.Select(p => phases[p])], order);
        }

        return form;
    }

    private void Try(LoopSpace[] phases, int[] order)
    {
        int capacitors = phases[0].BranchCount - LoopSpace.FirstCapacitorColumn;
        SignedPermutations group = new(capacitors);
        int[] positions = new int[capacitors], kept = new int[capacitors];
        CanonicalForm.Of(phases[0], positions, out int turns);
        foreach (int element in LoopSpaceOrbit.StabiliserOf(phases[0].Moved(positions, turns)))
        {
            int[] composed = new int[capacitors];
            int keptTurns = group.Read(element, kept);
            int composedTurns = SignedPermutations.Compose(positions, turns, kept, keptTurns, composed);
            ulong[] keys = [.. phases.Select(p => p.Moved(composed, composedTurns).Key)];
            int compared = _ways.Count == 0 ? -1 : keys.AsSpan().SequenceCompareTo(_keys);
            if (compared < 0)
            {
                _ways.Clear();
                _keys = keys;
            }

            if (compared <= 0)
            {
                _ways.Add(new PhasesWay(order, composed, composedTurns));
            }
        }
    }
}

/// <summary>A renumbering of phases and capacitors.</summary>
/// <param name="Order">Which phase comes at each place.</param>
/// <param name="Positions">The position that each capacitor takes.</param>
/// <param name="Turns">A bit per capacitor that is turned.</param>
internal sealed record PhasesWay(int[] Order, int[] Positions, int Turns);
