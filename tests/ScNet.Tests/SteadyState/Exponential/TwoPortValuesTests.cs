using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>The two-port from charges written down by hand; the period lasts a quarter of a second, so that averages are four times the charges.</summary>
public sealed class TwoPortValuesTests
{
    // input current, output voltage by input voltage and load current
    private static readonly double[][] s_current = [[0.03125, 0.0625], [0.125, -0.5]];

    // input and output current by input and output voltage
    private static readonly double[][] s_stiff = [[0.1875, -0.0625], [0.125, -0.0625]];
    private static readonly double[][] s_none = BarePeriods.Single(2, 0, 0, 0);

    [Fact]
    public void With_a_current_load_the_figures_are_averages()
    {
        Assert.Equal((0.5, 2, 0.25, 0.125), Figures(Of<DoubleDouble>(s_current, s_none, isStiff: false)));
        Assert.Equal((0.5, 2, 0.25, 0.125), Figures(Of<PlainReal>(s_current, s_none, isStiff: false)));
    }

    [Fact]
    public void With_a_stiff_output_its_current_is_solved_for_its_voltage()
    {
        // I_out = V_in/2 - V_out/4: V_out = 2 V_in - 4 I_out; I_in = 3/4 V_in - V_out/4 = V_in/4 + I_out
        Assert.Equal((2, 4, 1, 0.25), Figures(Of<DoubleDouble>(s_stiff, s_none, isStiff: true)));
        Assert.Equal((2, 4, 1, 0.25), Figures(Of<PlainReal>(s_stiff, s_none, isStiff: true)));
    }

    [Theory]
    [InlineData(1, 0, 0.125, 0.124, 0)]
    [InlineData(1, 1, 0.5, 0.499, 1)]
    [InlineData(0, 1, 0.0625, 0.0624, 2)]
    [InlineData(0, 0, 0.03125, 0.03124, 3)]
    public void A_figure_that_rounding_can_have_made_is_zero_in_doubled_precision_alone(int row, int column, double all, double less, int figure)
    {
        double[] expected = [0.5, 2, 0.25, 0.125];
        Assert.Equal(expected, All(Of<DoubleDouble>(s_current, BarePeriods.Single(2, row, column, less), isStiff: false)));
        Assert.Equal(expected, All(Of<PlainReal>(s_current, BarePeriods.Single(2, row, column, all), isStiff: false)));
        expected[figure] = 0;
        Assert.Equal(expected, All(Of<DoubleDouble>(s_current, BarePeriods.Single(2, row, column, all), isStiff: false)));
    }

    /// <summary>By the derivatives of the quotients: of the ratio 4 δα, of the current ratio 4 δδ, of the conductance what both put into it.</summary>
    [Fact]
    public void A_figure_of_a_stiff_output_that_rounding_can_have_made_is_zero()
    {
        // the error of the ratio, 4 · 4 · 0.125 = 2, goes into the conductance as |N| · 2 / 4 = 1/2
        Assert.Equal([0, 4, 1, 0], All(Of<DoubleDouble>(s_stiff, BarePeriods.Single(2, 1, 0, 0.125), isStiff: true)));
        Assert.Equal([2, 4, 1, 0], All(Of<DoubleDouble>(s_stiff, BarePeriods.Single(2, 1, 0, 0.124), isStiff: true)));

        // that of the current ratio, 4 · 4 · 0.0625 = 1, as |M| · 1 / 4 = 1/2
        Assert.Equal((2, 4, 0), Firsts(Of<DoubleDouble>(s_stiff, BarePeriods.Single(2, 0, 1, 0.0625), isStiff: true)));
        Assert.Equal((2, 4, 1), Firsts(Of<DoubleDouble>(s_stiff, BarePeriods.Single(2, 0, 1, 0.0624), isStiff: true)));
        Assert.Equal([2, 4, 1, 0], All(Of<DoubleDouble>(s_stiff, BarePeriods.Single(2, 0, 0, 0.0625), isStiff: true)));
        Assert.Equal([2, 4, 1, 0.25], All(Of<DoubleDouble>(s_stiff, BarePeriods.Single(2, 0, 0, 0.0624), isStiff: true)));
    }

