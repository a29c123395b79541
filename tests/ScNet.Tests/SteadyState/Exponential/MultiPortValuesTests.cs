using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Figures and their errors from charges written down by hand; the period lasts half a second.</summary>
public sealed class MultiPortValuesTests
{
    // averages are twice the charges: input current, main and further voltage by input voltage and both currents
    private static readonly double[][] s_charges = [[0.005, 0.15, -0.1], [0.25, -2, -0.5], [0.125, -1, -4.5]];

    [Fact]
    public void With_current_loads_the_figures_are_averages_over_the_period()
    {
        MultiPortValues found = Of(s_charges, Zeros(), isStiff: false);
        Assert.Equal([0.5, 0.25], found.Ratios);
        Assert.Equal([4, 1, 2, 9], found.Ohms);
        Assert.Equal([0.3, -0.2], found.CurrentRatios);
        Assert.Equal((0.01, 0), (found.InputSiemens, found.RelativeError));
    }

    [Fact]
    public void With_a_stiff_output_its_current_is_solved_for_its_voltage()
    {
        // I_out = V_in/4 - V_out/2 - I/8, so that V_out = V_in/2 - 2 I_out - I/4; put into
        // I_in = 0.3 V_in + V_out/2 - I/10 and V = V_in/8 + 3 V_out/4 - 2 I
        MultiPortValues found = Of([[0.15, 0.25, -0.05], [0.125, -0.25, -0.0625], [0.0625, 0.375, -1]], Zeros(), isStiff: true);
        Assert.Equal([0.5, 0.5], found.Ratios);
        Assert.Equal([2, 0.25, 1.5, 2.1875], found.Ohms);
        Assert.Equal(-1, found.CurrentRatios[0], 1e-15);
        Assert.Equal(-0.225, found.CurrentRatios[1], 1e-15);
        Assert.Equal(0.55, found.InputSiemens, 1e-15);
    }

    /// <summary>Currents in proportion to the largest ratio, impedances to the root of their ports' own, the conductance to what the load shows.</summary>
    [Theory]
    [InlineData(0, 0, 0.002 / (0.5 * 0.5 / 9))]
    [InlineData(0, 1, 0.002 / 0.5)]
    [InlineData(0, 2, 0.002 / 0.5)]
    [InlineData(1, 0, 0.002 / 0.5)]
    [InlineData(2, 0, 0.002 / 0.5)]
    [InlineData(1, 1, 0.002 / 4)]
    [InlineData(1, 2, 0.002 / 6)]
    [InlineData(2, 1, 0.002 / 6)]
    [InlineData(2, 2, 0.002 / 9)]
    public void Every_error_is_told_in_the_scale_of_its_figure(int row, int column, double expected) =>
        Assert.Equal(expected, Of(s_charges, BarePeriods.Single(3, row, column, 1e-3), isStiff: false).RelativeError, 1e-15);

    [Fact]
    public void The_scale_of_ratios_is_the_largest_of_either_direction_whatever_its_sign()
    {
        double[][] currents = Changed(0, 2, -0.4), voltages = Changed(2, 0, -0.4);
        Assert.Equal(0.002 / 0.8, Of(currents, BarePeriods.Single(3, 1, 0, 1e-3), isStiff: false).RelativeError, 1e-15);
        Assert.Equal(0.002 / 0.8, Of(voltages, BarePeriods.Single(3, 0, 1, 1e-3), isStiff: false).RelativeError, 1e-15);
        Assert.Equal(0.002 / (0.8 * 0.8 / 9), Of(voltages, BarePeriods.Single(3, 0, 0, 1e-3), isStiff: false).RelativeError, 1e-15);
    }

    [Fact]
    public void The_conductance_is_its_own_scale_where_it_is_larger_than_that_of_the_load() =>
        Assert.Equal(0.002 / 0.3, Of(Changed(0, 0, -0.15), BarePeriods.Single(3, 0, 0, 1e-3), isStiff: false).RelativeError, 1e-15);

    [Fact]
    public void An_output_without_impedance_is_measured_by_the_largest_one()
    {
        double[][] charges = Changed(2, 2, 0);
        Assert.Equal(0.002 / 4, Of(charges, BarePeriods.Single(3, 2, 2, 1e-3), isStiff: false).RelativeError, 1e-15);
        Assert.Equal(0.002 / 4, Of(charges, BarePeriods.Single(3, 1, 2, 1e-3), isStiff: false).RelativeError, 1e-15);
    }

    [Fact]
    public void Without_any_scale_an_error_is_the_whole_figure()
    {
        double[][] bare = [[0.1, 0.1, 0.1], [0.1, 0, 0], [0.1, 0, 0]];
        Assert.Equal(0, Of(bare, Zeros(), isStiff: false).RelativeError);
        Assert.Equal(1, Of(bare, BarePeriods.Single(3, 2, 1, 1e-3), isStiff: false).RelativeError);
        Assert.Equal(1, Of(bare, BarePeriods.Single(3, 0, 0, 1e-3), isStiff: false).RelativeError);
    }

    [Theory]
    [InlineData(-1e-4, 1e-4, 0)]
    [InlineData(-1e-4, 0.5e-4, -2e-4)]
    [InlineData(1e-4, 1, 2e-4)]
    public void A_negative_conductance_within_its_error_is_none(double charge, double error, double expected) =>
        Assert.Equal(expected, Of(Changed(0, 0, charge), BarePeriods.Single(3, 0, 0, error), isStiff: false).InputSiemens);

    [Fact]
    public void Every_figure_must_be_finite()
    {
        Assert.True(new MultiPortValues([1], [2], [3], 4, 0).IsFinite);
        Assert.False(new MultiPortValues([1, double.NaN], [2], [3], 4, 0).IsFinite);
        Assert.False(new MultiPortValues([1], [2, double.PositiveInfinity], [3], 4, 0).IsFinite);
        Assert.False(new MultiPortValues([1], [2], [double.NaN, 3], 4, 0).IsFinite);
        Assert.False(new MultiPortValues([1], [2], [3], double.NegativeInfinity, 0).IsFinite);
    }

    private static double[][] Zeros() => BarePeriods.Single(3, 0, 0, 0);

    private static double[][] Changed(int row, int column, double charge)
    {
        double[][] charges = [.. s_charges.Select(r => (double[])[.. r])];
        charges[row][column] = charge;
        return charges;
    }

    private static MultiPortValues Of(double[][] charges, double[][] errors, bool isStiff) =>
        MultiPortValues.Of(BarePeriods.Of<PlainReal>(charges, errors), PlainReal.Of(0.5), isStiff);
}
