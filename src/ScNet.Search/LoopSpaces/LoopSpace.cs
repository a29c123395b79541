namespace ScNet.Search.LoopSpaces;

/// <summary>
/// The loops of one phase as a space of vectors over the branches: input, output, capacitors. It alone decides what
/// the phase does to voltages and charges (docs/theory/atlas.md).
/// </summary>
/// <remarks>
/// Kept as its reduced echelon basis, which is the same for every basis of the space. Loops of a graph are totally
/// unimodular, so that its entries are 0, 1 and −1; a space of up to nine branches fits into one machine word.
/// </remarks>
internal sealed class LoopSpace : IEquatable<LoopSpace>
{
    /// <summary>The column of the input source.</summary>
    public const int InputColumn = 0;

    /// <summary>The column of the output.</summary>
    public const int OutputColumn = 1;

    /// <summary>The column of the first capacitor.</summary>
    public const int FirstCapacitorColumn = 2;

    /// <summary>The most flying capacitors whose spaces have a key of one machine word.</summary>
    public const int MostCapacitors = 8;

    private readonly sbyte[] _rows;

    private LoopSpace(sbyte[] rows, int dimension, int branchCount)
    {
        _rows = rows;
        Dimension = dimension;
        BranchCount = branchCount;
        Key = KeyOf(rows, dimension, branchCount);
    }

    /// <summary>The number of independent loops.</summary>
    public int Dimension { get; }

    /// <summary>Two and the number of capacitors.</summary>
    public int BranchCount { get; }

    /// <summary>The space as a number: pivot columns, then the other entries of the basis. Equal for equal spaces of the same number of branches.</summary>
    public ulong Key { get; }

    /// <summary>A row of the reduced basis, an entry per branch.</summary>
    /// <param name="row">From 0.</param>
    public ReadOnlySpan<sbyte> Row(int row) => _rows.AsSpan(row * BranchCount, BranchCount);

    /// <summary>The space of a wiring's loops.</summary>
    /// <param name="wiring">An admissible wiring.</param>
    public static LoopSpace Of(Wiring wiring)
    {
        int branches = wiring.CapacitorCount + FirstCapacitorColumn;
        Span<sbyte> rows = stackalloc sbyte[branches * branches];
        int loops = BranchForest.Of(wiring).Loops(rows);
        return Of(rows[..(loops * branches)], branches);
    }

    /// <summary>The space that some vectors span; they are reduced in place.</summary>
    /// <param name="vectors">Independent vectors one after the other, of a totally unimodular space.</param>
    /// <param name="branchCount">The length of a vector.</param>
    public static LoopSpace Of(Span<sbyte> vectors, int branchCount)
    {
        int dimension = Reduce(vectors, branchCount);
        return new LoopSpace(vectors[..(dimension * branchCount)].ToArray(), dimension, branchCount);
    }

    /// <summary>Every capacitor lies on a loop.</summary>
    public bool UsesAllCapacitors
    {
        get
        {
            bool usesAll = true;
            for (int column = FirstCapacitorColumn; column < BranchCount; column++)
            {
                bool uses = false;
                for (int row = 0; row < Dimension; row++)
                {
                    uses |= _rows[(row * BranchCount) + column] != 0;
                }

                usesAll &= uses;
            }

            return usesAll;
        }
    }

    /// <summary>
    /// The vectors at right angles to all loops, a row each: the voltages that the phase allows.
    /// </summary>
    public sbyte[][] Complement()
    {
        List<sbyte[]> rows = [];
        uint pivots = Pivots(_rows, Dimension, BranchCount);
        for (int free = 0; free < BranchCount; free++)
        {
            if ((pivots >> free & 1) != 0)
            {
                continue;
            }

            sbyte[] vector = new sbyte[BranchCount];
            vector[free] = 1;
            for (int row = 0, pivot = -1; row < Dimension; row++)
            {
                pivot = NextPivot(pivots, pivot);
                vector[pivot] = (sbyte)-_rows[(row * BranchCount) + free];
            }

            rows.Add(vector);
        }

        return [.. rows];
    }

