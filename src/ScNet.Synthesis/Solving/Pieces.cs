namespace ScNet.Synthesis.Solving;

/// <summary>The pieces into which joined places make terminals fall, the smallest terminal standing for each.</summary>
internal sealed class Pieces
{
    private readonly int[] _piece;

    public Pieces(int terminals) => _piece = [.. Enumerable.Range(0, terminals)];

    /// <summary>The smallest terminal of the piece of a terminal.</summary>
    public int Of(int terminal) => _piece[terminal];

    /// <summary>Joins the pieces of two terminals.</summary>
    /// <returns>False where they are one already.</returns>
    public bool Join(int first, int second)
    {
        (int kept, int old) = (Math.Min(_piece[first], _piece[second]), Math.Max(_piece[first], _piece[second]));
        for (int t = 0; t < _piece.Length; t++)
        {
            _piece[t] = _piece[t] == old ? kept : _piece[t];
        }

        return kept != old;
    }

    /// <summary>Whether places with both ends in a node join all of it.</summary>
    public static bool IsJoined(int block, IReadOnlyList<SwitchPlace> places)
    {
        Pieces pieces = new(32);
        int missing = System.Numerics.BitOperations.PopCount((uint)block) - 1;
        foreach (SwitchPlace place in places)
        {
            if ((block >> place.First & block >> place.Second & 1) == 1 && pieces.Join(place.First, place.Second))
            {
                missing--;
            }
        }

        return missing == 0;
    }
}
