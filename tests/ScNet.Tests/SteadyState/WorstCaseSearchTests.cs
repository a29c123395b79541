using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// A divider by two with a load current on an output capacitor, whose worst output capacitance is the largest and not, as
/// usually, the least. The current of the flying capacitor decays in both phases with (1/C + 1/C_out)/R to I C/(C + C_out)
/// and has the mean I, so that with κ = C_out/(C + C_out) and y = (1/C + 1/C_out)/(4 f R) the loop of R ohms dissipates
/// I² R (1 + κ² (y coth y - 1)). That rises with R and with C_out and falls with C.
/// </summary>
public sealed class WorstCaseSearchTests
{
    private const double FlyFarads = 2;
    private const double OutputFarads = 0.5;
    private const double LoopOhms = 12;
    private const double EsrOhms = 3;
    private const double FrequencyHz = 0.02;

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void Of_few_values_the_worst_corner_is_found(int direction) => AssertFound(Divider(2, 2), new(0.2, 0.3, 0.1), direction, direction);

    // from the usual corner, that of the least output capacitance, the slopes lead to the worst one
    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void Of_many_values_slopes_lead_from_the_usual_corner_to_the_worst(int direction) => AssertFound(Divider(6, 6), new(0.2, 0.3, 0.1), direction, direction);

    // A step must gain a millionth, which tolerances of a millionth do not: corners decide alone. Two capacitances, a series
    // resistance and seven switches are ten values, a switch that never closes and a series resistance of zero are none.
    [Theory]
    [InlineData(3, 4, 1, 1)]
    [InlineData(3, 4, -1, -1)]
    [InlineData(4, 4, 1, -1)]
    [InlineData(4, 4, -1, 1)]
    public void Up_to_ten_values_all_corners_are_tried_and_beyond_that_the_usual_one(int first, int second, int direction, int output) =>
        AssertFound(Divider(first, second), new(1e-6, 1e-6, 1e-6), direction, output);

    // with one kind of value exact, eight switches and two capacitances are ten values, and two capacitances and a resistance three
    [Theory]
    [InlineData(4, 4, 1e-6, 0)]
    [InlineData(6, 6, 0, 1e-6)]
    public void Values_without_a_tolerance_do_not_count(int first, int second, double onResistance, double esr) =>
        AssertFound(Divider(first, second), new(1e-6, onResistance, esr), direction: 1, output: 1);

    // the usual corner first, from which tolerances of a millionth do not lead away, and the one that slopes lead to
    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void Elements_in_another_order_make_the_same(int direction)
    {
        AssertFound(Divider(4, 4, isReversed: true), new(1e-6, 1e-6, 1e-6), direction, -direction);
        AssertFound(Divider(6, 6, isReversed: true), new(0.2, 0.3, 0.1), direction, direction);
        AssertFound(Divider(2, 2, isReversed: true), new(0.2, 0.3, 0.1), direction, direction);
    }

    /// <summary>
    /// Per cent of the output capacitance the closed form changes by some 0.015 per cent. A capacitance of 4e-7 of it beside it promises
    /// 0.2 · 0.015 · 4e-7 = 1.2e-9 of the impedance, too little to be moved with the output's: it stays at the usual corner.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void A_value_that_promises_less_than_a_hundred_millionth_is_not_moved(int direction)
    {
        const double Small = 4e-7 * OutputFarads;
        double expected = Closed(
            FlyFarads * (1 - (direction * 0.2)),
            (OutputFarads * (1 + (direction * 0.2))) + (Small * (1 - (direction * 0.2))),
            (LoopOhms * (1 + (direction * 0.3))) + (EsrOhms * (1 + (direction * 0.1))));
        double found = WorstCaseSearch.Ohms(Divider(6, 6, beside: Small), FrequencyHz, new(0.2, 0.3, 0.1), direction);
        Assert.Equal(expected, found, 1e-11 * expected);
    }

    [Fact]
    public void The_closed_form_is_the_impedance()
    {
        ModeAnalysis analysis = Divider(2, 3);
        double expected = Closed(FlyFarads, OutputFarads, LoopOhms + EsrOhms);
        Assert.Equal(expected, OutputImpedance.Of(analysis).Ohms(FrequencyHz), 1e-12 * expected);
    }

    private static void AssertFound(ModeAnalysis analysis, ComponentTolerances tolerances, int direction, int output)
    {
        double expected = Closed(
            FlyFarads * (1 - (direction * tolerances.Capacitance)),
            OutputFarads * (1 + (output * tolerances.Capacitance)),
            (LoopOhms * (1 + (direction * tolerances.OnResistance))) + (EsrOhms * (1 + (direction * tolerances.Esr))));
        Assert.Equal(expected, WorstCaseSearch.Ohms(analysis, FrequencyHz, tolerances, direction), 1e-11 * expected);
    }

    private static double Closed(double fly, double output, double ohms)
    {
        double share = output / (fly + output), y = ((1 / fly) + (1 / output)) / (4 * FrequencyHz * ohms);
        return ohms * (1 + (share * share * ((y / Math.Tanh(y)) - 1)));
    }

    // so many switches one after the other between input and capacitor in phase 1, and between capacitor and output in phase 2
    private static ModeAnalysis Divider(int first, int second, bool isReversed = false, double beside = 0)
    {
        ConverterBuilder builder = Converter.Create("half").Input("vin").Output("vout", LoadKind.Current);
        if (!isReversed)
        {
            builder.Capacitor("out", "vout", "gnd", OutputFarads).Switch("never", "vin", "gnd");
        }

        builder.Capacitor("fly", "p", "n", FlyFarads, EsrOhms);
        InARow(builder, 1, first, "vin", "n", "vout");
        InARow(builder, 2, second, "vout", "n", "gnd");
        if (isReversed)
        {
            builder.Capacitor("out", "vout", "gnd", OutputFarads).Switch("never", "vin", "gnd");
        }

        if (beside > 0)
        {
            builder.Capacitor("beside", "vout", "gnd", beside);
        }

        Converter converter = builder.Build();
        return ModeAnalysis.Of(converter, converter.Modes[0]);
    }

    private static void InARow(ConverterBuilder builder, int phase, int count, string top, string low, string bottom)
    {
        string Node(int k) => k == 0 ? top : k == count - 1 ? "p" : $"x{phase}{k}";
        for (int k = 0; k < count - 1; k++)
        {
            builder.Switch($"s{phase}{k}", Node(k), Node(k + 1), on: phase, LoopOhms / count);
        }

        builder.Switch($"t{phase}", low, bottom, on: phase, LoopOhms / count);
    }
}