    /// <summary>The space with its capacitors moved and turned.</summary>
    /// <param name="positions">The position that each capacitor takes.</param>
    /// <param name="turns">A bit per capacitor that is turned round.</param>
    public LoopSpace Moved(ReadOnlySpan<int> positions, int turns)
    {
        Span<sbyte> moved = stackalloc sbyte[_rows.Length];
        WriteMoved(positions, turns, moved);
        return Of(moved, BranchCount);
    }

    /// <summary>Writes the basis with its capacitors moved and turned, not reduced.</summary>
    public void WriteMoved(ReadOnlySpan<int> positions, int turns, Span<sbyte> moved)
    {
        for (int row = 0; row < Dimension; row++)
        {
            ReadOnlySpan<sbyte> from = Row(row);
            Span<sbyte> to = moved.Slice(row * BranchCount, BranchCount);
            to[InputColumn] = from[InputColumn];
            to[OutputColumn] = from[OutputColumn];
            for (int c = 0; c < positions.Length; c++)
            {
                sbyte entry = from[FirstCapacitorColumn + c];
                to[FirstCapacitorColumn + positions[c]] = (turns >> c & 1) == 0 ? entry : (sbyte)-entry;
            }
        }
    }

    /// <summary>Brings rows to reduced echelon form in place, pivots 1.</summary>
    /// <returns>The rank; the rows behind it are zero.</returns>
    public static int Reduce(Span<sbyte> rows, int width)
    {
        int count = rows.Length / width, rank = 0;
        for (int column = 0; column < width && rank < count; column++)
        {
            int found = rank;
            while (found < count && rows[(found * width) + column] == 0)
            {
                found++;
            }

            if (found == count)
            {
                continue;
            }

            Span<sbyte> pivotRow = rows.Slice(rank * width, width);
            Span<sbyte> foundRow = rows.Slice(found * width, width);
            int sign = foundRow[column];
            for (int c = 0; c < width; c++)
            {
                (pivotRow[c], foundRow[c]) = ((sbyte)(sign * foundRow[c]), found == rank ? (sbyte)(sign * foundRow[c]) : pivotRow[c]);
            }

            for (int row = 0; row < count; row++)
            {
                int factor = row == rank ? 0 : rows[(row * width) + column];
                for (int c = column; c < width && factor != 0; c++)
                {
                    rows[(row * width) + c] -= (sbyte)(factor * pivotRow[c]);
                }
            }

            rank++;
        }

        return rank;
    }

    /// <summary>The key of a reduced basis, see <see cref="Key"/>.</summary>
    public static ulong KeyOf(ReadOnlySpan<sbyte> rows, int dimension, int width)
    {
        uint pivots = Pivots(rows, dimension, width);
        ulong key = 1;
        for (int row = 0; row < dimension; row++)
        {
            for (int c = 0; c < width; c++)
            {
                if ((pivots >> c & 1) == 0)
                {
                    // 1 stands for 0, so that 2 and 0 stand for 1 and -1
                    key = (key << 2) | (uint)(rows[(row * width) + c] + 1);
                }
            }
        }

        return (key << width) | pivots;
    }

    public bool Equals(LoopSpace? other) => other is not null && BranchCount == other.BranchCount && Key == other.Key;

    public override bool Equals(object? obj) => Equals(obj as LoopSpace);

    public override int GetHashCode() => Key.GetHashCode();

    private static uint Pivots(ReadOnlySpan<sbyte> rows, int dimension, int width)
    {
        uint pivots = 0;
        for (int row = 0; row < dimension; row++)
        {
            pivots |= 1u << rows.Slice(row * width, width).IndexOfAnyExcept((sbyte)0);
        }

        return pivots;
    }

    private static int NextPivot(uint pivots, int after)
    {
        do
        {
            after++;
        }
        while ((pivots >> after & 1) == 0);
        return after;
    }
}
