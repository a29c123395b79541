using ScNet.Derivations;

namespace ScNet.Cli;

/// <summary>An analysis to compare: of a netlist, or one that was saved as an analysis document.</summary>
internal static class SnapshotFile
{
    private const string JsonEnding = ".json";

    /// <summary>Reads it; null where it cannot be read, which goes to standard error.</summary>
    public static AnalysisSnapshot? Read(string path, ToolSession session)
    {
        if (!path.EndsWith(JsonEnding, StringComparison.OrdinalIgnoreCase))
        {
            return NetlistFile.Read(path, session)?.Reading.Converter is { } converter ? AnalysisSnapshot.Of(converter) : null;
        }

        try
        {
            return AnalysisSnapshot.Load(path);
        }
        catch (ScNetException refusal)
        {
            foreach (Diagnostic diagnostic in refusal.Diagnostics)
            {
                session.Error.WriteLine(Printable.Of($"{diagnostic} Save one with: scnet analyze FILE --format json > {path}"));
            }
        }
        catch (Exception exception) when (exception is FileNotFoundException or DirectoryNotFoundException)
        {
            session.Error.WriteLine(Printable.Of($"{path}: There is no such file. Save one with: scnet analyze FILE --format json > {path}"));
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            session.Error.WriteLine(Printable.Of($"{path}: It cannot be read: {exception.Message}"));
        }

        return null;
    }
}
