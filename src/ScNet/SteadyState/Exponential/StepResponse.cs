using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>The output of a mode on a load current from a step of that current on, while it goes on switching.</summary>
internal sealed class StepResponse
{
    // of the state at the start of a phase from one period to the next, relative: from there on it is periodic
    private const double Settled = 1e-10;

    private readonly StateEquations<DoubleDouble> _equations;
    private readonly IReadOnlyList<PhaseTrajectory> _before;
    private readonly int _output;
    private readonly DoubleDouble _load;

    /// <summary>Prepares a step.</summary>
    /// <param name="solver">The mode.</param>
    /// <param name="before">Its periodic state before the step.</param>
    /// <param name="loadAmperes">The load current after it.</param>
    public StepResponse(PeriodSolver solver, ExponentialSignals before, double loadAmperes)
    {
        _equations = solver.Fine;
        _before = before.Trajectories;
        _output = solver.Structure.Network.OutputNode;
        _load = DoubleDouble.Of(loadAmperes);
    }

    /// <summary>The lowest output voltage within a time after the worst step, and when in the period that step comes.</summary>
    public (double Volts, double InstantSeconds) Lowest(double seconds, int instantsPerPhase)
    {
        (double Volts, double Instant) lowest = (double.PositiveInfinity, 0);
        double start = 0;
        for (int j = 0; j < _before.Count; j++)
        {
            double duration = _before[j].Duration.Nearest;
            for (int k = 0; k < instantsPerPhase; k++)
            {
                double into = duration * k / instantsPerPhase;
                double least = LowestFrom(j, into, seconds);
                lowest = least < lowest.Volts ? (least, start + into) : lowest;
            }

            start += duration;
        }

        return lowest;
    }

    private double LowestFrom(int phase, double into, double seconds)
    {
        DoubleDouble[] vector = [.. _before[phase].At(into)];
        vector[^1] = _load;
        double least = double.PositiveInfinity, left = seconds;
        DoubleDouble[]? last = null;
        DoubleDouble whole = _before[phase].Duration - DoubleDouble.Of(into);
        for (int j = phase; left > 0; j = (j + 1) % _before.Count)
        {
            DoubleDouble length = left < whole.Nearest ? DoubleDouble.Of(left) : whole;
            PhaseTrajectory trajectory = PhaseTrajectory.From(_equations.Phases[j], vector, length);
            ExponentialWaveform output = new(trajectory, [.. _equations.Row(_equations.Phases[j].Potentials, _output)]);
            least = Math.Min(least, output.Extremes().Least);
            left -= length.Nearest;
            vector = trajectory.End;
            whole = _before[(j + 1) % _before.Count].Duration;
            if (j == _before.Count - 1)
            {
                if (last is not null && IsSettled(last, vector))
                {
                    // one more period whole, as the step has cut the first one
                    left = Math.Min(left, _before.Sum(t => t.Duration.Nearest));
                }

                last = vector;
            }
        }

        return least;
    }

    private static bool IsSettled(DoubleDouble[] before, DoubleDouble[] after)
    {
        double change = 0, size = 0;
        for (int x = 0; x < before.Length - NetworkStructure.SourceCount; x++)
        {
            change = Math.Max(change, Math.Abs((after[x] - before[x]).Nearest));
            size = Math.Max(size, Math.Abs(after[x].Nearest));
        }

        return change <= Settled * size;
    }
}
