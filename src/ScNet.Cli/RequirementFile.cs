using ScNet.Cli.Rendering;
using ScNet.Design.Requirements;
using ScNet.Results.Pages;

namespace ScNet.Cli;

/// <summary>Reads requirement documents for the tool.</summary>
internal static class RequirementFile
{
    /// <summary>The requirement of a file; null where there are errors. Findings go to <paramref name="error"/>, one line each.</summary>
    public static Requirement? Read(string path, TextWriter error)
    {
        RequirementReading reading = RequirementReader.ReadFile(path);
        Report(reading.Diagnostics, path, error);
        return reading.Requirement;
    }

    /// <summary>Writes findings about a file, one line each, with their place in it where they have one.</summary>
    public static void Report(IEnumerable<Diagnostic> diagnostics, string path, TextWriter error)
    {
        foreach (Diagnostic diagnostic in diagnostics)
        {
            error.WriteLine(Printable.Of(diagnostic.Position is null ? $"{path}: {diagnostic}" : diagnostic.ToString()));
        }
    }
}
