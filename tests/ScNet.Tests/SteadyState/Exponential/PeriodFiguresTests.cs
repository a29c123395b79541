using ScNet.Numerics;
using ScNet.SteadyState;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Figures and details of solved periods by hand.</summary>
public sealed class PeriodFiguresTests
{
    /// <summary>
    /// Between stiff ports 1 Ω and 3 Ω meet at 4 F, and 1 F hangs on the input over 2 Ω: without output current the output
    /// follows the input, and both capacitors with it; states are √C times that.
    /// </summary>
    [Fact]
    public void With_a_stiff_output_the_open_state_is_that_without_output_current()
    {
        Circuit circuit = new Circuit(LoadKind.Stiff, 1).Resistor("vin", "x", 1).Resistor("x", "vout", 3).Capacitor("x", Converter.ReferenceNode, 4)
            .Resistor("vin", "y", 2).Capacitor("y", Converter.ReferenceNode, 1);
        PeriodFigures found = Find(circuit, 2);
        Assert.Equal([2, 1], [.. found.OpenState.Select(x => Math.Round(x, 13))]);
        Assert.Equal(1, found.Ratios.Voltage, 1e-14);
        Assert.Equal(4, found.Ohms, 1e-14);
        Assert.Equal(1, found.Ratios.Current, 1e-14);

        // exp(−t/τ) with τ = 4 · 3/4 and 2 seconds over a period of 2
        Assert.Equal(4, found.Inverse.Length);
        Assert.Equal(1 / (1 - Math.Exp(-2 / 3.0)), found.Inverse[0], 1e-13);
        Assert.Equal(1 / (1 - Math.Exp(-1)), found.Inverse[3], 1e-13);
        Assert.Equal([0, 0], found.Inverse[1..3]);
    }

    /// <summary>4 F at the output behind a divider of 1 Ω and 3 Ω: 3/4 of the input; 1 F behind another divider, at half of it.</summary>
    [Fact]
    public void With_a_load_current_the_open_state_is_that_of_the_input_alone()
    {
        Circuit circuit = new Circuit(LoadKind.Current, 1).Resistor("vin", "vout", 1).Resistor("vout", Converter.ReferenceNode, 3).Capacitor("vout", Converter.ReferenceNode, 4)
            .Resistor("vin", "y", 2).Resistor("y", Converter.ReferenceNode, 2).Capacitor("y", Converter.ReferenceNode, 1);
        PeriodFigures found = Find(circuit, 0.7);
        Assert.Equal([1.5, 0.5], [.. found.OpenState.Select(x => Math.Round(x, 13))]);
        Assert.Equal(0.75, found.Ratios.Voltage, 1e-14);
        Assert.Equal(0.75, found.Ohms, 1e-14);
        Assert.Equal(0.75, found.Ratios.Current, 1e-14);

        // 1/4 and 1/4 of a siemens
        Assert.Equal(0.5, found.Ratios.InputSiemens, 1e-14);
    }

    /// <summary>x' = −x + u rests at u, and x − (1 + δ) u is drawn: no more than rounding, or clearly negative.</summary>
    [Theory]
    [InlineData(4e-15, 0)]
    [InlineData(0.5, -0.5)]
    [InlineData(-0.5, 0.5)]
    public void A_negative_conductance_within_its_error_is_none(double less, double expected)
    {
        PeriodMap<PlainReal> map = new(WrittenEquations.Of(
            WrittenEquations.Structure(1), [1], WrittenEquations.Phase<PlainReal>(2, [-1, 1, 1], [1, -1 - less, 0], [1, 0, 0])));
        Assert.True(map.TryRun(PlainReal.Of(1)));
        double siemens = PeriodFigures.Of(map, PlainReal.Of(1), isStiff: false, 0).Ratios.InputSiemens;
        Assert.Equal(expected, siemens, expected == 0 ? 0 : 1e-14);
    }

    [Theory]
    [InlineData(3, 0)]
    [InlineData(2.5, -3)]
    public void A_negative_conductance_of_just_its_error_is_none(double error, double expected)
    {
        PeriodMap<PlainReal> map = BarePeriods.Of<PlainReal>([[-3, 1], [1, -1]], [[error, 0], [0, 0]]);
        Assert.Equal(expected, PeriodFigures.Of(map, PlainReal.Of(1), isStiff: false, 0).Ratios.InputSiemens);
    }

    [Theory]
    [InlineData(1, 1, 1, 1, true)]
    [InlineData(double.NaN, 1, 1, 1, false)]
    [InlineData(1, double.PositiveInfinity, 1, 1, false)]
    [InlineData(1, 1, double.NaN, 1, false)]
    [InlineData(1, 1, 1, double.NegativeInfinity, false)]
    public void Figures_are_finite_when_all_are(double ohms, double ratio, double current, double siemens, bool expected) =>
        Assert.Equal(expected, new PeriodFigures(ohms, new PortRatios(ratio, current, siemens), 0, [], []).IsFinite);

    private static PeriodFigures Find(Circuit circuit, double periodSeconds)
    {
        PeriodMap<DoubleDouble> map = new(StateEquations<DoubleDouble>.Of(circuit.Structure(), circuit.Values()));
        Assert.True(map.TryRun(DoubleDouble.Of(periodSeconds)));
        return PeriodFigures.Of(map, DoubleDouble.Of(periodSeconds), circuit.Load == LoadKind.Stiff, 1);
    }
}
