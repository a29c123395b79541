namespace ScNet.Analysis;

/// <summary>Joins what topology says with the component values of one converter.</summary>
internal static class ModeSolver
{
    public static ModeOutcome Solve(Converter converter, Mode mode)
    {
        ArgumentNullException.ThrowIfNull(converter);
        converter.RequireOwn(mode, nameof(mode));
        ExactMode exact = ExactModeSolver.Solve(converter, mode);
        return new ModeOutcome(converter, mode, exact.Diagnostics, exact.IdealPoint is null ? null : Join(converter, mode, exact));
    }

    /// <summary>Joins; topology must say that there is a result.</summary>
    public static ModeAnalysis Join(Converter converter, Mode mode, ExactMode exact) =>
        new(converter, mode, exact, new ModeResults(exact.IdealPoint!, exact.BlockingVoltages!, ValueDecidedFlow.Settle(converter, exact)));
}
