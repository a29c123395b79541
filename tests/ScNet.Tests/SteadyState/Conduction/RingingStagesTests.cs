using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>Stages whose coil and output capacitor ring within a period: 0.28 µs with 1 µH and 2 nF.</summary>
public sealed class RingingStagesTests
{
    private const double OnSeconds = 3e-8;
    private const double RingSeconds = 2.80993e-7;

    [Fact]
    public void In_a_thousand_million_times_the_time_a_current_ends_at_the_same_share()
    {
        for (int k = 0; k < 8; k++)
        {
            double rings = 4 + (k / 8.0);
            ConductionPoint fast = At(rings, 0.01, 1), slow = At(rings, 0.01, 1e9);
            Assert.True(fast.IsDiscontinuous);
            Assert.Equal(fast.ConductingShares[1], slow.ConductingShares[1], 1e-10);
        }
    }

    /// <summary>
    /// In a period of about one ring the current may flow back and forth where nothing ends it, be below zero for a part of the phase only, or
    /// begin the phase below zero. With its end in time the load takes all of it: what flows forward.
    /// </summary>
    [Theory]
    [InlineData(0.0154)]
    [InlineData(0.2)]
    [InlineData(1.3)]
    [InlineData(1.54)]
    [InlineData(3)]
    public void A_stage_that_rings_at_the_switching_frequency_never_feeds_back(double load)
    {
        ConductionPoint point = At(0.9, load, 1);
        Assert.True(point.IsDiscontinuous);
        Assert.Equal(load, point.Steady.Inductors["coil"].AverageCurrentAmperes, 1e-9);
        double seconds = OnSeconds + (0.9 * RingSeconds), end = OnSeconds + (point.ConductingShares[1] * seconds);
        double[] amperes = [.. point.Steady.SampleInductorCurrent("coil", [.. Enumerable.Range(1, 99).Select(k => k * end / 100)])];
        Assert.All(amperes, i => Assert.True(i > 0));
        Assert.Equal(0, point.Steady.SampleInductorCurrent("coil", [end])[0], 1e-9);
    }

    private static ConductionPoint At(double rings, double load, double slower)
    {
        double seconds = OnSeconds + (rings * RingSeconds);
        Fractions.Fraction duty = Fractions.Fraction.FromDoubleRounded(OnSeconds / seconds);
        Converter stage = Converter.Create("step-down").Input("vin").Output("vout", LoadKind.Current).Duties(duty, 1 - duty)
            .Inductor("coil", "x", "vout", slower * 1e-6, 0.01, untilZero: 2).Capacitor("out", "vout", Converter.ReferenceNode, slower * 2e-9, esrOhms: 2e-3)
            .Switch("high", "vin", "x", on: 1, 0.01).Switch("low", "x", Converter.ReferenceNode, on: 2, 0.02).Build();
        return ConductionModel.Of(stage).At(new(10, load, 1 / (slower * seconds)));
    }
}
