using ScNet.Design.Requirements;
using ScNet.Results.Pages;

namespace ScNet.Cli;

/// <summary>Reads requirement documents for the tool.</summary>
internal static class RequirementFile
{
    /// <summary>The requirement of a file or of standard input; null where there are errors. Findings go to standard error, one line each.</summary>
    public static Requirement? Read(string path, ToolSession session)
    {
        RequirementReading? reading = session.Read(path, RequirementReader.Read, RequirementReader.ReadFile);
        Report(reading?.Diagnostics ?? [], path, session.Error);
        return reading?.Requirement;
    }

    /// <summary>Writes findings about a file, one line each, with their place in it where they have one.</summary>
    public static void Report(IEnumerable<Diagnostic> diagnostics, string path, TextWriter error)
    {
        string title = path == ToolSession.InputName ? ToolSession.InputTitle : path;
        foreach (Diagnostic diagnostic in diagnostics)
        {
            error.WriteLine(Printable.Of(diagnostic.Position is null ? $"{title}: {diagnostic}" : diagnostic.ToString()));
        }
    }
}
