namespace ScNet.Numerics;

/// <summary>
/// The columns of a sparse matrix in a basis in which few of them share a row. Many ways that all come back
/// through the same branch make a row of many entries; in their place stand the differences of neighbours,
/// which do not pass the branch at all.
/// </summary>
internal sealed class ThinColumns
{
    private const int MostInRow = 4;
    private const int LongestColumn = 64;
    private const int Rounds = 12;

    // No column is reduced by a large multiple of another, which would drown its other entries.
    private const double LargestRatio = 4;

    // What is left of equal entries is rounding below this share of them.
    private const double Rounding = 1e-14;

    // column -= ratio · earlier, in the order done
    private readonly List<(int Column, int Earlier, double Ratio)> _steps = [];

    private ThinColumns(SparseVector[] columns) => Columns = columns;

    public SparseVector[] Columns { get; }

    /// <summary>Thins out. Cost: linear in the entries, for a bounded number of rounds.</summary>
    public static ThinColumns Of(SparseVector[] columns)
    {
        ThinColumns thin = new([.. columns]);
        for (int round = 0; round < Rounds && thin.Round(); round++)
        {
        }

        return thin;
    }

    /// <summary>A row vector over the first columns, such as what each delivers, over the thin ones.</summary>
    public double[] Row(ReadOnlySpan<double> first)
    {
        double[] row = [.. first];
        foreach ((int column, int earlier, double ratio) in _steps)
        {
            row[column] -= ratio * row[earlier];
        }

        return row;
    }

    /// <summary>Amounts of the thin columns as amounts of the first ones, in place.</summary>
    public void ToFirst(Span<double> amounts)
    {
        for (int k = _steps.Count - 1; k >= 0; k--)
        {
            (int column, int earlier, double ratio) = _steps[k];
            amounts[earlier] -= ratio * amounts[column];
        }
    }

    private bool Round()
    {
        bool hasChanged = false;
        var isTaken = new bool[Columns.Length];
        foreach ((int index, List<int> members) in SparseRowsOf(Columns).Where(r => r.Members.Count > MostInRow).OrderByDescending(r => r.Members.Count))
        {
            int[] free = [.. members.Where(c => !isTaken[c] && Columns[c].Count <= LongestColumn)];
            if (free.Length <= MostInRow)
            {
                continue;
            }

            Array.ForEach(free, c => isTaken[c] = true);

            // from the last to the first, so that each is reduced by its neighbour as that was
            for (int k = free.Length - 1; k > 0; k--)
            {
                (int column, int earlier) = (free[k], free[k - 1]);
                double ratio = Columns[column][index] / Columns[earlier][index];
                if (Math.Abs(ratio) <= LargestRatio)
                {
                    hasChanged = true;
                    Columns[column] = SparseVector.Combination(1, Columns[column], -ratio, Columns[earlier], rounding: Rounding).Weighted(i => i == index ? 0 : 1);
                    _steps.Add((column, earlier, ratio));
                }
            }
        }

        return hasChanged;
    }

    /// <summary>The columns with an entry in each row, ascending.</summary>
    public static IEnumerable<(int Index, List<int> Members)> SparseRowsOf(SparseVector[] columns)
    {
        SortedDictionary<int, List<int>> rows = [];
        for (int c = 0; c < columns.Length; c++)
        {
            foreach (int index in columns[c].Indices)
            {
                if (!rows.TryGetValue(index, out List<int>? members))
                {
                    rows.Add(index, members = []);
                }

                members.Add(c);
            }
        }

        return rows.Select(r => (r.Key, r.Value));
    }
}
