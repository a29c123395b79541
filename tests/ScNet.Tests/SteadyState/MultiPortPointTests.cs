using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Voltages, currents and powers that the figures of three outputs give at some loads, by hand; one output is without supply.</summary>
public sealed class MultiPortPointTests
{
    private const double Tolerance = 1e-14;

    // vout: 10/2 - 2 · 0.4 + 0.5 · 0.2; mid: 10/4 - 1 · 0.4 + 3 · 0.2; input: 10/100 + 0.6 · 0.4 - 0.2 · 0.2
    [Fact]
    public void Loads_lower_each_voltage_by_their_column_and_add_to_the_input_current_by_their_ratio()
    {
        MultiPortOperation operation = Point().Operate(10, 0.4, -0.2, 0);
        Assert.Equal(4.3, operation.OutputVolts["vout"]!.Value, Tolerance);
        Assert.Equal(2.7, operation.OutputVolts["mid"]!.Value, Tolerance);
        Assert.Null(operation.OutputVolts["rail"]);
        Assert.Equal(0.3, operation.InputAmperes, Tolerance);
        Assert.Equal(3, operation.InputWatts, Tolerance);
        Assert.Equal((4.3 * 0.4) - (2.7 * 0.2), operation.OutputWatts, Tolerance);
        Assert.Equal(3 - 1.18, operation.DissipationWatts, Tolerance);
        Assert.Equal(1.18 / 3, operation.Efficiency!.Value, Tolerance);
        Assert.Equal(10, operation.InputVolts);
        Assert.Equal([0.4, -0.2, 0], operation.LoadAmperes);
        Assert.Equal(-0.2, operation.LoadAmperes["mid"]);
    }

    [Fact]
    public void Each_output_alone_shows_its_own_column()
    {
        Assert.Equal([5 - 2, 2.5 - 1, null], Point().Operate(10, 1, 0, 0).OutputVolts);
        Assert.Equal([5 - 0.5, 2.5 - 3, null], Point().Operate(10, 0, 1, 0).OutputVolts);
        Assert.Equal(0.1 + 0.6, Point().Operate(10, 1, 0, 0).InputAmperes, Tolerance);
        Assert.Equal(0.1 + 0.2, Point().Operate(10, 0, 1, 0).InputAmperes, Tolerance);
    }

    [Fact]
    public void The_efficiency_is_null_where_no_power_comes_from_the_source_or_goes_into_the_loads()
    {
        // without load; with an input of no volts into negative ohms; with the source taking power in; with the loads feeding
        Assert.Null(Point().Operate(10, 0, 0, 0).Efficiency);
        Assert.Equal((0, 5), (Point(-5).Operate(0, 1, 0, 0).InputWatts, Point(-5).Operate(0, 1, 0, 0).OutputWatts));
        Assert.Null(Point(-5).Operate(0, 1, 0, 0).Efficiency);

        // 10 (0.1 - 0.6) from the source and -(5 - 10) into the load; 10 (0.1 + 0.4) and 2 (2.5 - 6)
        MultiPortOperation taking = Point(-10).Operate(10, -1, 0, 0), feeding = Point().Operate(10, 0, 2, 0);
        Assert.Equal((-5, 5), (taking.InputWatts, taking.OutputWatts));
        Assert.Equal((5, -7), (feeding.InputWatts, feeding.OutputWatts));
        Assert.Null(taking.Efficiency);
        Assert.Null(feeding.Efficiency);
    }

    [Fact]
    public void Loads_must_be_one_finite_current_per_output()
    {
        foreach (double[] loads in new double[][] { [1, 0], [1, 0, 0, 0], [], [double.NaN, 0, 0], [0, double.PositiveInfinity, 0] })
        {
            ArgumentException refusal = Assert.Throws<ArgumentException>(() => Point().Operate(10, loads));
            Assert.StartsWith("Expected 3 finite load currents, one per output, but got [", refusal.Message, StringComparison.Ordinal);
        }

        Assert.Throws<ArgumentNullException>(() => Point().Operate(10, null!));
    }

    [Fact]
    public void An_output_without_supply_carries_nothing()
    {
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => Point().Operate(10, 0, 0, 0.1));
        Assert.StartsWith("Output 'rail' carries no current in this mode, but ", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_input_may_be_at_zero_volts_but_not_below()
    {
        Assert.Equal([-2, -1, null], Point().Operate(0, 1, 0, 0).OutputVolts);
        Assert.Throws<ArgumentOutOfRangeException>(() => Point().Operate(-1, 1, 0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Point().Operate(double.NaN, 1, 0, 0));
    }

    [Fact]
    public void A_point_keeps_what_it_is_made_of()
    {
        MultiPortPoint point = Point();
        Assert.Equal((1e5, 0.01, 1e-12), (point.FrequencyHz, point.InputSiemens, point.RelativeError));
        Assert.Equal([0.5, 0.25, null], point.Ratios);
        Assert.Equal([0.6, 0.2, null], point.CurrentRatios);
        Assert.Equal(0.5, point.Ohms["vout", "mid"]);
    }

    private static MultiPortPoint Point(double ownOhms = 2)
    {
        NameIndex names = new("three", "output", ["vout", "mid", "rail"]);
        return new MultiPortPoint(
            1e5,
            new NamedList<double?>([0.5, 0.25, null], names),
            new OutputMatrix<double?>([ownOhms, 0.5, null, 1, 3, null, null, null, null], names),
            new NamedList<double?>([0.6, 0.2, null], names),
            0.01,
            1e-12);
    }
}
