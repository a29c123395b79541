using ScNet.Kernel;
using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Networks by the numbers of their nodes: 0 is the reference, 1 the input, 2 the output.</summary>
internal static class SmallNetwork
{
    /// <summary>A network; per phase a text with a 1 for each resistor that conducts and a 0 for the others.</summary>
    public static SwitchedLinearNetwork Of(
        int nodes,
        string[] closed,
        (int First, int Second)[]? resistors = null,
        (int First, int Second)[]? capacitors = null,
        (int First, int Second)[]? inductors = null,
        string windings = "",
        bool isStiff = true,
        (int First, int Second)[]? furtherLoads = null,
        int diodes = 0,
        bool mayRest = false) => new()
        {
            NodeCount = nodes,
            Resistors = Pairs(resistors),
            Capacitors = Pairs(capacitors),
            Inductors = Pairs(inductors),
            HasWinding = [.. (inductors ?? []).Select((_, e) => e < windings.Length && windings[e] == '1')],
            InputNode = 1,
            OutputNode = 2,
            IsStiff = isStiff,
            FurtherLoads = Pairs(furtherLoads),
            Closed = [.. closed.Select(phase => (bool[])[.. phase.Select(c => c == '1')])],
            DiodeCount = diodes,
            InductorsMayRest = mayRest,
        };

    public static NetworkValues<DoubleDouble> Values(double[] ohms, double[] farads, double[] henries, double[] windings, double[] duties, params double[] diodes) =>
        new(Fine(ohms), Fine(farads), Fine(henries), Fine(windings), Fine(duties)) { DiodeRatios = Fine(diodes) };

    /// <summary>The value of a row over states and inputs.</summary>
    public static double Value(ReadOnlySpan<DoubleDouble> row, double[] vector) => SmallMatrices.Dot<DoubleDouble>(row, Fine(vector)).Nearest;

    private static DoubleDouble[] Fine(double[] values) => Array.ConvertAll(values, DoubleDouble.Of);

    private static NodePair[] Pairs((int First, int Second)[]? nodes) => [.. (nodes ?? []).Select(n => new NodePair(n.First, n.Second))];
}
