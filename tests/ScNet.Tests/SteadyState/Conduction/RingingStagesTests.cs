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

    // a period of about one ring
    [Theory]
    [InlineData(1.54)]
    [InlineData(3)]
    public void The_coil_carries_the_load_also_where_it_rings_at_the_switching_frequency(double load) =>
        Assert.Equal(load, At(0.9, load, 1).Steady.Inductors["coil"].AverageCurrentAmperes, 1e-9);

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
