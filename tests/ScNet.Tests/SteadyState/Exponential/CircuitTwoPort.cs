using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>The two-port of a circuit as the library finds it.</summary>
internal static class CircuitTwoPort
{
    /// <summary>The figures, or null where there is no periodic state, or the output hardly meets the network.</summary>
    public static PeriodFigures? TryFind(Circuit circuit, double frequencyHz)
    {
        PeriodSolver solver = new(circuit.Structure(), circuit.Values());
        return solver.Fault == NetworkFault.None
            && solver.Solve(frequencyHz, out PeriodFigures found) == NetworkFault.None
            && found.RelativeError < PeriodSolver.WantedError && Math.Abs(found.Ohms) < 1e12 ? found : null;
    }

    public static PeriodFigures Find(Circuit circuit, double frequencyHz) =>
        TryFind(circuit, frequencyHz) ?? throw new InvalidOperationException("The circuit has no periodic state.");

    /// <summary>The same in plain precision, whatever its error.</summary>
    public static PeriodFigures? TryFindPlain(Circuit circuit, double frequencyHz)
    {
        NetworkStructure structure = circuit.Structure();
        PeriodMap<PlainReal> map = new(StateEquations<DoubleDouble>.Of(structure, circuit.Values()).To(v => PlainReal.Of(v.Nearest)));
        return map.TryRun(PlainReal.Of(1 / frequencyHz)) ? PeriodFigures.Of(map, PlainReal.Of(1 / frequencyHz), structure.Network.IsStiff, 0) : null;
    }
}
