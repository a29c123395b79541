using Fractions;
using ScNet.Analysis;
using ScNet.Results;
using ScNet.SteadyState;
using ScNet.SteadyState.Conduction;

namespace ScNet.Cli;

/// <summary>The operating points of one mode.</summary>
internal static class OperatingSweep
{
    /// <summary>One row per duty and point; one where a duty has no result, which is told on <paramref name="error"/>.</summary>
    public static IEnumerable<ResultRow<SweptMode>> Rows(string path, ModeOutcome mode, Fraction[]? duties, OperatingPoint[] points, TextWriter error) =>
        duties is null ? Rows(path, mode, points, error) : duties.SelectMany(d => Rows(path, WithDuty(mode, d), points, error));

    private static IEnumerable<ResultRow<SweptMode>> Rows(string path, ModeOutcome mode, OperatingPoint[] points, TextWriter error)
    {
        Fraction duty = mode.Converter.Phases[0].Duty;
        if (ConductionModel.Serves(mode))
        {
            return points.Select(p => FileAnalysis.Told(mode, error, ResultRow.At(path, mode, p))).Select(r =>
                r.Result is { } found ? ResultRow.Of(path, mode, new SweptMode(duty, found.Steady.Point, found.Steady)) : r.Without<SweptMode>());
        }

        ResultRow<SweptMode[]> all = FileAnalysis.Row(path, mode, error, found =>
        {
            SteadyStateModel model = SteadyStateModel.Of(found);
            return Array.ConvertAll(points, p => new SweptMode(duty, p, model.At(p)));
        });
        return all.Result is { } rows ? rows.Select(r => ResultRow.Of(path, mode, r)) : [all.Without<SweptMode>()];
    }

    private static ModeOutcome WithDuty(ModeOutcome mode, Fraction first)
    {
        Fraction[] old = [.. mode.Converter.Phases.Select(p => p.Duty)];
        if (old.Length == 1)
        {
            return mode;
        }

        Converter changed = mode.Converter.WithDuties([first, .. old.Skip(1).Select(d => d * (1 - first) / (1 - old[0]))]);
        return ModeAnalysis.Try(changed, changed.Modes[mode.Mode.Index]);
    }
}
