using ScNet.Design.Requirements;
using ScNet.Devices;
using ScNet.Results.Pages;

namespace ScNet.Cli;

/// <summary>The process of a requirement document.</summary>
internal static class ProcessFile
{
    /// <summary>Reads it where there is a file; what is wrong goes to <paramref name="error"/>.</summary>
    /// <returns>Whether the file was read, or none was asked for.</returns>
    public static bool TryRead(string? path, TextWriter error, out Process? process)
    {
        process = null;
        if (path is null)
        {
            return true;
        }

        RequirementReading reading = RequirementReader.ReadFile(path);
        foreach (Diagnostic diagnostic in reading.Diagnostics)
        {
            error.WriteLine(Printable.Of(diagnostic.ToString()));
        }

        process = reading.Requirement?.Process;
        return process is not null;
    }
}
