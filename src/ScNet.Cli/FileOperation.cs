using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Cli;

/// <summary>One mode of a file at an operating point; no steady state where the mode has no result.</summary>
internal sealed record OperationRow(NetlistFile File, ModeOutcome Outcome, PeriodicSteadyState? Steady)
{
    /// <summary>The ideal output voltage in volts.</summary>
    public double IdealVolts => Outcome.Require().Ratio.ToDouble() * Steady!.Point.InputVoltageVolts;

    /// <summary>Whether the load pulls the output voltage to zero or to the other sign.</summary>
    public bool IsOverloaded => Steady!.Point.LoadCurrentAmperes != 0 && IdealVolts * Steady.AverageOutputVoltageVolts <= 0;

    /// <summary>Whether the load gives power instead of taking it.</summary>
    public bool IsDriven => Steady!.Point.LoadCurrentAmperes * IdealVolts < 0;
}

/// <summary>The modes of one file at an operating point.</summary>
internal sealed record FileOperation(FileAnalysis Analysis, IReadOnlyList<OperationRow> Rows)
{
    /// <summary>Solves the modes that were asked for; what has no result goes to <paramref name="error"/>.</summary>
    public static FileOperation Of(NetlistFile file, OperatingConditions conditions, string? modeName, TextWriter error)
    {
        FileAnalysis analysis = FileAnalysis.Of(file, modeName, error, c => conditions.Apply(c, file.Path, error));
        analysis.ReportFailures(error);
        return new FileOperation(
            analysis,
            [.. analysis.Modes.Select(m => new OperationRow(file, m, m.Analysis is { } found ? PeriodicSteadyState.Of(found, conditions.Point) : null))]);
    }
}
