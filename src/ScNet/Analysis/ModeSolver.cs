using ScNet.Numerics;

namespace ScNet.Analysis;

/// <summary>Joins what topology says with the component values of one converter.</summary>
internal static class ModeSolver
{
    public static ModeOutcome Solve(Converter converter, Mode mode)
    {
        ArgumentNullException.ThrowIfNull(converter);
        converter.RequireOwn(mode, nameof(mode));
        TopologySolution topology = TopologySolver.Solve(converter, mode);
        if (!topology.HasResult)
        {
            return new ModeOutcome(converter, topology, null);
        }

        try
        {
            return new ModeOutcome(converter, topology, Settle(converter, mode, topology));
        }
        catch (FillLimitException exception)
        {
            return new ModeOutcome(converter, topology.Refused(TooDense(exception)), null);
        }
    }

    /// <summary>Joins; topology must say that there is a result.</summary>
    /// <exception cref="ScNetException">The free flow is too dense to be solved with these values.</exception>
    public static ModeAnalysis Join(Converter converter, Mode mode, TopologySolution topology)
    {
        try
        {
            return Settle(converter, mode, topology);
        }
        catch (FillLimitException exception)
        {
            throw new ScNetException($"Mode '{mode.Name}' of '{converter.Name}' has no result:", [TooDense(exception)]);
        }
    }

    private static ModeAnalysis Settle(Converter converter, Mode mode, TopologySolution topology)
    {
        SettledVoltages voltages = topology.Settled ?? topology.Voltages!.Settle(converter);
        return new(converter, mode, topology, new ModeResults(
            voltages,
            ValueDecidedFlow.Settle(converter, topology),
            [.. topology.Diagnostics, .. voltages.Diagnostics]));
    }

    internal static Diagnostic TooDense(FillLimitException exception) => new(
        DiagnosticSeverity.Error,
        DiagnosticCodes.FlowTooDense,
        $"Component values share charge among {exception.Unknowns} ways, nearly all of which meet one another: more than {FillOrder.MostSteps} steps to solve for. Join switches and capacitors that lie side by side into one each, or analyse the parts of the converter one by one.",
        []);
}
