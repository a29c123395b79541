using ScNet.SteadyState;
using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>Events in networks with other inductors, and in phases in which a current turns several times.</summary>
public sealed class ConductionNetworkTests
{
    private const double Frequency = 1e6;

    [Fact]
    public void The_first_zero_of_a_ringing_current_ends_the_phase()
    {
        // coil and output capacitor ring many times in phase 2 where nothing ends it
        Converter converter = Stages.StepDown(new(1, 20), 0.01, LoadKind.Current, 2e-9);
        ConductionPoint point = ConductionModel.Of(converter).At(new OperatingPoint(10, 0.01, Frequency));
        Assert.True(point.IsDiscontinuous);
        double end = 0.05 + point.ConductingShares[1];
        double[] times = [.. Enumerable.Range(1, 99).Select(k => k * end / 100 / Frequency)];
        Assert.All(point.Steady.SampleInductorCurrent("coil", times), i => Assert.True(i > 0));
        Assert.Equal(0, point.Steady.SampleInductorCurrent("coil", [end / Frequency])[0], 1e-9);
        Assert.True(point.ConductingShares[1] * 1 / Frequency < Math.PI * Math.Sqrt(Stages.Henries * 2e-9));
    }

    [Theory]
    [InlineData(0.02)]
    [InlineData(0.4)]
    [InlineData(3)]
    public void The_coil_of_an_input_filter_carries_on_while_the_other_rests(double load)
    {
        Converter converter = Converter.Create("step-down behind a filter").Input("vin").Output("vout").Duties(0.3, 0.7)
            .Inductor("filter", "vin", "a", 4e-7, 0.03).Capacitor("in", "a", Converter.ReferenceNode, 3e-7, esrOhms: 0.02)
            .Inductor("coil", "x", "vout", 1e-6, 0.02, untilZero: 2)
            .Switch("high", "a", "x", on: 1, ohms: 0.02).Switch("low", "x", Converter.ReferenceNode, on: 2, ohms: 0.02).Build();
        ConductionPoint point = ConductionModel.Of(converter).At(new OperatingPoint(10, load, Frequency));
        PeriodicSteadyState steady = point.Steady;
        Assert.Equal(load < 1, point.IsDiscontinuous);
        double elements = OperatedConverters.ElementDissipationWatts(steady);
        Assert.Equal(steady.InputPowerWatts - steady.OutputPowerWatts, elements, 1e-10 * steady.InputPowerWatts);
        Assert.Equal(steady.AverageInputCurrentAmperes, steady.Inductors["filter"].AverageCurrentAmperes, 1e-10);
        Assert.Equal(load, steady.Inductors["coil"].AverageCurrentAmperes, 1e-10);
        Assert.True(point.IsDiscontinuous == (steady.SampleInductorCurrent("coil", [0.9999 / Frequency])[0] < 1e-12));
    }

    [Fact]
    public void Two_coils_in_turn_do_the_same()
    {
        Converter converter = Converter.Create("two coils in turn").Input("vin").Output("vout").Duties(0.1, 0.4, 0.1, 0.4)
            .Inductor("first", "x", "vout", 1e-6, 0.02, untilZero: 2).Inductor("second", "y", "vout", 1e-6, 0.02, untilZero: 4)
            .Switch("high1", "vin", "x", on: 1, ohms: 0.02).Switch("low1", "x", Converter.ReferenceNode, on: 2, ohms: 0.02)
            .Switch("high2", "vin", "y", on: 3, ohms: 0.02).Switch("low2", "y", Converter.ReferenceNode, on: 4, ohms: 0.02).Build();
        ConductionPoint point = ConductionModel.Of(converter).At(new OperatingPoint(10, 0.2, Frequency));
        Assert.True(point.IsDiscontinuous);
        Assert.Equal(point.ConductingShares[1], point.ConductingShares[3], 1e-12);
        Assert.Equal(0.1, point.Steady.Inductors["first"].AverageCurrentAmperes, 1e-11);
        Assert.Equal(0.1, point.Steady.Inductors["second"].AverageCurrentAmperes, 1e-11);

        // half of them at half the load is the plain stage
        Converter one = Converter.Create("one of them").Input("vin").Output("vout").Duties(0.1, 0.9)
            .Inductor("coil", "x", "vout", 1e-6, 0.02, untilZero: 2)
            .Switch("high", "vin", "x", on: 1, ohms: 0.02).Switch("low", "x", Converter.ReferenceNode, on: 2, ohms: 0.02).Build();
        Assert.Equal(ConductionModel.Of(one).At(new OperatingPoint(10, 0.1, Frequency)).Ratio, point.Ratio, 1e-12);
    }
}
