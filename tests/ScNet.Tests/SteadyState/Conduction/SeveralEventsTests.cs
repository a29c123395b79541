using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>Two currents that end phases at light load, where taken whole both phases would end with the largest currents of all.</summary>
public sealed class SeveralEventsTests
{
    private const double Ohms = 0.02;
    private const double Frequency = 1e6;

    /// <summary>Each of two coils that take turns does at half the load what a stage with this coil alone does.</summary>
    [Theory]
    [InlineData(0.2)]
    [InlineData(0.06)]
    [InlineData(0.02)]
    [InlineData(2e-3)]
    [InlineData(2e-6)]
    public void Two_coils_in_turn_share_the_load(double load)
    {
        Converter two = Converter.Create("two coils in turn").Input("vin").Output("vout").Duties(0.1, 0.4, 0.1, 0.4)
            .Inductor("first", "x", "vout", Stages.Henries, Ohms, untilZero: 2).Inductor("second", "y", "vout", Stages.Henries, Ohms, untilZero: 4)
            .Switch("high1", "vin", "x", on: 1, Ohms).Switch("low1", "x", Converter.ReferenceNode, on: 2, Ohms)
            .Switch("high2", "vin", "y", on: 3, Ohms).Switch("low2", "y", Converter.ReferenceNode, on: 4, Ohms).Build();
        Converter one = Converter.Create("one of them").Input("vin").Output("vout").Duties(0.1, 0.9)
            .Inductor("coil", "x", "vout", Stages.Henries, Ohms, untilZero: 2)
            .Switch("high", "vin", "x", on: 1, Ohms).Switch("low", "x", Converter.ReferenceNode, on: 2, Ohms).Build();
        ConductionPoint found = ConductionModel.Of(two).At(new(10, load, Frequency)), expected = ConductionModel.Of(one).At(new(10, 0.5 * load, Frequency));
        Assert.Equal(expected.Ratio, found.Ratio, 1e-12);
        Assert.Equal([expected.ConductingShares[1], expected.ConductingShares[1]], new[] { found.ConductingShares[1], found.ConductingShares[3] }, Closeness.Within(1e-12));
    }

    /// <summary>
    /// A stage of three levels puts half the input, 5 V, before its coil for 0.2 µs twice in 1 µs: up to p = 0.2 (5 - V) and in p/V back
    /// to zero, a charge of p (0.2 + p/V) in 1 µs. The flying capacitor's ripple takes less than a per cent of it.
    /// </summary>
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.02)]
    [InlineData(1e-3)]
    public void Two_phases_of_one_coil_end_at_light_load(double load)
    {
        ConductionPoint found = ConductionModel.Of(Stages.ThreeLevel(1e-6)).At(new(10, load, Frequency));
        double volts = found.AverageOutputVoltageVolts, peak = 0.2 * (5 - volts);
        Assert.Equal(load, peak * (0.2 + (peak / volts)), 0.01 * load);
        Assert.Equal(peak / volts, found.ConductingShares[1], 0.01 * peak / volts);
        Assert.Equal(found.ConductingShares[1], found.ConductingShares[3], 1e-12);
    }
}
