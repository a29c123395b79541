using ScNet.Search;
using ScNet.Search.LoopSpaces;

namespace ScNet.Synthesis.Candidates;

/// <summary>A loop space of one phase and every wiring in one piece that has it.</summary>
/// <param name="Position">Its position among all.</param>
/// <param name="Space">The loops.</param>
/// <param name="Wirings">The wirings, each leaving no node floating.</param>
internal sealed record PhaseSpace(int Position, LoopSpace Space, IReadOnlyList<Wiring> Wirings)
{
    /// <summary>
    /// Every loop space of so many capacitors by the wirings that leave no node floating, in the order in which
    /// wirings come to them.
    /// </summary>
    /// <remarks>Cost: all ways to join terminals are gone through, 20, 322, 7432 and some 230 000 for 1 to 4 capacitors.</remarks>
    public static IReadOnlyList<PhaseSpace> All(int capacitors)
    {
        Dictionary<LoopSpace, int> positions = [];
        List<(LoopSpace Space, List<Wiring> Wirings)> found = [];
        foreach (Wiring wiring in AdmissibleWirings.Of(capacitors))
        {
            if (BranchForest.Of(wiring).PieceCount > 1)
            {
                continue;
            }

            LoopSpace space = LoopSpace.Of(wiring);
            if (!positions.TryGetValue(space, out int position))
            {
                positions.Add(space, position = found.Count);
                found.Add((space, []));
            }

            found[position].Wirings.Add(wiring);
        }

        return Array.AsReadOnly<PhaseSpace>([.. found.Select((f, i) => new PhaseSpace(i, f.Space, f.Wirings.AsReadOnly()))]);
    }
}
