namespace ScNet.Results.Pages;

/// <summary>One part of a <see cref="Page"/>: a heading, figures, a table or remarks.</summary>
[ShownAsText("It is a part of a page.")]
public abstract class PageBlock
{
    private protected PageBlock()
    {
    }

    /// <summary>The plain text of this part.</summary>
    public sealed override string ToString() => new Page(string.Empty, [this]).ToText().Trim('\n');
}
