namespace ScNet.Analysis;

/// <summary>Joins what topology says with the component values of one converter.</summary>
internal static class ModeSolver
{
    public static ModeOutcome Solve(Converter converter, Mode mode)
    {
        ArgumentNullException.ThrowIfNull(converter);
        converter.RequireOwn(mode, nameof(mode));
        TopologySolution topology = TopologySolver.Solve(converter, mode);
        return new ModeOutcome(converter, topology, topology.IdealPoint is null ? null : Join(converter, mode, topology));
    }

    /// <summary>Joins; topology must say that there is a result.</summary>
    public static ModeAnalysis Join(Converter converter, Mode mode, TopologySolution topology) =>
        new(converter, mode, topology, new ModeResults(topology.IdealPoint!, topology.BlockingVoltages!, ValueDecidedFlow.Settle(converter, topology)));
}
