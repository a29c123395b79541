using System.Globalization;
using System.Reflection;
using Fractions;
using Microsoft.CodeAnalysis.CSharp.Scripting;
using Microsoft.CodeAnalysis.Scripting;
using ScNet.Derivations;
using Severity = Microsoft.CodeAnalysis.DiagnosticSeverity;

namespace ScNet.Tests.Documentation;

/// <summary>
/// Compiles and runs the snippets of one page as one program, each going on where the one before it ended,
/// and compares what each prints. Redirects the console and changes the working folder to the root of the
/// repository: a test that calls it belongs to the collection <see cref="ConsoleGroup"/>.
/// </summary>
internal static class SnippetRunner
{
    private static readonly TimeSpan _patience = TimeSpan.FromMinutes(15);

    // A newer version of a platform assembly than a package was built with: the SDK silences it in every project.
    private static readonly string[] _silencedByEveryProject = ["CS1701", "CS1702"];

    private static readonly Assembly[] _libraries = [typeof(Converter).Assembly, typeof(Derivation).Assembly, typeof(Reporting.Picture).Assembly, typeof(Search.Atlas).Assembly, typeof(Synthesis.SmallestConverter).Assembly];

    private static readonly ScriptOptions _options = ScriptOptions.Default
        .AddReferences(_libraries)
        .AddReferences(typeof(Reporting.Picture).Assembly, typeof(Fraction).Assembly, typeof(Assert).Assembly, typeof(FactAttribute).Assembly)
        .AddImports(["System", "System.Collections.Generic", "System.IO", "System.Linq", .. NamespacesOfTheLibrary()]);

    /// <summary>Runs the snippets of one page in their order.</summary>
    /// <param name="snippets">The snippets.</param>
    /// <param name="patience">How long one snippet may take; long enough for a busy machine where left out.</param>
    /// <exception cref="SnippetException">
    /// A snippet gives an error or a warning when compiled, throws, takes too long or prints something else
    /// than expected.
    /// </exception>
    public static async Task RunPageAsync(IEnumerable<Snippet> snippets, TimeSpan? patience = null)
    {
        string folder = Environment.CurrentDirectory;
        TextWriter console = Console.Out;
        try
        {
            Environment.CurrentDirectory = RepositoryFiles.Root;
            ScriptState<object>? state = null;
            foreach (Snippet snippet in snippets)
            {
                await using StringWriter output = new(CultureInfo.InvariantCulture);
                Console.SetOut(TextWriter.Synchronized(output));
                state = await RunAsync(snippet, state, patience ?? _patience);
                Compare(snippet, output.ToString());
            }
        }
        finally
        {
            Console.SetOut(console);
            Environment.CurrentDirectory = folder;
        }
    }

    private static IEnumerable<string> NamespacesOfTheLibrary() =>
        _libraries.SelectMany(a => a.GetExportedTypes()).Select(t => t.Namespace).OfType<string>().Distinct();

    private static async Task<ScriptState<object>> RunAsync(Snippet snippet, ScriptState<object>? before, TimeSpan patience)
    {
        Script<object> script = before is null
            ? CSharpScript.Create(snippet.Code, _options)
            : before.Script.ContinueWith(snippet.Code, _options);
        string faults = string.Join("; ", script.Compile()
            .Where(d => d.Severity >= Severity.Warning && !_silencedByEveryProject.Contains(d.Id)));
        if (faults.Length > 0)
        {
            throw new SnippetException(snippet.Page, snippet.Line, $"does not compile cleanly: {faults}");
        }

        try
        {
            // On a thread of its own, so that an endless snippet ends the test and not the test run.
            return await Task.Run(async () =>
            {
                CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
                return before is null ? await script.RunAsync() : await script.RunFromAsync(before);
            }).WaitAsync(patience);
        }
        catch (Exception cause)
        {
            throw new SnippetException(snippet.Page, snippet.Line, $"does not run: {cause.Message}", cause);
        }
    }

    private static void Compare(Snippet snippet, string output)
    {
        if (snippet.ExpectedOutput is null)
        {
            return;
        }

        string expected = Normalised(snippet.ExpectedOutput);
        string actual = Normalised(output);
        if (expected != actual)
        {
            throw new SnippetException(snippet.Page, snippet.Line, $"expected the output\n{expected}\nbut it is\n{actual}");
        }
    }

    // Line ends and blanks at the end of a line are the editor's, not the reader's.
    private static string Normalised(string text) =>
        string.Join('\n', text.ReplaceLineEndings("\n").Split('\n').Select(line => line.TrimEnd())).TrimEnd('\n');
}
