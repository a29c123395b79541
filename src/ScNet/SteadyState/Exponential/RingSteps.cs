using System.Numerics;
using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>Rings that are fast beside the times at which a phase is sampled: one turn of each is followed in short steps.</summary>
/// <param name="Step">A sixteenth of a turn of the fastest, in seconds.</param>
/// <param name="Count">So many steps make a turn of the slowest.</param>
/// <param name="Life">How long any of them is more than rounding, in seconds.</param>
internal readonly record struct RingSteps(double Step, int Count, double Life)
{
    private const int StepsPerTurn = 16;

    // rings within this factor are followed together
    private const double Spread = 4;

    // more groups would take some million steps
    private const int MostGroups = 2;

    // a ring that turns less from one time to the next is met by the times themselves
    private const double LeastTurn = 2 * Math.PI / StepsPerTurn;

    // e⁻²⁸ is a part in 10¹²
    private const double LifeTimes = 28;

    /// <summary>The groups of rings, the slowest first; empty where none is fast.</summary>
    /// <param name="equations">The phase.</param>
    /// <param name="n">The number of states.</param>
    /// <param name="spacing">The longest time between two samples, in seconds.</param>
    /// <param name="duration">The length of the phase in seconds.</param>
    public static RingSteps[] Of(PhaseEquations<DoubleDouble> equations, int n, double spacing, double duration)
    {
        var matrix = new double[n * n];
        for (int x = 0; x < matrix.Length; x++)
        {
            matrix[x] = equations.Generator[(x / n * (n + equations.InputCount)) + (x % n)].Nearest;
        }

        var values = new Complex[n];
        if (!Eigenvalues.TryFind(matrix, n, values))
        {
            return [];
        }

        List<RingSteps> groups = [];
        double slowest = 0;
        foreach (Complex ring in values.Where(v => v.Imaginary * spacing > LeastTurn).OrderBy(v => v.Imaginary))
        {
            double life = ring.Real < 0 ? Math.Min(duration, LifeTimes / -ring.Real) : duration, turn = 2 * Math.PI / ring.Imaginary;
            if (ring.Imaginary <= Spread * slowest || groups.Count == MostGroups)
            {
                double step = turn / StepsPerTurn;
                groups[^1] = new RingSteps(step, (int)Math.Ceiling(2 * Math.PI / slowest / step), Math.Max(groups[^1].Life, life));
                continue;
            }

            slowest = ring.Imaginary;
            groups.Add(new RingSteps(turn / StepsPerTurn, StepsPerTurn, life));
        }

        return [.. groups.Where(g => g.Count <= StepsPerTurn * StepsPerTurn)];
    }
}
