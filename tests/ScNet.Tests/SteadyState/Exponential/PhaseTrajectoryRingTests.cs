using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>States that turn faster than samples follow one another over a phase of one second, in closed form.</summary>
public sealed class PhaseTrajectoryRingTests
{
    private const double Slow = 100;
    private const double Fast = 1050;
    private const double SlowStep = 1 / Slow / 16;
    private const double FastStep = 1 / Fast / 16;

    [Fact]
    public void A_turn_is_seventeen_times_a_sixteenth_apart()
    {
        PhaseTrajectory trajectory = Of(0, Slow);
        Assert.Equal(1 / Slow, trajectory.TurnSeconds, 1e-15);
        Follows([.. Enumerable.Range(0, 17).Select(k => 0.51 + (k * SlowStep))], trajectory.Turn(0.51), 0, Slow);
    }

    [Fact]
    public void A_turn_ends_with_the_phase() =>
        Follows([.. Enumerable.Range(0, 8).Select(k => 0.9951 + (k * SlowStep))], Of(0, Slow).Turn(0.9951), 0, Slow);

    /// <summary>128 turns in the phase, so that every sixteenth of one is exact: the eighth after 1 − 8/2048 is the end.</summary>
    [Fact]
    public void The_end_of_the_phase_is_no_part_of_a_turn() => Assert.Equal(8, Of(0, 128).Turn(1 - (8.0 / 2048)).Count());

    /// <summary>exp(−56 t) is a part in 10¹² after half a second.</summary>
    [Fact]
    public void What_has_decayed_is_not_followed()
    {
        PhaseTrajectory trajectory = Of(-56, Slow);
        Follows([0.5], trajectory.Turn(0.5), -56, Slow);
        Follows([0.7], trajectory.Turn(0.7), -56, Slow);
        Follows([.. Enumerable.Range(0, 17).Select(k => 0.499 + (k * SlowStep))], trajectory.Turn(0.499), -56, Slow);
    }

    /// <summary>10.5 steps of the fast ring fit into one of the slow one; after the last of those it turns once.</summary>
    [Fact]
    public void In_every_step_of_a_slow_ring_a_fast_one_turns_until_the_next()
    {
        double[] times =
        [
            .. Enumerable.Range(0, 16).SelectMany(k => Enumerable.Range(0, 11).Select(m => 0.25 + (k * SlowStep) + (m * FastStep))),
            .. Enumerable.Range(0, 17).Select(m => 0.25 + (16 * SlowStep) + (m * FastStep)),
        ];
        Follows(times, Of(0, Slow, Fast).Turn(0.25), 0, Slow, Fast);
        Follows([.. Enumerable.Range(0, 9).Select(m => 0.9995 + (m * FastStep))], Of(0, Slow, Fast).Turn(0.9995), 0, Slow, Fast);
    }

    /// <summary>
    /// 64 even times and the eighths of octaves from a tenth of 1/(2π 100) on, 8 log₂(2π 100/6.4) = 52.9, each with its turn;
    /// and the end.
    /// </summary>
    [Fact]
    public void Samples_hold_a_turn_from_each_of_their_times_on()
    {
        PhaseTrajectory trajectory = Of(0, Slow);
        Assert.Equal(((64 + 53) * 17) + 1, trajectory.Times.Length);
        Assert.Equal(trajectory.Times.Order(), trajectory.Times);
        Follows(trajectory.Times, trajectory.Times.Zip(trajectory.Vectors), 0, Slow);
        Assert.All(Enumerable.Range(0, 17), k => Assert.Contains(trajectory.Times, t => Math.Abs(t - 0.5 - (k * SlowStep)) < 1e-14));
    }

    // pairs of states that start at (1, 0), and one input
    private static PhaseTrajectory Of(double decay, params double[] turns)
    {
        int n = 2 * turns.Length, width = n + 1;
        double[] generator = new double[n * width], start = new double[width];
        for (int k = 0; k < turns.Length; k++)
        {
            int first = 2 * k, second = first + 1;
            start[first] = 1;
            generator[(first * width) + first] = generator[(second * width) + second] = decay;
            generator[(first * width) + second] = -2 * Math.PI * turns[k];
            generator[(second * width) + first] = 2 * Math.PI * turns[k];
        }

        return PhaseTrajectory.From(WrittenEquations.Phase(n, generator), WrittenEquations.Numbers<DoubleDouble>(start), DoubleDouble.Of(1));
    }

    private static void Follows(double[] times, IEnumerable<(double Time, DoubleDouble[] Vector)> found, double decay, params double[] turns)
    {
        (double Time, DoubleDouble[] Vector)[] all = [.. found];
        Assert.Equal(times.Length, all.Length);
        for (int k = 0; k < times.Length; k++)
        {
            Assert.Equal(times[k], all[k].Time, 1e-14);
            for (int r = 0; r < turns.Length; r++)
            {
                double size = Math.Exp(decay * times[k]), angle = 2 * Math.PI * turns[r] * all[k].Time;
                Assert.Equal(size * Math.Cos(angle), all[k].Vector[2 * r].Nearest, 1e-10);
                Assert.Equal(size * Math.Sin(angle), all[k].Vector[(2 * r) + 1].Nearest, 1e-10);
            }
        }
    }
}
