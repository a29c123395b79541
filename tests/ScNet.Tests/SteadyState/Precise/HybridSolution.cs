using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Precise;

/// <summary>What the library and the node equations say of a converter with inductors at a frequency.</summary>
/// <param name="Solver">The library's solver.</param>
/// <param name="Found">Its figures.</param>
/// <param name="Network">The node equations.</param>
/// <param name="Period">Their periodic state.</param>
internal sealed record HybridSolution(PeriodSolver Solver, PeriodFigures Found, PreciseNetwork Network, PrecisePeriod Period)
{
    /// <summary>Solves both and requires them to agree about whether there is a periodic state; null where there is none.</summary>
    public static HybridSolution? TryFind(Converter converter, double frequencyHz)
    {
        (SwitchedLinearNetwork network, NetworkValues<DoubleDouble> values) = ConverterNetwork.Of(converter, converter.Modes[0]);
        PeriodSolver solver = PeriodSolver.Of(network, values);
        PreciseNetwork precise = PreciseNetwork.Of(converter, converter.Modes[0]);
        Assert.True(
            precise.HasPaths ? solver.Fault is not (NetworkFault.InductorWithoutPath or NetworkFault.LoadWithoutPath) : solver.Fault != NetworkFault.None,
            $"{(precise.HasPaths ? "There are" : "There are not")} paths for all currents, but {solver.Fault} was found.");
        if (!precise.HasPaths)
        {
            return null;
        }

        PrecisePeriod period = PrecisePeriod.Of(precise, frequencyHz);
        PeriodFigures found = default;
        NetworkFault fault = solver.Fault == NetworkFault.None ? solver.SolveFine(frequencyHz, out found) : solver.Fault;
        Assert.True(period.HasState || fault != NetworkFault.None, "Something grows without end, but a periodic state was found.");
        Assert.True(!period.HasState || fault is NetworkFault.None or NetworkFault.NoOutputCurrent, $"There is a periodic state, but not found: {fault}");
        return fault == NetworkFault.None ? new(solver, found, precise, period) : null;
    }
}
