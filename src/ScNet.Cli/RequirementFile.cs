using ScNet.Design.Requirements;
using ScNet.Devices;

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

    /// <summary>The process of the requirement that an option names; null where none is named.</summary>
    /// <returns>Whether it could be read, or nothing had to be.</returns>
    public static bool TryReadProcess(string? path, ToolSession session, out Process? process)
    {
        process = path is null ? null : Read(path, session)?.Process;
        return path is null || process is not null;
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
