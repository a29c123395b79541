namespace ScNet.Results.Pages;

/// <summary>A table with a heading for each column.</summary>
public sealed class PageTable : PageBlock
{
    /// <summary>A table.</summary>
    /// <param name="caption">What the table shows, with the units and conventions of its columns; empty for none.</param>
    /// <param name="columns">The columns.</param>
    /// <param name="rows">The rows, each with a cell per column.</param>
    /// <param name="nameColumns">How many columns from the left name the row; where a table goes on below, they stand before each piece.</param>
    /// <param name="hasLegend">Whether the meanings of the headings are listed below the table.</param>
    /// <param name="signs">What signs within the cells stand for, listed below the table.</param>
    /// <exception cref="ArgumentException">A row has not one cell per column.</exception>
    public PageTable(
        string caption,
        IEnumerable<PageColumn> columns,
        IEnumerable<IEnumerable<PageCell>> rows,
        int nameColumns = 1,
        bool hasLegend = false,
        IEnumerable<PageFigure>? signs = null)
    {
        ArgumentNullException.ThrowIfNull(caption);
        ArgumentNullException.ThrowIfNull(columns);
        ArgumentNullException.ThrowIfNull(rows);
        Caption = caption;
        Columns = [.. columns];
        Rows = [.. rows.Select(IReadOnlyList<PageCell> (r) => [.. r])];
        NameColumns = Math.Clamp(nameColumns, 0, Columns.Count);
        if (Rows.FirstOrDefault(r => r.Count != Columns.Count) is { } row)
        {
            throw new ArgumentException($"Expected {Columns.Count} cells in each row, one per column, but got {row.Count}.", nameof(rows));
        }

        Legend =
        [
            .. hasLegend
                ? Columns.Where(c => c.Meaning is not null).GroupBy(c => c.Meaning!).Select(g => new PageFigure(string.Join(", ", g.Select(c => c.Heading)), g.Key))
                : [],
            .. signs ?? [],
        ];
    }

    private PageTable(PageTable other, IEnumerable<IReadOnlyList<PageCell>> rows)
    {
        (Caption, Columns, NameColumns, Legend) = (other.Caption, other.Columns, other.NameColumns, other.Legend);
        Rows = [.. rows];
    }

    /// <summary>What the table shows, with the units and conventions of its columns; empty for none.</summary>
    public string Caption { get; }

    /// <summary>The columns.</summary>
    public IReadOnlyList<PageColumn> Columns { get; }

    /// <summary>The rows, each with a cell per column.</summary>
    public IReadOnlyList<IReadOnlyList<PageCell>> Rows { get; }

    /// <summary>How many columns from the left name the row.</summary>
    public int NameColumns { get; }

    /// <summary>What is listed below the table: headings or signs, and what they stand for.</summary>
    public IReadOnlyList<PageFigure> Legend { get; }

    /// <summary>The table with its rows in the order of the first column of a key; itself where it has none.</summary>
    internal PageTable Sorted(string key, bool isDescending)
    {
        int column = Enumerable.Range(0, Columns.Count).FirstOrDefault(c => Columns[c].Key == key, -1);
        if (column < 0)
        {
            return this;
        }

        // a figure without a number has no value, whatever stands for it
        object?[] values = [.. Rows.Select(r => r[column]).Select(object? (c) => c.SortValue is { } number ? number : Columns[column].IsFigure ? null : c.Text)];
        return new PageTable(this, RowOrder.Of(values, isDescending).Select(r => Rows[r]));
    }
}

/// <summary>A column of a table.</summary>
/// <param name="Heading">Its heading.</param>
/// <param name="IsFigure">Whether it holds figures, which are aligned to the right, or words.</param>
/// <param name="Key">The path of the same figure in JSON and CSV, by which rows can be sorted too; null where there is none.</param>
/// <param name="Meaning">What the heading stands for in full; null where it says so itself.</param>
/// <param name="Group">Neighbours of the same group stay together where the table goes on below; null for a column by itself.</param>
public sealed record PageColumn(string Heading, bool IsFigure, string? Key = null, string? Meaning = null, string? Group = null);

/// <summary>A cell of a table.</summary>
/// <param name="Text">What is shown.</param>
/// <param name="SortValue">The number by which rows stand in order of this column; null for that of the text.</param>
public readonly record struct PageCell(string Text, double? SortValue = null)
{
    /// <summary>A cell that is sorted by its text.</summary>
    public static implicit operator PageCell(string text) => new(text);
}
