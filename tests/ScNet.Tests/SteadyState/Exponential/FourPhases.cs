using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Equations of three states, three inputs and four phases without any symmetry, of which the first and the third are one.</summary>
internal static class FourPhases
{
    public const double PeriodSeconds = 1.7;

    /// <summary>The second phase fixes no further output, and holds (0.6, 0.8, 0) of the state at zero.</summary>
    public static StateEquations<T> Equations<T>()
        where T : struct, IReal<T>
    {
        PhaseEquations<T> first = WrittenEquations.Phase<T>(
            3,
            [-2, 0.5, 0.3, 1, -0.4, 0.2, -0.7, -1.5, 0.9, 0.1, 0.8, -0.6, 0.2, -1.1, -3, -0.9, 0.35, 0.55],
            [0.3, -0.4, 0.25, 0.15, -0.65, 0.1],
            [0.9, 0.2, -0.7, -0.3, 0.45, 0.05],
            [[0.6, 0.75, -0.35, 0.2, -0.8, 1.3]]);
        PhaseEquations<T> second = WrittenEquations.Phase<T>(
            3, Held<T>([-1, -0.3, 0.8, 0.6, 0.9, -0.2, 0.4, -2.5, -0.6, -0.7, 0.3, 1.2, -0.5, 0.7, -1.8, 0.25, -1.4, 0.65]), [-0.2, 0.7, 0.5, -0.9, 0.3, 0.4], [0.1, -0.6, 0.8, 0.7, -0.15, 0.35], [[]], s_held);
        PhaseEquations<T> last = WrittenEquations.Phase<T>(
            3,
            [-0.8, 1.2, -0.4, -0.3, 0.6, 1.1, -1.3, -1.9, 0.2, 0.85, -0.45, 0.75, 0.6, 0.1, -0.9, 1.4, 0.2, -0.35],
            [0.55, 0.35, -0.75, 0.4, 0.8, -0.25],
            [-0.5, 0.4, 0.3, 0.2, -1.2, 0.65],
            [[-0.1, 0.95, 0.15, -0.55, 0.7, 0.05]]);
        return WrittenEquations.Of(WrittenEquations.Structure(3, further: 1), [0.2, 0.35, 0.2, 0.25], first, second, first, last);
    }

    private static readonly double[] s_held = [0.6, 0.8, 0];

    // between projections that take the held direction out
    private static double[] Held<T>(double[] generator)
        where T : struct, IReal<T>
    {
        T[] held = WrittenEquations.Numbers<T>(generator);
        Rests.HoldGenerator<T>(WrittenEquations.Numbers<T>(s_held), 3, 6, held);
        return WrittenEquations.Doubles<T>(held);
    }
}
