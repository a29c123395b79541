using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>A period of 4 s: a phase of 1 s in which a signal is 10 + t, and one of 3 s in which it is 20 + 2t, all exact in binary.</summary>
public sealed class PeriodSamplesTests
{
    private const double FrequencyHz = 0.25;

    private static readonly PeriodSamples s_samples = new([1, 3], FrequencyHz);

    [Fact]
    public void A_time_belongs_to_a_phase_and_counts_from_its_start() =>
        Assert.Equal([10, 10.5, 20, 24, 10, 24, 20.5, 10.25, 25], Of(0, 0.5, 1, 3, 4, -1, 5.25, 400.25, -0.5));

    [Fact]
    public void A_phase_without_a_signal_has_no_values() =>
        Assert.Equal([null, 20.0, null], s_samples.Of([0.5, 1, 4], phase => phase == 0 ? null : Line(phase)));

    // 1e-15 of one period is 4e-15 s, and of a thousand periods 4e-12 s
    [Theory]
    [InlineData(1 - 3e-15, 20)]
    [InlineData(1 - 8e-15, 11)]
    [InlineData(4001 - 2e-12, 20)]
    [InlineData(4001 - 8e-12, 11)]
    [InlineData(-3999 - 2e-12, 20)]
    [InlineData(4 - 2e-15, 10)]
    [InlineData(4 - 8e-15, 26)]
    public void A_time_that_rounding_alone_puts_before_a_boundary_is_on_it(double seconds, double expected) =>
        Assert.Equal(expected, Assert.Single(Of(seconds))!.Value, 1e-11);

    [Fact]
    public void Of_a_phase_shorter_than_rounding_the_first_half_is_its_own()
    {
        double shortest = Math.ScaleB(1, -70);
        PeriodSamples samples = new([shortest, 4], FrequencyHz);
        Assert.Equal([10, 20, 20], samples.Of([0, 0.5 * shortest, shortest], Line).Select(v => Math.Round(v!.Value)));
    }

    [Fact]
    public void No_times_have_no_values() => Assert.Empty(Of());

    private static double?[] Of(params double[] times) => s_samples.Of(times, Line);

    private static StraightLine Line(int phase) => new(10 + (10 * phase), 1 + phase);

    private sealed class StraightLine(double start, double slope) : PhaseWaveform
    {
        public override double Change => throw new NotSupportedException();

        public override double Mean() => throw new NotSupportedException();

        public override double SquareIntegral() => throw new NotSupportedException();

        public override double At(double time) => start + (slope * time);

        public override (double Least, double Greatest) Extremes() => throw new NotSupportedException();
    }
}
