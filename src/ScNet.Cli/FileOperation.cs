using ScNet.Analysis;
using ScNet.Results;
using ScNet.SteadyState;
using ScNet.SteadyState.Conduction;

namespace ScNet.Cli;

/// <summary>The modes of one file at an operating point.</summary>
internal sealed record FileOperation(FileAnalysis Analysis, IReadOnlyList<ResultRow<PeriodicSteadyState>> Rows)
{
    /// <summary>Whether everything asked for has a result.</summary>
    public bool IsComplete => Analysis.IsComplete && Rows.All(r => r.Result is not null);

    /// <summary>Solves the modes that were asked for; what has no result goes to <paramref name="error"/>.</summary>
    public static FileOperation Of(NetlistFile file, OperatingConditions conditions, string? modeName, TextWriter error)
    {
        FileAnalysis analysis = FileAnalysis.Of(file, modeName, error, c => conditions.Apply(c, file.Path, error));
        analysis.ReportFailures(error);
        return new FileOperation(analysis, file.Reading.HasResult
            ? [.. analysis.Modes.Select(m => FileAnalysis.Row(file.Path, m, error, found => Operate(found, conditions.Point)))]
            : [ResultRow.Unreadable<PeriodicSteadyState>(file.Path, file.Reading.Diagnostics)]);
    }

    // where a current ends phases, times and ratio follow from the operating point
    private static PeriodicSteadyState Operate(ModeAnalysis analysis, OperatingPoint point) => analysis.Mode.UntilZeroPhases.Any(p => p.Count > 0)
        ? ConductionModel.Of(analysis.Converter, analysis.Mode).At(point).Steady
        : PeriodicSteadyState.Of(analysis, point);
}
