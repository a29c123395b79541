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
        foreach (Diagnostic diagnostic in reading.Diagnostics)
        {
            error.WriteLine(Printable.Of(diagnostic.Position is null ? $"{path}: {diagnostic}" : diagnostic.ToString()));
        }

        return reading.Requirement;
    }
}
