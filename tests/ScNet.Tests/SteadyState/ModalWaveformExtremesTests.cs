using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// Extremes of parabolas that lie between points of the grid. With a mode of rate zero a voltage is
/// c + m s + K s (1 - s), s = t/τ, with K half its integral weight times τ: its extreme lies at s* = (1 + m/K) / 2 and is c + K s*².
/// </summary>
public sealed class ModalWaveformExtremesTests
{
    // of 24 equal parts
    private const double BetweenPoints = 0.3;

    [Theory]
    [InlineData(24, 1)]
    [InlineData(0.5, 1)]
    [InlineData(24, 1e-20)]
    [InlineData(3e-7, 1e12)]
    public void A_peak_between_grid_points_is_the_greatest_value(double duration, double height)
    {
        double slope = ((2 * BetweenPoints) - 1) * height;
        (double least, double greatest) = Parabola(duration, 0, slope, height).Extremes();
        Assert.Equal(slope, least, 1e-14 * height);
        Assert.Equal(BetweenPoints * BetweenPoints * height, greatest, 1e-13 * height);
    }

    [Theory]
    [InlineData(24, 1)]
    [InlineData(0.5, 1)]
    [InlineData(24, 1e-20)]
    [InlineData(3e-7, 1e12)]
    public void A_trough_between_grid_points_is_the_least_value(double duration, double depth)
    {
        double slope = (1 - (2 * BetweenPoints)) * depth;
        (double least, double greatest) = Parabola(duration, 0, slope, -depth).Extremes();
        Assert.Equal(slope, greatest, 1e-14 * depth);
        Assert.Equal(-BetweenPoints * BetweenPoints * depth, least, 1e-13 * depth);
    }

    // the end, 0.98, lies above the last grid point before the peak, 0.9791, and below the peak, 0.9801
    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void An_end_hides_no_extreme_that_is_a_little_beyond_it(double sign)
    {
        const double Height = 1e4, Place = 0.99;
        ModalWaveform wave = Parabola(240, 0, sign * ((2 * Place) - 1) * Height, sign * Height);
        (double least, double greatest) = wave.Extremes();
        Assert.Equal(Place * Place * Height, sign > 0 ? greatest : -least, 1e-9);
        Assert.Equal(0, sign > 0 ? least : greatest);
    }

    [Fact]
    public void The_ends_of_a_current_are_values_of_all_its_parts()
    {
        // 1 + 3 s + 4 (1/2 - s) = 3 - s
        Assert.Equal((2, 3), new ModalWaveform(new PhaseBasis([0], 2), 1, 3, [4], []).Extremes());

        // 1 + 5 s + 4 (1/2 - s) = 3 + s
        Assert.Equal((3, 4), new ModalWaveform(new PhaseBasis([0], 2), 1, 5, [4], []).Extremes());
    }

    // with a slope m a current m s + a ψ, ψ = 2·2^-s - 1/ln 2, turns where 2^-s = m / (2 a ln 2)
    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void A_current_that_turns_has_its_extreme_where_its_derivative_is_zero(double sign)
    {
        const double Duration = 7, Turn = 0.4321;
        double slope = 2 * Math.Log(2) * Math.Pow(2, -Turn), expected = (slope * Turn) + (2 * Math.Pow(2, -Turn)) - (1 / Math.Log(2));
        ModalWaveform wave = new(new PhaseBasis([Math.Log(2) / Duration], Duration), 0, sign * slope, [sign], []);
        (double least, double greatest) = wave.Extremes();
        Assert.Equal(expected, sign > 0 ? least : -greatest, 1e-14);
        Assert.Equal(Math.Max(2, slope + 1) - (1 / Math.Log(2)), sign > 0 ? greatest : -least, 1e-14);
    }

    [Fact]
    public void A_trough_that_two_modes_make_lies_where_their_derivatives_cancel()
    {
        // a (2·2^-s - 1/ln 2) - b (1/2 - s) turns where 2^-s = b / (2 a ln 2)
        const double Duration = 7, Turn = 0.61;
        double weight = 2 * Math.Log(2) * Math.Pow(2, -Turn);
        ModalWaveform wave = new(new PhaseBasis([Math.Log(2) / Duration, 0], Duration), 0, 0, [1, -weight], []);
        Assert.Equal((2 * Math.Pow(2, -Turn)) - (1 / Math.Log(2)) - (weight * (0.5 - Turn)), wave.Extremes().Least, 1e-14);
    }

    // values that are all below zero, or all above, have extremes too
    [Fact]
    public void A_peak_below_zero_and_a_trough_above_it_are_found()
    {
        Assert.Equal(-5 + (BetweenPoints * BetweenPoints), Parabola(24, -5, (2 * BetweenPoints) - 1, 1).Extremes().Greatest, 1e-13);
        Assert.Equal(5 - (BetweenPoints * BetweenPoints), Parabola(24, 5, 1 - (2 * BetweenPoints), -1).Extremes().Least, 1e-13);
    }

    // The derivative A + B e^-t + C e^-t/2, t from 0 to 10, starts at 1e-8 with the slope 60 and the curvature -1e4: before the first
    // grid point, 0.02, it rises to 0.18 and falls through zero, where u = e^-t/2 solves A + B u² + C u = 0. Its start alone promises nothing.
    [Theory]
    [InlineData(true, 1)]
    [InlineData(true, -1)]
    [InlineData(false, 1)]
    [InlineData(false, -1)]
    public void A_derivative_that_rises_before_it_falls_hides_no_peak(bool isCurrent, double sign)
    {
        const double Duration = 10, C = 4 * (1e4 - 60), B = -1e4 - (C / 4), A = 1e-8 - B - C;
        double first = 1 - Math.Exp(-Duration), second = 1 - Math.Exp(-Duration / 2), u = (-C + Math.Sqrt((C * C) - (4 * A * B))) / (2 * B);
        double time = -2 * Math.Log(u), peak = (A * time) + (B * (1 - (u * u))) + (2 * C * (1 - u));
        Assert.InRange(time, 0.01, 0.015);

        // ψ' is -λ e^-λt / (1 - e^-λτ) and ψ is e^-λt / (1 - e^-λτ) - 1/(λτ)
        PhaseBasis basis = new([1, 0.5], Duration);
        Assert.InRange(basis.Grid[1], 0.0199, 0.0201);
        double[] weights = isCurrent ? [-sign * B * first, -sign * 2 * C * second] : [sign * B * first, sign * C * second];
        double start = isCurrent ? (-weights[0] * ((1 / first) - 0.1)) - (weights[1] * ((1 / second) - 0.2)) : 0;
        double slope = Duration * ((sign * A) + (isCurrent ? 0 : (0.1 * weights[0]) + (0.2 * weights[1])));
        ModalWaveform wave = isCurrent ? new(basis, start, slope, weights, []) : new(basis, 0, slope, [], weights);
        (double least, double greatest) = wave.Extremes();
        Assert.Equal(peak, sign > 0 ? greatest : -least, 1e-9);
    }

    private static ModalWaveform Parabola(double duration, double start, double slope, double height) =>
        new(new PhaseBasis([0], duration), start, slope, [], [2 * height / duration]);
}
