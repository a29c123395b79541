namespace ScNet.Tests.Documentation;

[Collection(ConsoleGroup.Name)]
public sealed class DocumentationTests
{
    public static TheoryData<string> Pages => new(SnippetReader.Pages());

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Every_snippet_of_a_page_compiles_runs_and_prints_what_the_page_says(string page)
    {
        string markdown = await File.ReadAllTextAsync(Path.Combine(RepositoryFiles.Root, page));

        await SnippetRunner.RunPageAsync(SnippetReader.Read(page, markdown));
    }
}
