using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Signals in closed form: a ring beside two decays.</summary>
public sealed class ExponentialWaveformTests
{
    private const double Seconds = 2;

    [Fact]
    public void Change_mean_square_and_values_are_those_of_a_cosine()
    {
        const double Rate = 5;
        ExponentialWaveform wave = Of(Rate, decay: 1, faster: 5, ring: 3, slow: 0, fast: 0);
        Assert.Equal(3 * (Math.Cos(Rate * Seconds) - 1), wave.Change, 1e-14);
        Assert.Equal(3 * Math.Sin(Rate * Seconds) / (Rate * Seconds), wave.Mean(), 1e-14);
        Assert.Equal(9 * ((Seconds / 2) + (Math.Sin(2 * Rate * Seconds) / (4 * Rate))), wave.SquareIntegral(), 1e-13);
        Assert.All([0, 0.1, 0.77, 1.9, 2], t => Assert.Equal(3 * Math.Cos(Rate * t), wave.At(t), 1e-13));
        (double least, double greatest) = wave.Extremes();
        Assert.Equal(-3, least, 1e-12);
        Assert.Equal(3, greatest, 1e-12);
    }

    [Theory]
    [InlineData(1, 5)]
    [InlineData(0.7, 9)]
    [InlineData(2, 3)]
    [InlineData(0.1, 20)]
    public void The_highest_turn_of_a_fast_ring_is_found_wherever_it_lies(double decay, double faster)
    {
        // exp(-a t) - exp(-b t) + cos(2000 π t)/10 is greatest at the turn that lies best on the hump
        double Hump(double t) => Math.Exp(-decay * t) - Math.Exp(-faster * t);
        int best = Enumerable.Range(0, 2001).MaxBy(k => Hump(k * 1e-3));
        double greatest = Hump(best * 1e-3) + 0.1, oneTurn = greatest - 0.1 - Math.Min(Hump((best - 1) * 1e-3), Hump((best + 1) * 1e-3));
        const double Rate = 2000 * Math.PI;
        Assert.Equal(greatest, Of(Rate, decay, faster, ring: 0.1, slow: 1, fast: -1).Extremes().Greatest, oneTurn);
        Assert.Equal(-greatest, Of(Rate, decay, faster, ring: -0.1, slow: -1, fast: 1).Extremes().Least, oneTurn);
    }

    [Fact]
    public void A_ring_on_a_decay_is_highest_at_the_start_and_lowest_at_the_last_turn()
    {
        (double least, double greatest) = Of(2000 * Math.PI, decay: 1, faster: 5, ring: 0.1, slow: 1, fast: 0).Extremes();
        Assert.Equal(1.1, greatest, 1e-12);
        Assert.Equal(Math.Exp(-1.9995) - 0.1, least, 1e-8);
    }

    /// <summary>The product of two slopes of 10⁻¹⁷⁰ is less than any number.</summary>
    [Fact]
    public void However_small_a_signal_is_its_turns_are_found()
    {
        const double Size = 1e-170;
        (double least, double greatest) = Of(5, decay: 1, faster: 5, ring: 3 * Size, slow: 0, fast: 0).Extremes();
        Assert.Equal(-3, least / Size, 1e-12);
        Assert.Equal(3, greatest / Size, 1e-12);

        // as many turns as lie between samples
        (double Least, double Greatest) small = Fast(Size), plain = Fast(1);
        Assert.Equal(plain.Least, small.Least / Size, 1e-12);
        Assert.Equal(plain.Greatest, small.Greatest / Size, 1e-12);
        (double Least, double Greatest) Fast(double size) =>
            Of(1990 * Math.PI, decay: 0.7, faster: 9, ring: 0.1 * size, slow: size, fast: -size).Extremes();
    }

    /// <summary>t²/2 - t, whose slope is zero without rounding at one of the times that are looked at.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void A_slope_of_exactly_zero_does_not_hide_an_extreme(int sign)
    {
        PhaseEquations<DoubleDouble> equations = Equations(2, [0, 1, 0, 0, 0, 1]);
        PhaseTrajectory trajectory = PhaseTrajectory.From(equations, Fine([0, -1, 1]), DoubleDouble.Of(2));
        (double least, double greatest) = new ExponentialWaveform(trajectory, Fine([sign, 0, 0])).Extremes();
        Assert.Equal(sign > 0 ? (-0.5, 0) : (0, 0.5), (least, greatest));
    }

    /// <summary>A small ring on what rises to the end, where both are greatest: beyond it they would be greater still.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void Nothing_is_looked_for_beyond_the_end_of_a_phase(int sign)
    {
        (double least, double greatest) = Of(2000 * Math.PI, decay: 1, faster: 5, ring: sign * 0.001, slow: -sign, fast: 0).Extremes();
        Assert.Equal(0.001 - Math.Exp(-2), sign > 0 ? greatest : -least, 1e-12);
    }

    // cosine and sine of the ring, two decays, and one input that does nothing
    private static ExponentialWaveform Of(double rate, double decay, double faster, double ring, double slow, double fast)
    {
        PhaseEquations<DoubleDouble> equations = Equations(
            4, [0, -rate, 0, 0, 0, rate, 0, 0, 0, 0, 0, 0, -decay, 0, 0, 0, 0, 0, -faster, 0]);
        DoubleDouble[] change = new DoubleDouble[20], integral = new DoubleDouble[20];
        PhaseExponential.Of<DoubleDouble>(
            4, 5, equations.Generator, equations.Norm, DoubleDouble.Of(Seconds), change, integral, new DoubleDouble[PhaseExponential.Room(4, 5)]);
        return new(PhaseTrajectory.Of(equations, Fine([1, 0, 1, 1, 1]), change, integral, DoubleDouble.Of(Seconds)), Fine([ring, 0, slow, fast, 0]));
    }

    private static PhaseEquations<DoubleDouble> Equations(int n, double[] generator) =>
        new(1, Fine(generator), [], [], new DoubleDouble[n + 1], [], [], [], []);

    private static DoubleDouble[] Fine(double[] values) => Array.ConvertAll(values, DoubleDouble.Of);
}
