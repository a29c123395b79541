using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>States over a phase without rings, in closed form.</summary>
public sealed class PhaseTrajectoryTests
{
    private static readonly PhaseEquations<DoubleDouble> s_decay = WrittenEquations.Phase(1, -640, 0, 0);

    [Fact]
    public void End_and_integrals_are_the_rows_of_the_phase_applied_to_the_start()
    {
        PhaseEquations<DoubleDouble> phase = WrittenEquations.Phase(2, new double[8]);
        PhaseTrajectory trajectory = PhaseTrajectory.Of(phase, Vector(1, 2, 10, 100), Vector(0.5, -1, 2, 3, 4, 0.25, -5, 6), Vector(7, 8, 9, 10, 11, 12, 13, 14), DoubleDouble.Of(3));

        // 1 + (0.5 − 2 + 20 + 300), 2 + (4 + 0.5 − 50 + 600)
        Assert.Equal([319.5, 556.5, 10, 100], Doubles(trajectory.End));

        // 7 + 16 + 90 + 1000, 11 + 24 + 130 + 1400, inputs for 3 s
        Assert.Equal([1113, 1565, 30, 300], Doubles(trajectory.Integral));
        Assert.Equal([1, 2, 10, 100], Doubles(trajectory.Start));
        Assert.Equal(3, trajectory.Duration.Nearest);
        Assert.Equal(3.0 / 64, trajectory.Spacing);
        Assert.Equal(0, trajectory.TurnSeconds);
    }

    /// <summary>From a tenth of the fastest time constant on in eighths of octaves up to the even spacing: 8 log₂(100) = 53.2.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(128)]
    public void Times_lie_evenly_and_in_equal_proportion_while_they_are_closer(double seconds)
    {
        PhaseTrajectory trajectory = PhaseTrajectory.From(WrittenEquations.Phase(1, -640 / seconds, 0, 0), Vector(3, 1, 1), DoubleDouble.Of(seconds));
        double[] expected = [.. Enumerable.Range(0, 65).Select(k => k / 64.0).Concat(Enumerable.Range(0, 54).Select(q => 0.1 / 640 * Math.Pow(2, q / 8.0))).Order()];
        Assert.Equal(expected.Length, trajectory.Times.Length);
        for (int k = 0; k < expected.Length; k++)
        {
            Assert.Equal(expected[k], trajectory.Times[k] / seconds, 1e-15);
            double value = 3 * Math.Exp(-640 * trajectory.Times[k] / seconds);

            // over the whole phase at once what is left of the start is rounding of doubled precision
            Assert.Equal(value, trajectory.Vectors[k][0].Nearest, k < expected.Length - 1 ? 3e-13 * value : 1e-28);
            Assert.Equal([1, 1], Doubles(trajectory.Vectors[k][1..]));
        }
    }

    [Fact]
    public void What_moves_slowly_is_met_at_even_times_alone()
    {
        PhaseTrajectory trajectory = PhaseTrajectory.From(WrittenEquations.Phase(1, -0.5, 1, 0), Vector(3, 4, 0), DoubleDouble.Of(2));
        Assert.Equal(65, trajectory.Times.Length);
        for (int k = 0; k < 65; k++)
        {
            Assert.Equal(k / 32.0, trajectory.Times[k]);
            Assert.Equal(8 - (5 * Math.Exp(-k / 64.0)), trajectory.Vectors[k][0].Nearest, 1e-14);
        }
    }

    [Fact]
    public void Both_ends_are_what_they_were_stated_to_be()
    {
        DoubleDouble[] start = Vector(3, 1, 1), end = Vector(2, 1, 1);
        PhaseTrajectory trajectory = new(s_decay, start, end, DoubleDouble.Of(1));
        Assert.Same(start, trajectory.Vectors[0]);
        Assert.Same(end, trajectory.Vectors[^1]);
        Assert.Same(start, trajectory.At(0));
        Assert.Same(start, trajectory.At(-1));
        Assert.Empty(trajectory.Integral);
    }

    [Theory]
    [InlineData(1e-6)]
    [InlineData(0.01)]
    [InlineData(0.505)]
    [InlineData(0.515625)]
    [InlineData(0.9999)]
    public void Between_times_the_state_is_exact(double time)
    {
        PhaseTrajectory trajectory = PhaseTrajectory.From(s_decay, Vector(3, 0, 0), DoubleDouble.Of(1));
        Assert.Equal(1, trajectory.At(time)[0].Nearest / (3 * Math.Exp(-640 * time)), 3e-13);
    }

    [Fact]
    public void A_derivative_is_the_row_through_the_generator()
    {
        PhaseTrajectory trajectory = PhaseTrajectory.From(WrittenEquations.Phase(2, 1, 2, 3, 4, 5, 6, 7, 8), Vector(0, 0, 0, 0), DoubleDouble.Of(1));
        Assert.Equal([51, 62, 73, 84], Doubles(trajectory.Derivative(Vector(1, 10, 99, 98))));
    }

    /// <summary>
    /// Two modes m' = −a m + g u seen through x = (2 m₁ + m₂, m₁ + m₂): each is p exp(−a t) + d with d = g u/a, and inputs
    /// are modes that stay.
    /// </summary>
    [Theory]
    [InlineData(0.02)]
    [InlineData(1)]
    [InlineData(40)]
    public void The_integral_of_products_is_that_of_exponentials(double seconds)
    {
        // S diag(−2, −3) S⁻¹ with S = (2 1; 1 1); drives S (1 0; 0 1) of both inputs
        PhaseEquations<DoubleDouble> phase = WrittenEquations.Phase(2, -1, -2, 2, 1, 1, -4, 1, 1);
        const double First = 5, Second = -7;
        PhaseTrajectory trajectory = PhaseTrajectory.From(phase, Vector(3, 1, First, Second), DoubleDouble.Of(seconds));

        // x = (3, 1) is m = (2, −1)
        (double Rate, double Final)[] modes = [(2, First / 2), (3, Second / 3), (0, First), (0, Second)];
        double[] start = [2, -1, First, Second];
        double[][] seen = [[2, 1, 0, 0], [1, 1, 0, 0], [0, 0, 1, 0], [0, 0, 0, 1]];
        for (int r = 0; r < 4; r++)
        {
            for (int c = 0; c < 4; c++)
            {
                double sum = 0;
                for (int k = 0; k < 16; k++)
                {
                    sum += seen[r][k / 4] * seen[c][k % 4] * Product(k / 4, k % 4);
                }

                Assert.Equal(sum, trajectory.Products[(r * 4) + c].Nearest, 1e-13 * (1 + Math.Abs(sum)));
            }
        }

        double Product(int i, int k)
        {
            double p = start[i] - modes[i].Final, q = start[k] - modes[k].Final;
            return (p * q * Decayed(modes[i].Rate + modes[k].Rate)) + (p * modes[k].Final * Decayed(modes[i].Rate))
                + (q * modes[i].Final * Decayed(modes[k].Rate)) + (modes[i].Final * modes[k].Final * seconds);
        }

        double Decayed(double rate) => rate == 0 ? seconds : (1 - Math.Exp(-rate * seconds)) / rate;
    }

    private static DoubleDouble[] Vector(params double[] values) => WrittenEquations.Numbers<DoubleDouble>(values);

    private static double[] Doubles(DoubleDouble[] values) => WrittenEquations.Doubles<DoubleDouble>(values);
}
