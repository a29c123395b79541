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

    private static ModalWaveform Parabola(double duration, double start, double slope, double height) =>
        new(new PhaseBasis([0], duration), start, slope, [], [2 * height / duration]);
}