    /// <summary>What a cancelling ratio may leave is 1e-26, and a conductance that times the largest of the network.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_dust_of_elimination_is_zero_and_more_is_kept(bool isStiff)
    {
        double load = isStiff ? -0.25 : 0.25;
        double[][] dust = [[1e-20, 1e-27], [1e-27, load]], grain = [[1e-18, 1e-25], [1e-25, load]];
        double[] none = All(Of<DoubleDouble>(dust, s_none, isStiff, largestSiemens: 1e7)), some = All(Of<DoubleDouble>(grain, s_none, isStiff, largestSiemens: 1e7));
        Assert.Equal((0, 0, 0), (none[0], none[2], none[3]));
        Assert.NotEqual(0, some[0]);
        Assert.NotEqual(0, some[2]);
        Assert.Equal(4e-18, some[3], 1e-30);
    }

    [Fact]
    public void A_small_impedance_is_kept_however_small() =>
        Assert.Equal(4e-30, Of<DoubleDouble>([[0, 0.1], [0.1, -1e-30]], s_none, isStiff: false).Ohms.Nearest, 1e-40);

    [Fact]
    public void The_relative_error_is_the_largest_of_the_figures()
    {
        // the load shows 1/2 · 1/4 / 2 = 1/16 at the input
        TwoPortValues<PlainReal> values = new(PlainReal.Of(-0.5), PlainReal.Of(2), PlainReal.Of(0.25), PlainReal.Of(-0.125));
        Assert.Equal(0.1, values.RelativeError(new(0.05, 0, 0, 0)), 1e-15);
        Assert.Equal(0.025, values.RelativeError(new(0, 0.05, 0, 0)), 1e-15);
        Assert.Equal(0.2, values.RelativeError(new(0, 0, 0.05, 0)), 1e-15);
        Assert.Equal(0.4, values.RelativeError(new(0, 0, 0, 0.05)), 1e-15);
        Assert.Equal(0.8, (values with { InputSiemens = PlainReal.Of(0.01) }).RelativeError(new(0.05, 0.05, 0.05, 0.05)), 1e-15);
        Assert.Equal(0.2, (values with { InputSiemens = PlainReal.Of(10) }).RelativeError(new(0.05, 0.05, 0.05, 0.05)), 1e-15);
    }

    [Fact]
    public void An_error_of_nothing_is_the_whole_figure_in_plain_precision_and_settled_in_doubled()
    {
        TwoPortValues<PlainReal> plain = default;
        TwoPortValues<DoubleDouble> fine = default;
        Assert.Equal(0, plain.RelativeError(default));
        Assert.Equal(1, plain.RelativeError(new(1e-20, 0, 0, 0)));
        Assert.Equal(1, plain.RelativeError(new(0, 0, 0, 1e-20)));
        Assert.Equal(0, fine.RelativeError(new(1, 1, 1, 1)));

        // where the load shows an endless conductance there is no scale either
        Assert.Equal(1, (plain with { Ratio = PlainReal.Of(1), CurrentRatio = PlainReal.Of(1) }).RelativeError(new(0, 0, 0, 1e-20)));
    }

    private static TwoPortValues<T> Of<T>(double[][] charges, double[][] errors, bool isStiff, double largestSiemens = 0)
        where T : struct, IReal<T> => TwoPortValues<T>.Of(BarePeriods.Of<T>(charges, errors), T.Of(0.25), isStiff, largestSiemens, out _);

    private static (double Ratio, double Ohms, double CurrentRatio, double InputSiemens) Figures<T>(TwoPortValues<T> values)
        where T : struct, IReal<T> => (values.Ratio.Nearest, values.Ohms.Nearest, values.CurrentRatio.Nearest, values.InputSiemens.Nearest);

    private static (double Ratio, double Ohms, double CurrentRatio) Firsts<T>(TwoPortValues<T> values)
        where T : struct, IReal<T> => (values.Ratio.Nearest, values.Ohms.Nearest, values.CurrentRatio.Nearest);

    private static double[] All<T>(TwoPortValues<T> values)
        where T : struct, IReal<T> => [values.Ratio.Nearest, values.Ohms.Nearest, values.CurrentRatio.Nearest, values.InputSiemens.Nearest];
}
