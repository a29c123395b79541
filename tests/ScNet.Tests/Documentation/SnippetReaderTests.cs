namespace ScNet.Tests.Documentation;

public sealed class SnippetReaderTests
{
    [Fact]
    public void A_snippet_has_its_page_its_line_its_code_and_the_text_block_after_it()
    {
        Snippet snippet = Assert.Single(SnippetReader.Read("page.md", """
            # Title

            ```csharp
            Console.WriteLine(1);
            Console.WriteLine(2);
            ```

            ```text
            1
            2
            ```
            """));

        Assert.Equal("page.md", snippet.Page);
        Assert.Equal(3, snippet.Line);
        Assert.Equal("Console.WriteLine(1);\nConsole.WriteLine(2);", snippet.Code.ReplaceLineEndings("\n"));
        Assert.Equal("1\n2", snippet.ExpectedOutput?.ReplaceLineEndings("\n"));
    }

    [Fact]
    public void A_text_block_after_a_sentence_is_not_the_output()
    {
        Snippet snippet = Assert.Single(SnippetReader.Read("page.md", """
            ```csharp
            int a = 1;
            ```
            Something else:
            ```text
            1
            ```
            """));

        Assert.Null(snippet.ExpectedOutput);
    }

    [Fact]
    public void A_snippet_inside_a_list_is_found()
    {
        Snippet snippet = Assert.Single(SnippetReader.Read("page.md", """
            - First:
              ```csharp
              int a = 1;
              ```
            """));

        Assert.Equal("int a = 1;", snippet.Code);
    }

    [Fact]
    public void Other_languages_are_left_alone() =>
        Assert.Empty(SnippetReader.Read("page.md", "```sh\ndotnet test\n```\n\n```toml\nname = 'x'\n```\n"));

    [Theory]
    [InlineData("csharp norun", "'norun' follows")]
    [InlineData("csharp {.skip}", "'{.skip}' follows")]
    [InlineData("cs", "named 'cs'")]
    [InlineData("c#", "named 'c#'")]
    public void A_fence_that_would_escape_being_run_is_refused_with_its_line(string fence, string reason)
    {
        SnippetException refusal = Assert.Throws<SnippetException>(
            () => SnippetReader.Read("page.md", $"Text.\n\n```{fence}\nint a = 1;\n```\n"));

        Assert.StartsWith("page.md, line 3: ", refusal.Message, StringComparison.Ordinal);
        Assert.Contains(reason, refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fence_that_is_not_closed_is_refused() =>
        Assert.Throws<SnippetException>(() => SnippetReader.Read("page.md", "```csharp\nint a = 1;\n"));

    [Fact]
    public void The_pages_are_the_readme_the_contributors_guide_and_everything_under_docs()
    {
        string[] pages = [.. SnippetReader.Pages()];

        Assert.Contains("README.md", pages);
        Assert.Contains("DEVELOPERS.md", pages);
        Assert.Contains("docs/changelog.md", pages);
    }
}
