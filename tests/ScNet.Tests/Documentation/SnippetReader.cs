using Markdig;
using Markdig.Syntax;

namespace ScNet.Tests.Documentation;

/// <summary>Takes the C# snippets out of a page. None can opt out of being run.</summary>
internal static class SnippetReader
{
    private static readonly string[] _otherSpellings = ["c#", "cs", "C#", "CSharp", "Csharp", "CS"];

    /// <summary>The pages of the repository that may hold snippets, relative to its root, with forward slashes.</summary>
    public static IEnumerable<string> Pages()
    {
        string docs = Path.Combine(RepositoryFiles.Root, "docs");
        IEnumerable<string> guide = Directory.Exists(docs)
            ? Directory.EnumerateFiles(docs, "*.md", SearchOption.AllDirectories)
                .Select(file => Path.GetRelativePath(RepositoryFiles.Root, file).Replace('\\', '/'))
                .Order(StringComparer.Ordinal)
            : [];
        return ["README.md", "DEVELOPERS.md", .. guide];
    }

    /// <summary>The snippets of a page in their order.</summary>
    /// <exception cref="SnippetException">A fence names C# in another way than by the single word csharp, or is not closed.</exception>
    public static IReadOnlyList<Snippet> Read(string page, string markdown)
    {
        List<Snippet> snippets = [];
        foreach (FencedCodeBlock block in Markdown.Parse(markdown).Descendants<FencedCodeBlock>())
        {
            int line = block.Line + 1;
            if (_otherSpellings.Contains(block.Info))
            {
                throw new SnippetException(page, line, $"expected a fence named 'csharp', but it is named '{block.Info}'.");
            }

            if (block.Info != "csharp")
            {
                continue;
            }

            if (!string.IsNullOrWhiteSpace(block.Arguments))
            {
                throw new SnippetException(
                    page, line, $"expected 'csharp' alone on the fence, but '{block.Arguments}' follows: every snippet is run.");
            }

            if (block.ClosingFencedCharCount == 0)
            {
                throw new SnippetException(page, line, "expected the fence to be closed, but the page ends first.");
            }

            snippets.Add(new Snippet(page, line, block.Lines.ToString(), OutputAfter(block)));
        }

        return snippets;
    }

    private static string? OutputAfter(FencedCodeBlock block)
    {
        ContainerBlock parent = block.Parent!;
        int next = parent.IndexOf(block) + 1;
        return next < parent.Count && parent[next] is FencedCodeBlock { Info: "text" } output ? output.Lines.ToString() : null;
    }
}
