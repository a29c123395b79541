using ScNet.Analysis;
using ScNet.Design;

namespace ScNet.Cli;

/// <summary>One mode of a file: its analysis, and its comparison where it has a result.</summary>
internal sealed record ModeRow(NetlistFile File, ModeAnalysis Analysis, ModeComparison? Comparison)
{
    public Converter Converter => Analysis.Converter;
}

/// <summary>The comparisons of all modes of one file.</summary>
internal sealed record FileComparison(NetlistFile File, IReadOnlyList<ModeRow> Rows)
{
    /// <summary>Whether the file was read and every mode has a result.</summary>
    public bool IsComplete => File.Reading.Succeeded && Rows.All(r => r.Comparison is not null);

    /// <summary>Compares all modes of a file; the errors of a mode go to <paramref name="error"/>.</summary>
    public static FileComparison Of(NetlistFile file, ComparisonConditions conditions, TextWriter error)
    {
        FileAnalysis analysis = FileAnalysis.Of(file, null, error);
        analysis.ReportFailures(error);
        return new FileComparison(
            file, [.. analysis.Modes.Select(m => new ModeRow(file, m, m.HasResult ? ModeComparison.Of(m, conditions) : null))]);
    }
}
