using System.Numerics;

namespace ScNet.Search.Networks;

/// <summary>Which of up to 32 things hang together: with each of them the set of those that do.</summary>
internal static class Pieces
{
    /// <summary>Everything apart, several times over.</summary>
    /// <param name="pieces">A set per thing, one round of things after the other.</param>
    /// <param name="things">The number of things.</param>
    public static void Separate(Span<uint> pieces, int things)
    {
        for (int p = 0; p < pieces.Length; p++)
        {
            pieces[p] = 1u << (p % things);
        }
    }

    /// <summary>Joins two things; false where they hang together already.</summary>
    public static bool Join(Span<uint> pieces, int first, int second)
    {
        uint joined = pieces[first] | pieces[second];
        if (pieces[first] == joined)
        {
            return false;
        }

        for (uint left = joined; left != 0; left &= left - 1)
        {
            pieces[BitOperations.TrailingZeroCount(left)] = joined;
        }

        return true;
    }
}
