using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Devices;
using ScNet.Results;
using ScNet.SteadyState;
using ScNet.SteadyState.Conduction;

namespace ScNet.Cli;

/// <summary>The modes of one file at an operating point.</summary>
internal sealed record FileOperation(FileAnalysis Analysis, IReadOnlyList<ResultRow<OperatedMode>> Rows)
{
    /// <summary>Whether everything asked for has a result.</summary>
    public bool IsComplete { get; private init; } = Analysis.IsComplete && Rows.All(r => r.Result is not null);

    /// <summary>Solves the modes that were asked for, with the losses of devices where there is a process; what has no result goes to <paramref name="error"/>.</summary>
    public static FileOperation Of(NetlistFile file, OperatingConditions conditions, string? modeName, Process? process, TextWriter error)
    {
        FileAnalysis analysis = FileAnalysis.Of(file, modeName, error, c => conditions.Apply(c, file.Path, error));
        analysis.ReportFailures(error);
        if (!file.Reading.HasResult)
        {
            return new FileOperation(analysis, [ResultRow.Unreadable<OperatedMode>(file.Path, file.Reading.Diagnostics)]);
        }

        SizedConverter? sized = process is null ? null : FileSizes.Of(file.Path, analysis, conditions.Point.InputVoltageVolts, process, error);
        ResultRow<OperatedMode>[] rows = [.. analysis.Modes.Select(m => FileAnalysis.Row(file.Path, m, error, found => Operate(found, conditions.Point, sized)))];
        FileOperation operation = new(analysis, rows);
        return operation with { IsComplete = operation.IsComplete && (process is null || rows.All(r => r.Result?.Budget is not null)) };
    }

    // where a current ends phases, times and ratio follow from the operating point, and the budget's straight lines do not hold
    private static OperatedMode Operate(ModeAnalysis analysis, OperatingPoint point, SizedConverter? sized) => analysis.Mode.UntilZeroPhases.Any(p => p.Count > 0)
        ? new OperatedMode(ConductionModel.Of(analysis.Converter, analysis.Mode).At(point).Steady)
        : new OperatedMode(PeriodicSteadyState.Of(analysis, point), sized is null ? null : LossModel.Of(sized, analysis).At(point));
}
