using System.Numerics;

namespace ScNet.Search.LoopSpaces;

/// <summary>The least of all spaces that a space becomes by renaming and turning capacitors, and how it becomes it.</summary>
/// <remarks>
/// Capacitors that differ in the loops they take part in are never exchanged: each gets a colour from the unions of
/// loops that contain it, refined once by the colours it meets there, and only orders within equal colours are tried.
/// The turns follow from the order: reading the reduced basis row by row, each entry whose sign is still free is made
/// positive. Cost: orders tried · branches³; mostly one, at the worst k!.
/// </remarks>
internal ref struct CanonicalForm
{
    private readonly LoopSpace _space;
    private readonly int _capacitors;
    private readonly Span<int> _positions;
    private readonly Span<int> _order;
    private readonly Span<ulong> _colours;
    private uint _placed;
    private ulong _best;

    private CanonicalForm(LoopSpace space, Span<int> positions, Span<int> order, Span<ulong> colours)
    {
        _space = space;
        _capacitors = positions.Length;
        _positions = positions;
        _order = order;
        _colours = colours;
        _best = ulong.MaxValue;
    }

    /// <summary>The turns that belong to the positions found.</summary>
    public int Turns { get; private set; }

    /// <summary>Finds the form.</summary>
    /// <param name="space">A space.</param>
    /// <param name="positions">Receives the position that each capacitor takes in it.</param>
    /// <param name="turns">A bit per capacitor that is turned.</param>
    /// <returns>The key of the form.</returns>
    public static ulong Of(LoopSpace space, Span<int> positions, out int turns)
    {
        Span<ulong> colours = stackalloc ulong[positions.Length];
        Span<int> order = stackalloc int[positions.Length];
        Paint(space, colours);
        CanonicalForm form = new(space, positions, order, colours);
        form.Place(0);
        turns = form.Turns;
        return form._best;
    }

    /// <summary>A number per capacitor, equal for capacitors that some renaming may exchange.</summary>
    public static void Paint(LoopSpace space, Span<ulong> colours)
    {
        int dimension = space.Dimension, branches = space.BranchCount;
        Span<uint> rows = stackalloc uint[dimension], unions = stackalloc uint[1 << dimension];
        for (int row = 0; row < dimension; row++)
        {
            for (int c = 0; c < branches; c++)
            {
                rows[row] |= (uint)(space.Row(row)[c] & 1) << c;
            }
        }

        // sums of loops modulo two: the sets of branches that closed paths run through
        for (int union = 1; union < unions.Length; union++)
        {
            unions[union] = unions[union & (union - 1)] ^ rows[BitOperations.TrailingZeroCount(union)];
        }

        Span<ulong> refined = stackalloc ulong[colours.Length];
        colours.Clear();
        for (int round = 0; round < 2; round++)
        {
            refined.Clear();
            foreach (uint union in unions)
            {
                ulong met = Mix(((ulong)BitOperations.PopCount(union) << 2) | (union & 3));
                for (int c = 0; c < colours.Length; c++)
                {
                    met += (union >> (c + LoopSpace.FirstCapacitorColumn) & 1) != 0 ? Mix(colours[c]) : 0;
                }

                met = Mix(met);
                for (int c = 0; c < colours.Length; c++)
                {
                    refined[c] += (union >> (c + LoopSpace.FirstCapacitorColumn) & 1) != 0 ? met : 0;
                }
            }

            refined.CopyTo(colours);
        }
    }

    // gives position after position to the capacitors of the least colour that are left
    private void Place(int position)
    {
        if (position == _capacitors)
        {
            Try();
            return;
        }

        ulong least = ulong.MaxValue;
        for (int c = 0; c < _capacitors; c++)
        {
            least = (_placed >> c & 1) == 0 ? Math.Min(least, _colours[c]) : least;
        }

        for (int c = 0; c < _capacitors; c++)
        {
            if ((_placed >> c & 1) == 0 && _colours[c] == least)
            {
                _placed |= 1u << c;
                _order[c] = position;
                Place(position + 1);
                _placed &= ~(1u << c);
            }
        }
    }

    private void Try()
    {
        int width = _space.BranchCount;
        Span<sbyte> rows = stackalloc sbyte[_space.Dimension * width];
        _space.WriteMoved(_order, 0, rows);
        LoopSpace.Reduce(rows, width);
        int turned = Signs.Settle(rows, width);
        ulong key = LoopSpace.KeyOf(rows, _space.Dimension, width);
        if (key >= _best)
        {
            return;
        }

        _best = key;
        _order.CopyTo(_positions);
        Turns = 0;
        for (int c = 0; c < _capacitors; c++)
        {
            Turns |= (turned >> _order[c] & 1) << c;
        }
    }

    private static ulong Mix(ulong value)
    {
        value = (value + 0x9E3779B97F4A7C15) * 0xBF58476D1CE4E5B9;
        value = (value ^ (value >> 29)) * 0x94D049BB133111EB;
        return value ^ (value >> 31);
    }
}
