namespace ScNet.Analysis;

/// <summary>Joins what topology says with the component values of one converter.</summary>
internal static class ModeSolver
{
    public static ModeAnalysis Solve(Converter converter, Mode mode)
    {
        ArgumentNullException.ThrowIfNull(converter);
        ArgumentNullException.ThrowIfNull(mode);
        if (mode.Index >= converter.Modes.Count || !ReferenceEquals(converter.Modes[mode.Index], mode))
        {
            throw new ArgumentException($"Mode '{mode.Name}' is not one of the modes of '{converter.Name}'.", nameof(mode));
        }

        return Join(converter, mode, ExactModeSolver.Solve(converter, mode));
    }

    public static ModeAnalysis Join(Converter converter, Mode mode, ExactMode exact)
    {
        ModeResults? results = exact.IdealPoint is { } ideal
            ? new ModeResults(ideal, exact.BlockingVoltages!, ValueDecidedFlow.Settle(converter, exact))
            : null;
        return new ModeAnalysis(converter, mode, exact, results);
    }
}
