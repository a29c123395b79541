using ScNet.Design.Losses;
using ScNet.Devices;
using ScNet.Results;
using ScNet.SteadyState.Conduction;

namespace ScNet.Cli;

/// <summary>The modes of one file at an operating point.</summary>
internal sealed record FileOperation(FileAnalysis Analysis, IReadOnlyList<ResultRow<OperatedMode>> Rows)
{
    /// <summary>Whether everything asked for has a result.</summary>
    public bool IsComplete { get; private init; } = Analysis.IsKnown && Rows.All(r => r.Result is not null);

    /// <summary>Solves the modes that were asked for, with the losses of devices where there is a process; what has no result goes to <paramref name="error"/>.</summary>
    /// <param name="file">The file.</param>
    /// <param name="conditions">The operating point.</param>
    /// <param name="modeName">The only mode that is asked for; null for all.</param>
    /// <param name="process">The process of whose devices the losses are; null for none.</param>
    /// <param name="error">Receives what is wrong.</param>
    /// <param name="progress">Is told the share of the modes that are solved; null for nobody.</param>
    public static FileOperation Of(NetlistFile file, OperatingConditions conditions, string? modeName, Process? process, TextWriter error, IProgress<double>? progress)
    {
        FileAnalysis analysis = FileAnalysis.Of(file, modeName, error, c => conditions.Apply(c, file.Path, error));
        analysis.ReportFailures(error, m => !ConductionModel.Serves(m));
        if (!file.Reading.HasResult)
        {
            return new FileOperation(analysis, [ResultRow.Unreadable<OperatedMode>(file.Path, file.Reading.Diagnostics)]);
        }

        SizedConverter? sized = process is null ? null : FileSizes.Of(file.Path, analysis, conditions.Point, process, error);
        ResultRow<OperatedMode>[] rows = [.. analysis.Modes.Select((m, i) =>
        {
            ResultRow<OperatedMode> row = FileAnalysis.Told(m, error, ResultRow.At(file.Path, m, conditions.Point, sized));
            progress?.Report((i + 1.0) / analysis.Modes.Count);
            return row;
        })];
        FileOperation operation = new(analysis, rows);
        return operation with { IsComplete = operation.IsComplete && (process is null || rows.All(r => r.Result?.Budget is not null)) };
    }
}
