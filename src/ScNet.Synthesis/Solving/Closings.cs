using ScNet.Synthesis.Candidates;

namespace ScNet.Synthesis.Solving;

/// <summary>What of a choice is wired for good, and what is closed in which phase.</summary>
/// <param name="Wires">The places that are wires.</param>
/// <param name="Closed">Per ratio and phase the places whose switch is closed.</param>
internal sealed record Closings(IReadOnlyList<SwitchPlace> Wires, IReadOnlyList<IReadOnlyList<IReadOnlyList<SwitchPlace>>> Closed)
{
    /// <summary>Closed switches without those that no node of a state needs, the later ones going first.</summary>
    public static IReadOnlyList<SwitchPlace> Needed(PhaseState state, IReadOnlyList<SwitchPlace> wires, IReadOnlyList<SwitchPlace> closed)
    {
        List<SwitchPlace> kept = [.. closed];
        for (int e = kept.Count - 1; e >= 0; e--)
        {
            SwitchPlace place = kept[e];
            kept.RemoveAt(e);
            if (!state.Blocks.All(block => Pieces.IsJoined(block, [.. wires, .. kept])))
            {
                kept.Insert(e, place);
            }
        }

        return kept.AsReadOnly();
    }
}
