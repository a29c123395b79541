using ScNet.Synthesis.Candidates;

namespace ScNet.Synthesis.Solving;

/// <summary>Places for switches and wires, and the networks that they make.</summary>
/// <param name="Places">The pairs of terminals that are joined by a switch or a wire.</param>
/// <param name="Modes">Per ratio and phase the wiring with its potentials.</param>
internal sealed record Choice(IReadOnlyList<SwitchPlace> Places, IReadOnlyList<IReadOnlyList<PhaseState>> Modes)
{
    /// <summary>What is wired and what is closed, where changes of ratio make a difference; null where it is as you like.</summary>
    public Closings? Closings { get; init; }

    /// <summary>The same without places that no node needs, the later ones going first.</summary>
    public Choice Thinned()
    {
        if (Closings is { } closings)
        {
            return this with { Places = Array.AsReadOnly<SwitchPlace>([.. Places.Where(p => closings.Wires.Contains(p) || closings.Closed.Any(m => m.Any(c => c.Contains(p))))]) };
        }

        List<SwitchPlace> kept = [.. Places];
        int[] blocks = [.. Modes.SelectMany(m => m).SelectMany(s => s.Blocks).Distinct()];
        for (int e = kept.Count - 1; e >= 0; e--)
        {
            SwitchPlace place = kept[e];
            kept.RemoveAt(e);
            if (!blocks.All(block => Pieces.IsJoined(block, kept)))
            {
                kept.Insert(e, place);
            }
        }

        return this with { Places = kept.AsReadOnly() };
    }

    /// <summary>Whether a place needs no switch, as its ends are at one potential in every phase of every ratio.</summary>
    public bool IsWire(SwitchPlace place) => Closings?.Wires.Contains(place) ?? Modes.All(m => m.All(s => s.Potentials[place.First] == s.Potentials[place.Second]));
}
