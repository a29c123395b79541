namespace ScNet.Tests.Documentation;

[Collection(ConsoleGroup.Name)]
public sealed class DocumentationTests
{
    // pages that rank all candidates of the example, or search for seconds
    private static readonly string[] s_long = ["README.md", "docs/guide/from-requirement-to-netlist.md", "docs/guide/smallest-converters.md", "docs/guide/finding-networks.md"];

    public static TheoryData<string> Pages => new(SnippetReader.Pages().Except(s_long));

    public static TheoryData<string> LongPages => new(s_long);

    [Theory]
    [MemberData(nameof(Pages))]
    public Task Every_snippet_of_a_page_compiles_runs_and_prints_what_the_page_says(string page) => RunAsync(page);

    [Theory]
    [Trait("Length", "Long")]
    [MemberData(nameof(LongPages))]
    public Task Every_snippet_of_a_page_with_much_work_does_so_too(string page) => RunAsync(page);

    private static async Task RunAsync(string page)
    {
        Assert.Contains(page, SnippetReader.Pages());
        string markdown = await File.ReadAllTextAsync(Path.Combine(RepositoryFiles.Root, page));
        await SnippetRunner.RunPageAsync(SnippetReader.Read(page, markdown));
    }
}
