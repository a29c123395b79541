using System.Globalization;

namespace ScNet.Tests.Documentation;

/// <summary>A check that compares must itself be seen to fail.</summary>
[Collection(ConsoleGroup.Name)]
public sealed class SnippetRunnerTests
{
    [Fact]
    public Task Snippets_of_a_page_share_their_variables_and_see_library_and_fractions() => RunAsync("""
        ```csharp
        PhaseSet phases = 2;
        ```
        ```csharp
        using Fractions;
        Console.WriteLine($"{phases.Count} {new Fraction(2, 4)}");
        ```
        ```text
        1 1/2
        ```
        """);

    [Fact]
    public async Task Snippets_of_two_pages_share_nothing()
    {
        await RunAsync("```csharp\nint onFirstPage = 1;\n```\n");

        await AssertFailsAsync("```csharp\nConsole.WriteLine(onFirstPage);\n```\n", "does not compile");
    }

    [Theory]
    [InlineData("int a = 1", "CS1002")]
    [InlineData("[Obsolete] static int Old() => 1;\nint a = Old();", "CS0612")]
    public Task A_snippet_with_an_error_or_a_warning_fails(string code, string fault) =>
        AssertFailsAsync($"```csharp\n{code}\n```\n", fault);

    [Fact]
    public Task A_snippet_that_throws_fails_with_what_it_threw() =>
        AssertFailsAsync("```csharp\nthrow new InvalidOperationException(\"no ratio\");\n```\n", "no ratio");

    [Fact]
    public async Task A_snippet_that_does_not_end_fails()
    {
        IReadOnlyList<Snippet> endless = SnippetReader.Read("page.md", "```csharp\nawait System.Threading.Tasks.Task.Delay(-1);\n```\n");

        SnippetException failure = await Assert.ThrowsAsync<SnippetException>(
            () => SnippetRunner.RunPageAsync(endless, TimeSpan.FromMilliseconds(100)));

        Assert.IsType<TimeoutException>(failure.InnerException);
    }

    [Theory]
    [InlineData("1/3")]
    [InlineData("1/2\n1/2")]
    [InlineData("")]
    public Task A_snippet_that_prints_something_else_fails_with_both_texts(string promised) => AssertFailsAsync(
        $"```csharp\nConsole.WriteLine(\"1/2\");\n```\n```text\n{promised}\n```\n", $"expected the output\n{promised}\nbut it is\n1/2");

    [Fact]
    public Task Every_snippet_of_a_page_is_compared_with_its_own_output_only() => RunAsync("""
        ```csharp
        Console.WriteLine("first");
        ```
        ```csharp
        Console.WriteLine("second");
        ```
        ```text
        second
        ```
        """);

    [Fact]
    public async Task Numbers_are_printed_as_in_the_pages_whatever_the_culture_of_the_machine()
    {
        CultureInfo culture = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            await RunAsync("```csharp\nConsole.WriteLine($\"{0.5}\");\n```\n```text\n0.5\n```\n");
        }
        finally
        {
            CultureInfo.CurrentCulture = culture;
        }
    }

    [Fact]
    public Task Files_are_found_from_the_root_of_the_repository() => RunAsync("""
        ```csharp
        Console.WriteLine(File.Exists("ScNet.sln"));
        ```
        ```text
        True
        ```
        """);

    [Fact]
    public async Task Console_and_working_folder_are_given_back_after_a_failure()
    {
        TextWriter console = Console.Out;
        string folder = Environment.CurrentDirectory;

        await AssertFailsAsync("```csharp\nthrow new InvalidOperationException();\n```\n", "does not run");

        Assert.Same(console, Console.Out);
        Assert.Equal(folder, Environment.CurrentDirectory);
    }

    private static Task RunAsync(string markdown) => SnippetRunner.RunPageAsync(SnippetReader.Read("page.md", markdown));

    private static async Task AssertFailsAsync(string markdown, string reason)
    {
        SnippetException failure = await Assert.ThrowsAsync<SnippetException>(() => RunAsync(markdown));
        Assert.StartsWith("page.md, line 1: ", failure.Message, StringComparison.Ordinal);
        Assert.Contains(reason, failure.Message, StringComparison.Ordinal);
    }
}
