namespace ScNet.Results.Pages;

/// <summary>
/// A result as a person reads it: headings, figures, tables and remarks, as plain text or as HTML. What a terminal, a report and
/// a notebook show of a result is the same page. Immutable.
/// </summary>
public sealed class Page
{
    /// <summary>The most columns of a line of text where nothing else is asked for.</summary>
    public const int UsualWidth = 100;

    private const int NarrowestWidth = 40;

    /// <summary>A page.</summary>
    /// <param name="title">What the page is about.</param>
    /// <param name="blocks">What stands on it, from the top.</param>
    /// <param name="isComplete">Whether everything that was asked for has a result.</param>
    public Page(string title, IEnumerable<PageBlock> blocks, bool isComplete = true)
    {
        ArgumentNullException.ThrowIfNull(title);
        ArgumentNullException.ThrowIfNull(blocks);
        Title = title;
        Blocks = [.. blocks];
        IsComplete = isComplete;
    }

    /// <summary>What the page is about.</summary>
    public string Title { get; }

    /// <summary>What stands on it, from the top.</summary>
    public IReadOnlyList<PageBlock> Blocks { get; }

    /// <summary>Whether everything that was asked for has a result; what has none is said on the page.</summary>
    public bool IsComplete { get; }

    /// <summary>The page with the rows of its tables in the order of a column, where they have it; other tables stay as they are.</summary>
    /// <param name="column">The column's key (<see cref="PageColumn.Key"/>).</param>
    /// <param name="isDescending">Whether the largest comes first; rows without a value are last either way.</param>
    public Page Sorted(string column, bool isDescending = false)
    {
        ArgumentNullException.ThrowIfNull(column);
        return new Page(Title, Blocks.Select(b => b is PageTable table ? table.Sorted(column, isDescending) : b), IsComplete);
    }

    /// <summary>
    /// The page as plain text: aligned, "\n" line ends, no blanks at the ends of lines, names that cannot be printed escaped.
    /// A line that is too long goes on below, and so does a table, with the names of its rows in front of each piece: nothing is cut.
    /// </summary>
    /// <param name="width">The most columns of a line, a wide letter counted as two.</param>
    /// <param name="hasColour">Whether headings and cautions are marked by the escape sequences of ECMA-48, for a terminal.</param>
    /// <exception cref="ArgumentOutOfRangeException">The width is below 40.</exception>
    public string ToText(int width = UsualWidth, bool hasColour = false)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(width, NarrowestWidth);
        return PageText.Of(this, width, hasColour);
    }

    /// <summary>The page as a fragment of HTML 5, every name escaped; for a notebook or a report.</summary>
    /// <param name="headingLevel">The level of the title as a heading, 1 to 4; those within the page stand one and two below it.</param>
    /// <exception cref="ArgumentOutOfRangeException">The level is not within 1 to 4.</exception>
    public string ToHtml(int headingLevel = 2)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(headingLevel, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(headingLevel, 4);
        return PageHtml.Of(this, headingLevel);
    }

    /// <summary>The plain text.</summary>
    public override string ToString() => ToText();
}
