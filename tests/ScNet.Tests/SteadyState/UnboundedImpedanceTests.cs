using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// Where the bounds of <see cref="ImpedanceLaws"/> end: with three phases and values that decide the
/// flow, one network lies above the sum of both limits and another below the larger one. Both were found
/// by chance among random networks and agree with matrix exponentials.
/// </summary>
public sealed class UnboundedImpedanceTests
{
    [Fact]
    public void Three_phases_can_lie_above_the_sum_of_both_limits()
    {
        ImpedancePoint point = At(
            new NetworkSketch(
                10,
                [new(1, 3), new(5, 9), new(1, 9)],
                [new(3, 0, 3.5, 0), new(4, 7, 6.5, 0), new(5, 8, 7.5, 0), new(6, 8, 3.5, 0)],
                [
                    new(4, 0, 2, 3.5), new(8, 0, 2, 1.5), new(1, 4, 4, 1.5), new(1, 6, 1, 3.5), new(7, 2, 4, 5.5),
                    new(8, 2, 4, 5.5), new(5, 2, 1, 3.5), new(2, 6, 2, 4.5), new(3, 7, 1, 7.5), new(3, 8, 1, 2.5),
                    new(3, 5, 2, 6.5), new(7, 8, 4, 1.5), new(4, 8, 2, 1.5), new(4, 5, 4, 7.5),
                ]),
            timesCorner: 0.67);
        Assert.True(point.Ohms > 1.12 * (point.SlowOhms + point.FastOhms), $"{point.Ohms}, {point.SlowOhms}, {point.FastOhms}");
    }

    [Fact]
    public void Three_phases_can_lie_below_the_larger_limit()
    {
        ImpedancePoint point = At(
            new NetworkSketch(
                11,
                [new(1, 3), new(4, 9), new(2, 9)],
                [new(3, 7, 7.5, 1.5), new(4, 8, 4.5, 0.25), new(5, 9, 5.5, 1.5), new(6, 10, 2.5, 0.25)],
                [
                    new(0, 7, 6, 7.5), new(0, 8, 2, 1.5), new(0, 10, 1, 2.5), new(7, 1, 1, 2.5), new(8, 1, 4, 1.5),
                    new(1, 4, 1, 2.5), new(9, 1, 1, 3.5), new(1, 6, 4, 6.5), new(8, 2, 1, 3.5), new(2, 9, 4, 5.5),
                    new(2, 10, 2, 5.5), new(6, 2, 1, 3.5), new(7, 8, 2, 5.5), new(7, 4, 1, 7.5), new(9, 7, 1, 3.5),
                    new(4, 3, 2, 7.5), new(9, 3, 2, 6.5), new(3, 10, 4, 1.5), new(3, 6, 2, 1.5), new(8, 6, 5, 6.5),
                    new(4, 9, 3, 5.5), new(6, 4, 2, 4.5), new(9, 6, 2, 3.5),
                ]),
            timesCorner: 0.18);
        Assert.True(point.Ohms < 0.9995 * Math.Max(point.SlowOhms, point.FastOhms), $"{point.Ohms}, {point.SlowOhms}, {point.FastOhms}");
    }

    private static ImpedancePoint At(NetworkSketch sketch, double timesCorner)
    {
        ModeAnalysis analysis = LawSample.Analyse(sketch);
        OutputImpedance impedance = OutputImpedance.Of(analysis);
        double frequencyHz = timesCorner * impedance.CornerFrequencyHz, expected = PeriodicOracle.Of(analysis).ByExponential(frequencyHz);
        Assert.Equal(expected, impedance.Ohms(frequencyHz), 1e-9 * expected);
        return impedance.At(frequencyHz);
    }
}
