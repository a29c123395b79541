using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Which rings of a phase are followed, and how closely: generators of turning pairs of states.</summary>
public sealed class RingStepsTests
{
    private const double Turn = 2 * Math.PI;

    [Fact]
    public void A_ring_is_followed_in_sixteenths_of_its_turn_for_28_time_constants()
    {
        RingSteps ring = Assert.Single(Of(1, 10, (-7, 2)));
        Same(Turn / 2 / 16, 16, 4, ring);
    }

    [Fact]
    public void No_ring_is_followed_for_longer_than_the_phase()
    {
        Same(Turn / 2 / 16, 16, 3, Assert.Single(Of(1, 3, (-7, 2))));
        Same(Turn / 2 / 16, 16, 10, Assert.Single(Of(1, 10, (0, 2))));
        Same(Turn / 2 / 16, 16, 10, Assert.Single(Of(1, 10, (0.5, 2))));
    }

    [Fact]
    public void A_ring_that_turns_no_more_than_a_sixteenth_between_samples_is_left_to_them()
    {
        Assert.Empty(Of(Turn / 16, 10, (0, 1)));
        Assert.Empty(Of(1, 10, (0, 0.39)));
        _ = Assert.Single(Of(1, 10, (0, 0.395)));
        _ = Assert.Single(Of(2, 10, (0, 0.2)));
        Assert.Empty(Of(1, 10));
    }

    [Fact]
    public void Rings_within_a_factor_of_four_are_followed_together_in_steps_of_the_faster()
    {
        // 16 · 2.6 = 41.6 steps make a turn of the slower
        Same(Turn / 2.6 / 16, 42, 4, Assert.Single(Of(1, 10, (-14, 2.6), (-7, 1))));
        Same(Turn / 2.6 / 16, 42, 4, Assert.Single(Of(1, 10, (-7, 2.6), (-14, 1))));
        Same(Turn / 4 / 16, 64, 10, Assert.Single(Of(1, 10, (0, 4), (0, 1))));
    }

    [Fact]
    public void The_factor_counts_from_the_slowest_of_a_group()
    {
        // 16 · 7.1 / 2 = 56.8
        Same(Turn / 7.1 / 16, 57, 10, Assert.Single(Of(1, 10, (0, 2), (0, 7.1))));
        Assert.Equal(2, Of(1, 10, (0, 2), (0, 3), (0, 8.1)).Length);
    }

    [Fact]
    public void Without_eigenvalues_no_ring_is_followed() => Assert.Empty(Of(1, 10, (double.NaN, 1)));

    /// <summary>The ring is found before the three states beside it, whose rates are no numbers.</summary>
    [Fact]
    public void With_some_of_the_eigenvalues_alone_no_ring_is_followed()
    {
        const double None = double.NaN;
        double[] generator =
        [
            -3, None, 0, 0, 0, 0, 0,
            None, -3, None, 0, 0, 0, 0,
            0, None, -3, 0, 0, 0, 0,
            0, 0, 0, -7, 2, 0, 0,
            0, 0, 0, -2, -7, 0, 0,
        ];
        Assert.Empty(RingSteps.Of(WrittenEquations.Phase(5, generator), 5, 1, 10));
    }

    [Fact]
    public void Rings_further_apart_are_followed_apart_the_slowest_first()
    {
        RingSteps[] rings = Of(1, 10, (-14, 4.1), (-7, 1));
        Assert.Equal(2, rings.Length);
        Same(Turn / 16, 16, 4, rings[0]);
        Same(Turn / 4.1 / 16, 16, 2, rings[1]);
    }

    [Fact]
    public void Of_more_than_two_groups_the_faster_are_one()
    {
        // 16 · 100.3 / 8 = 200.6
        RingSteps[] rings = Of(1, 10, (-28, 33.3), (-14, 8), (-56, 100.3), (-7, 1));
        Assert.Equal(2, rings.Length);
        Same(Turn / 16, 16, 4, rings[0]);
        Same(Turn / 100.3 / 16, 201, 2, rings[1]);
    }

    [Fact]
    public void A_group_that_takes_more_than_the_square_of_sixteen_steps_is_left_out()
    {
        Same(Turn / 128 / 16, 256, 10, Of(1, 10, (0, 1), (0, 8), (0, 128))[1]);
        Same(Turn / 16, 16, 10, Assert.Single(Of(1, 10, (0, 1), (0, 8), (0, 128.5))));
    }

    private static void Same(double step, int count, double life, RingSteps actual)
    {
        Assert.Equal(step, actual.Step, 1e-12);
        Assert.Equal(count, actual.Count);
        Assert.Equal(life, actual.Life, 1e-12);
    }

    // states that decay, then pairs that turn; the columns of both inputs hold numbers that would turn much faster
    private static RingSteps[] Of(double spacing, double duration, params (double Real, double Imaginary)[] rings)
    {
        int n = 1 + (2 * rings.Length), width = n + 2;
        var generator = new double[n * width];
        generator[0] = -3;
        for (int x = 0; x < n; x++)
        {
            generator[(x * width) + n] = 1000 * (x + 1);
            generator[(x * width) + n + 1] = -3000 * (x + 1);
        }

        for (int k = 0; k < rings.Length; k++)
        {
            int first = 1 + (2 * k), second = first + 1;
            generator[(first * width) + first] = generator[(second * width) + second] = rings[k].Real;
            generator[(first * width) + second] = rings[k].Imaginary;
            generator[(second * width) + first] = -rings[k].Imaginary;
        }

        return RingSteps.Of(WrittenEquations.Phase(n, generator), n, spacing, duration);
    }
}
