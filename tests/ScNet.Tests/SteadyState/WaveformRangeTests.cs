using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>How far signals go whose least and greatest value in each phase are given.</summary>
public sealed class WaveformRangeTests
{
    [Fact]
    public void Peak_to_peak_is_the_largest_less_the_least_of_all_phases()
    {
        Assert.Equal(5, WaveformRange.PeakToPeak([Within(1, 3), Within(-2, 0.5)]));
        Assert.Equal(2, WaveformRange.PeakToPeak([Within(1, 3)]));
        Assert.Equal(4, WaveformRange.PeakToPeak([Within(-5, -4), Within(-2, -1)]));
    }

    [Fact]
    public void The_range_of_a_phase_is_from_its_least_to_its_greatest_value() =>
        Assert.Equal(new Interval<double>(-3, 7), WaveformRange.Of(Within(-3, 7)));

    [Fact]
    public void The_peak_is_the_value_of_the_largest_magnitude_with_its_sign()
    {
        Assert.Equal(2, Peak(Within(-1, 2)));
        Assert.Equal(-3, Peak(Within(-3, 2)));
        Assert.Equal(5, Peak(Within(-3, 5)));
        Assert.Equal(-3, Peak(Within(-1, 2), null, Within(-3, 1)));
        Assert.Equal(4, Peak(Within(-3, 1), Within(-2, 4)));
        Assert.Equal(4, Peak(Within(-1, 4), Within(-2, 3)));
        Assert.Equal(-4, Peak(Within(-4, 1), Within(-3, 2)));
    }

    [Fact]
    public void Of_two_peaks_of_one_magnitude_the_positive_counts_within_a_phase_and_the_earlier_over_phases()
    {
        Assert.Equal(2, Peak(Within(-2, 2)));
        Assert.Equal(-3, Peak(Within(-3, 1), Within(-1, 3)));
        Assert.Equal(3, Peak(Within(-1, 3), Within(-3, 1)));
    }

    [Fact]
    public void Where_no_phase_has_a_signal_the_peak_is_zero()
    {
        Assert.Equal(0, Peak());
        Assert.Equal(0, Peak(null, null));
        Assert.Equal(0, Peak(Within(0, 0)));
    }

    private static double Peak(params PhaseWaveform?[] phases) => WaveformRange.Peak(phases);

    private static Range Within(double least, double greatest) => new(least, greatest);

    private sealed class Range(double least, double greatest) : PhaseWaveform
    {
        public override double Change => throw new NotSupportedException();

        public override double Mean() => throw new NotSupportedException();

        public override double SquareIntegral() => throw new NotSupportedException();

        public override double At(double time) => throw new NotSupportedException();

        public override (double Least, double Greatest) Extremes() => (least, greatest);
    }
}
