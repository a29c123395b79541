using System.Globalization;
using ScNet.Analysis;
using ScNet.Design;
using ScNet.Design.Losses;
using ScNet.Devices;
using ScNet.Results;
using ScNet.SteadyState;

namespace ScNet.Cli;

/// <summary>The comparisons of all modes of one file.</summary>
internal sealed record FileComparison(NetlistFile File, IReadOnlyList<ResultRow<ComparedMode>> Rows)
{
    // stacks look at every change between two modes: the square of them in time and memory
    private const int MaximumModesAtEqualSilicon = 128;

    /// <summary>Whether the file was read and compared, and every mode has all results that were asked for.</summary>
    public bool IsComplete => Rows.Count > 0 && Rows.All(r => r.Result is not null) && HasDevices;

    private bool HasDevices { get; init; } = true;

    /// <summary>Compares all modes of a file, at equal silicon, at a load and with devices too where asked for; the errors of a mode go to <paramref name="error"/>.</summary>
    public static FileComparison Of(NetlistFile file, ComparisonConditions conditions, bool isSilicon, double? loadAmperes, Process? process, TextWriter error)
    {
        if (isSilicon && file.Reading.Converter is { Modes.Count: > MaximumModesAtEqualSilicon } large)
        {
            error.WriteLine(Printable.Of(string.Create(
                CultureInfo.InvariantCulture, $"{file.Path}: Expected at most {MaximumModesAtEqualSilicon} modes for --silicon, but '{large.Name}' has {large.Modes.Count}. Leave the option out, or some modes.")));
            return new FileComparison(file, []);
        }

        if (!file.Reading.HasResult)
        {
            return new FileComparison(file, [ResultRow.Unreadable<ComparedMode>(file.Path, file.Reading.Diagnostics)]);
        }

        FileAnalysis analysis = FileAnalysis.Of(file, null, error);
        analysis.ReportFailures(error);
        ConverterRatings? ratings = isSilicon && analysis.Modes.Any(m => m.HasResult) ? SiliconComparison.Rate(ConverterAnalysis.Of(analysis.Converter!), conditions) : null;
        SizedConverter? sized = process is not null && loadAmperes is { } load ? FileSizes.AtTotals(file.Path, analysis, conditions, load, process, error) : null;
        return new FileComparison(file, [.. analysis.Modes.Select(m => FileAnalysis.Row(file.Path, m, error, found => new ComparedMode(
            ModeComparison.Of(found, conditions),
            ratings is null ? null : SiliconComparison.Of(ratings, m.Mode.Name, conditions),
            loadAmperes is { } amperes ? ComparedLoad.Of(found, conditions, amperes) : null,
            sized is null ? null : LossBudget.Of(sized, found, new OperatingPoint(conditions.InputVoltageVolts, loadAmperes!.Value, conditions.FrequencyHz)))))])
        {
            HasDevices = process is null || sized is not null,
        };
    }
}
