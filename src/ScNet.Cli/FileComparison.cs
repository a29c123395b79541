using System.Globalization;
using ScNet.Analysis;
using ScNet.Design;
using ScNet.Devices;

namespace ScNet.Cli;

/// <summary>One mode of a file: its analysis, and its comparison where it has a result.</summary>
/// <param name="File">The file.</param>
/// <param name="Outcome">What came of analysing the mode.</param>
/// <param name="Comparison">The comparison, or null where there is no result.</param>
/// <param name="Silicon">The comparison at equal silicon; null where it was not asked for or there is no result.</param>
internal sealed record ModeRow(NetlistFile File, ModeOutcome Outcome, ModeComparison? Comparison, SiliconComparison? Silicon)
{
    public Converter Converter => Outcome.Converter;
}

/// <summary>The comparisons of all modes of one file.</summary>
internal sealed record FileComparison(NetlistFile File, IReadOnlyList<ModeRow> Rows)
{
    // stacks look at every change between two modes: the square of them in time and memory
    private const int MostModesAtEqualSilicon = 128;

    /// <summary>Whether the file was read and compared, and every mode has a result.</summary>
    public bool IsComplete => Rows.Count > 0 && Rows.All(r => r.Comparison is not null);

    /// <summary>Compares all modes of a file, at equal silicon too where asked for; the errors of a mode go to <paramref name="error"/>.</summary>
    public static FileComparison Of(NetlistFile file, ComparisonConditions conditions, bool isSilicon, TextWriter error)
    {
        if (isSilicon && file.Reading.Converter is { Modes.Count: > MostModesAtEqualSilicon } large)
        {
            error.WriteLine(Rendering.Printable.Of(string.Create(
                CultureInfo.InvariantCulture, $"{file.Path}: Expected at most {MostModesAtEqualSilicon} modes for --silicon, but '{large.Name}' has {large.Modes.Count}. Leave the option out, or some modes.")));
            return new FileComparison(file, []);
        }

        FileAnalysis analysis = FileAnalysis.Of(file, null, error);
        analysis.ReportFailures(error);
        ConverterRatings? ratings = isSilicon && analysis.Modes.Any(m => m.HasResult) ? SiliconComparison.Rate(ConverterAnalysis.Of(analysis.Converter!), conditions) : null;
        return new FileComparison(file, [.. analysis.Modes.Select(m => new ModeRow(
            file,
            m,
            m.Analysis is { } found ? ModeComparison.Of(found, conditions) : null,
            m.HasResult && ratings is not null ? SiliconComparison.Of(ratings, m.Mode.Name, conditions) : null))]);
    }
}
