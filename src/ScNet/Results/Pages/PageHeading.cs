namespace ScNet.Results.Pages;

/// <summary>A heading within a page.</summary>
/// <param name="text">The words.</param>
/// <param name="level">1 for the parts of the page, 2 for parts of those.</param>
public sealed class PageHeading(string text, int level = 1) : PageBlock
{
    /// <summary>The words.</summary>
    public string Text { get; } = text;

    /// <summary>1 for the parts of the page, 2 for parts of those.</summary>
    public int Level { get; } = level;
}
