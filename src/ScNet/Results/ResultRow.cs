using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.SteadyState;
using ScNet.SteadyState.Conduction;

namespace ScNet.Results;

/// <summary>One row of a <see cref="ResultTable"/>: where it comes from, and what came of it.</summary>
/// <typeparam name="T">The kind of result.</typeparam>
public sealed class ResultRow<T>
    where T : class
{
    internal ResultRow(string? file, ModeOutcome? outcome, IEnumerable<Diagnostic> diagnostics, T? result)
    {
        File = file;
        Outcome = outcome;
        Diagnostics = [.. diagnostics];
        Result = result;
    }

    /// <summary>The file as the caller named it, or null where there is none.</summary>
    public string? File { get; }

    /// <summary>The analysis of the mode; null where the file could not be read.</summary>
    public ModeOutcome? Outcome { get; }

    /// <summary>The findings of mode and netlist; the errors where the file could not be read.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics { get; }

    /// <summary>The result, or null where there is none.</summary>
    public T? Result { get; }

    /// <summary>The same row without a result, of another kind.</summary>
    public ResultRow<TOther> Without<TOther>()
        where TOther : class => new(File, Outcome, Diagnostics, null);

    /// <summary>File and mode, and the result or that there is none.</summary>
    public override string ToString() =>
        $"{File ?? Outcome?.Converter.Name}{(Outcome is null ? string.Empty : $", mode {Outcome.Mode}")}: {Result?.ToString() ?? "no result"}";
}

/// <summary>Makes rows of a <see cref="ResultTable"/>.</summary>
public static class ResultRow
{
    /// <summary>The row of a mode.</summary>
    /// <param name="file">The file as the caller named it, or null where there is none.</param>
    /// <param name="outcome">The analysis of the mode.</param>
    /// <param name="result">The result, or null where there is none.</param>
    public static ResultRow<T> Of<T>(string? file, ModeOutcome outcome, T? result)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(outcome);
        return new ResultRow<T>(file, outcome, outcome.Diagnostics.Union(outcome.Converter.Warnings), result);
    }

    /// <summary>
    /// The row of a mode with what is found of its analysis. Where that is refused, as a network may be too large for it,
    /// the row has no result and the reasons come first among its findings.
    /// </summary>
    /// <param name="file">The file as the caller named it, or null where there is none.</param>
    /// <param name="outcome">The analysis of the mode; without one nothing is looked for.</param>
    /// <param name="find">Finds the result of an analysis.</param>
    public static ResultRow<T> Find<T>(string? file, ModeOutcome outcome, Func<ModeAnalysis, T> find)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(outcome);
        ArgumentNullException.ThrowIfNull(find);
        try
        {
            return Of(file, outcome, outcome.Analysis is { } analysis ? find(analysis) : null);
        }
        catch (ScNetException refusal)
        {
            return new ResultRow<T>(file, outcome, refusal.Diagnostics.Union(outcome.Diagnostics).Union(outcome.Converter.Warnings), null);
        }
    }

    /// <summary>
    /// The row of a mode at an operating point, by <see cref="ConductionModel"/> where that serves it. That some phase leaves an
    /// inductor without a path is then no finding: body diodes are one, or the reason why they are not is told instead.
    /// </summary>
    /// <param name="file">The file as the caller named it, or null where there is none.</param>
    /// <param name="outcome">The analysis of the mode.</param>
    /// <param name="point">The operating point.</param>
    /// <param name="sized">The converter with its devices, whose losses are added; null where they are not asked for.</param>
    public static ResultRow<OperatedMode> At(string? file, ModeOutcome outcome, OperatingPoint point, SizedConverter? sized = null)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        ArgumentNullException.ThrowIfNull(point);
        if (!ConductionModel.Serves(outcome))
        {
            return Find(file, outcome, analysis => new OperatedMode(PeriodicSteadyState.Of(analysis, point), sized is null ? null : LossBudget.Of(sized, analysis, point)));
        }

        IEnumerable<Diagnostic> others = outcome.Diagnostics.Where(d => d.Code != DiagnosticCodes.InductorInterrupted).Union(outcome.Converter.Warnings);
        try
        {
            return new ResultRow<OperatedMode>(file, outcome, others, new OperatedMode(
                ConductionModel.Of(outcome.Converter, outcome.Mode).At(point).Steady,
                sized is null ? null : LossBudget.OfWaveforms(sized, sized.Converter.Modes[outcome.Mode.Name], point)));
        }
        catch (ScNetException refusal)
        {
            return new ResultRow<OperatedMode>(file, outcome, refusal.Diagnostics.Union(others), null);
        }
    }

    /// <summary>The row of a file that could not be read.</summary>
    /// <param name="file">The file as the caller named it.</param>
    /// <param name="diagnostics">The reasons.</param>
    public static ResultRow<T> Unreadable<T>(string? file, IEnumerable<Diagnostic> diagnostics)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(diagnostics);
        return new ResultRow<T>(file, null, diagnostics, null);
    }
}
