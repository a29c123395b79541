namespace ScNet.Reporting.Drawings;

/// <summary>
/// How far apart columns must stand so that nothing of one touches anything of another. What a column holds keeps its
/// height and its place beside the column's wire, so each pair of boxes that meet in height asks for a distance, and
/// every column stands as far left as those before it allow.
/// </summary>
/// <remarks>Compaction along one axis, T. Lengauer, "Combinatorial Algorithms for Integrated Circuit Layout", 1990 (from memory).</remarks>
internal sealed class ColumnSpacing(int columnCount)
{
    private const int Margin = 8;
    private const int LeastPitch = 28;

    private readonly List<SheetBox>[] _boxes = [.. Enumerable.Range(0, columnCount).Select(_ => new List<SheetBox>())];
    private int[]? _positions;

    /// <summary>Reserves room.</summary>
    /// <param name="column">The column.</param>
    /// <param name="box">The room, x counted from the column's wire.</param>
    public void Add(int column, SheetBox box)
    {
        _boxes[column].Add(box);
        _positions = null;
    }

    /// <summary>The x of every column's wire.</summary>
    public int[] Positions()
    {
        if (_positions is { } known)
        {
            return known;
        }

        int[] x = new int[_boxes.Length];
        for (int j = 0; j < x.Length; j++)
        {
            x[j] = j == 0 ? 0 : x[j - 1] + LeastPitch;
            foreach (SheetBox box in _boxes[j])
            {
                x[j] = Math.Max(x[j], -box.Left);
                for (int i = 0; i < j; i++)
                {
                    foreach (SheetBox other in _boxes[i])
                    {
                        if (other.Top < box.Bottom && box.Top < other.Bottom)
                        {
                            x[j] = Math.Max(x[j], x[i] + other.Right + Margin - box.Left);
                        }
                    }
                }
            }
        }

        return _positions = x;
    }

    /// <summary>By how much others would have to make room for one more box.</summary>
    public int Push(int column, SheetBox box)
    {
        int[] x = Positions();
        int push = 0;
        for (int i = 0; i < x.Length; i++)
        {
            foreach (SheetBox other in _boxes[i])
            {
                if (other.Top < box.Bottom && box.Top < other.Bottom && i != column)
                {
                    int room = i < column ? x[column] + box.Left - x[i] - other.Right : x[i] + other.Left - x[column] - box.Right;
                    push = Math.Max(push, Margin - room);
                }
            }
        }

        return push;
    }

    /// <summary>How far a column reaches to the left and to the right within some height.</summary>
    public (int Left, int Right) Covered(int column, int top, int bottom)
    {
        IEnumerable<SheetBox> boxes = _boxes[column].Where(b => b.Top < bottom && top < b.Bottom);
        return (boxes.Select(b => b.Left).DefaultIfEmpty(0).Min(), boxes.Select(b => b.Right).DefaultIfEmpty(0).Max());
    }

    /// <summary>The width of all columns at their places.</summary>
    public int Width(int[] positions) => _boxes.Select((b, c) => positions[c] + b.Select(box => box.Right).DefaultIfEmpty(0).Max()).Max();
}
