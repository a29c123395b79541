namespace ScNet.Results.Pages;

/// <summary>
/// A result as a person reads it: headings, figures, tables and remarks, as plain text or as HTML. What a terminal, a report and
/// a notebook show of a result is the same page. Immutable.
/// </summary>
public sealed class Page
{
    /// <summary>A page.</summary>
    /// <param name="title">What the page is about.</param>
    /// <param name="blocks">What stands on it, from the top.</param>
    public Page(string title, IEnumerable<PageBlock> blocks)
    {
        ArgumentNullException.ThrowIfNull(title);
        ArgumentNullException.ThrowIfNull(blocks);
        Title = title;
        Blocks = [.. blocks];
    }

    /// <summary>What the page is about.</summary>
    public string Title { get; }

    /// <summary>What stands on it, from the top.</summary>
    public IReadOnlyList<PageBlock> Blocks { get; }

    /// <summary>The page as plain text: aligned, "\n" line ends, no blanks at the ends of lines, names that cannot be printed escaped.</summary>
    public string ToText() => PageText.Of(this);

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
