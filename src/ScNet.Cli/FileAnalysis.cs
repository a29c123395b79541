using ScNet.Analysis;
using ScNet.Results;

namespace ScNet.Cli;

/// <summary>The analyses of the modes of one file that were asked for.</summary>
internal sealed class FileAnalysis
{
    private FileAnalysis(NetlistFile file, ModeOutcome[] modes, bool isKnown)
    {
        File = file;
        Modes = modes;
        IsKnown = isKnown && file.Reading.HasResult;
    }

    public NetlistFile File { get; }

    /// <summary>The converter, or null where the file could not be read.</summary>
    public Converter? Converter => File.Reading.Converter;

    public IReadOnlyList<ModeOutcome> Modes { get; }

    /// <summary>The analyses of those modes that have a result.</summary>
    public IEnumerable<ModeAnalysis> Results => Modes.Select(m => m.Analysis).OfType<ModeAnalysis>();

    /// <summary>Whether the file was read and has what was asked for.</summary>
    public bool IsKnown { get; }

    /// <summary>Whether everything asked for has a result.</summary>
    public bool IsComplete => IsKnown && Modes.All(m => m.HasResult);

    /// <summary>Analyses all modes of a file, or the one of the given name.</summary>
    /// <param name="file">The file.</param>
    /// <param name="modeName">The name of a mode, or null for all.</param>
    /// <param name="error">Receives what is wrong with the request.</param>
    /// <param name="change">Makes another converter of the one that was read, or none, having said why.</param>
    public static FileAnalysis Of(NetlistFile file, string? modeName, TextWriter error, Func<Converter, Converter?>? change = null)
    {
        Converter? converter = file.Reading.Converter;
        if (converter is not null && change is not null)
        {
            converter = change(converter);
        }

        if (converter is null)
        {
            return new FileAnalysis(file, [], isKnown: !file.Reading.HasResult);
        }

        Mode[] modes = [.. converter.Modes.Where(m => modeName is null || m.Name == modeName)];
        if (modes.Length == 0)
        {
            string known = string.Join(", ", converter.Modes.Select(m => $"'{m.Name}'"));
            error.WriteLine(Printable.Of($"{file.Path}: '{converter.Name}' has no mode '{modeName}'. Its modes: {known}."));
        }

        return new FileAnalysis(file, [.. modes.Select(m => ModeAnalysis.Try(converter, m))], modes.Length > 0);
    }

    /// <summary>Writes the errors of modes without a result, one line each.</summary>
    /// <param name="error">Receives them.</param>
    /// <param name="isTold">Which of these modes are told; all where left out.</param>
    public void ReportFailures(TextWriter error, Func<ModeOutcome, bool>? isTold = null)
    {
        foreach (ModeOutcome mode in Modes.Where(m => !m.HasResult && isTold?.Invoke(m) != false))
        {
            foreach (Diagnostic diagnostic in mode.Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error))
            {
                Report(File.Path, mode, diagnostic, error);
            }
        }
    }

    /// <summary>The row of a mode with what is found of its analysis; why it is refused, if it is, goes to <paramref name="error"/>.</summary>
    public static ResultRow<T> Row<T>(string path, ModeOutcome mode, TextWriter error, Func<ModeAnalysis, T> find)
        where T : class => Told(mode, error, ResultRow.Find(path, mode, find));

    /// <summary>A row of a mode; what is wrong beyond the mode itself goes to <paramref name="error"/>.</summary>
    public static ResultRow<T> Told<T>(ModeOutcome mode, TextWriter error, ResultRow<T> row)
        where T : class
    {
        foreach (Diagnostic diagnostic in row.Diagnostics.Except(mode.Diagnostics).Where(d => d.Severity == DiagnosticSeverity.Error))
        {
            Report(row.File!, mode, diagnostic, error);
        }

        return row;
    }

    private static void Report(string path, ModeOutcome mode, Diagnostic diagnostic, TextWriter error) =>
        error.WriteLine(Printable.Of($"{path}: mode '{mode.Mode.Name}': error {diagnostic.Code}: {diagnostic.Message}"));
}
