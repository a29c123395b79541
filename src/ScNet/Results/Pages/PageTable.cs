namespace ScNet.Results.Pages;

/// <summary>A table with a heading for each column.</summary>
/// <param name="caption">What the table shows, with the units and conventions of its columns; empty for none.</param>
/// <param name="columns">The columns.</param>
/// <param name="rows">The rows, each with a cell per column.</param>
public sealed class PageTable(string caption, IEnumerable<PageColumn> columns, IEnumerable<IEnumerable<PageCell>> rows) : PageBlock
{
    /// <summary>What the table shows, with the units and conventions of its columns; empty for none.</summary>
    public string Caption { get; } = caption;

    /// <summary>The columns.</summary>
    public IReadOnlyList<PageColumn> Columns { get; } = [.. columns];

    /// <summary>The rows, each with a cell per column.</summary>
    public IReadOnlyList<IReadOnlyList<PageCell>> Rows { get; } = [.. rows.Select(IReadOnlyList<PageCell> (r) => [.. r])];
}

/// <summary>A column of a table.</summary>
/// <param name="Heading">Its heading.</param>
/// <param name="IsFigure">Whether it holds figures, which are aligned to the right, or words.</param>
/// <param name="Key">The same figure in CSV, by which it can be sorted too; null where there is none.</param>
/// <param name="Meaning">What the heading stands for in full; null where it says so itself.</param>
public sealed record PageColumn(string Heading, bool IsFigure, string? Key = null, string? Meaning = null);

/// <summary>A cell of a table.</summary>
/// <param name="Text">What is shown.</param>
/// <param name="SortValue">The number by which rows stand in order of this column; null for that of the text.</param>
public readonly record struct PageCell(string Text, double? SortValue = null)
{
    /// <summary>A cell that is sorted by its text.</summary>
    public static implicit operator PageCell(string text) => new(text);
}
