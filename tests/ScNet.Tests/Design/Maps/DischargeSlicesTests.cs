using ScNet.Design.Maps;
using ScNet.Design.Requirements;
using ScNet.Devices;
using ScNet.Tests.Design.Losses;

namespace ScNet.Tests.Design.Maps;

public sealed class DischargeSlicesTests
{
    // a width of 0.5 in two parts, one of 0.25 in one, each by the voltage in its middle
    [Fact]
    public void Slices_lie_between_the_points_of_the_curve()
    {
        DischargePoint[] curve = [new(1, 4), new(0.5, 3), new(0.25, 2)];
        Assert.Equal([new(1, 0.25, 3.75), new(0.75, 0.25, 3.25), new(0.5, 0.25, 2.5)], DischargeSlices.Of(curve, 4));
        Assert.Equal([new(1, 0.5, 3.5), new(0.5, 0.25, 2.5)], DischargeSlices.Of(curve, 1));
        Assert.Equal(3 + 2, DischargeSlices.Of(curve, 5).Count());
    }

    // a line from 4 V at 1 to 2 V at 0.5, cut in four: 3.75, 3.25, 2.75, 2.25; whichever way it is listed
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Middles_of_equal_parts_go_from_full_to_empty(bool isTurned)
    {
        DischargePoint[] curve = [new(1, 4), new(0.75, 3), new(0.5, 2)];
        double[] middles = DischargeSlices.Middles(isTurned ? [.. curve.Reverse()] : curve, 4);
        double[] expected = [3.75, 3.25, 2.75, 2.25];
        Assert.Equal(expected.Length, middles.Length);
        Assert.All(expected.Zip(middles), p => Assert.Equal(p.First, p.Second, 1e-12));
    }

    [Fact]
    public void Without_a_curve_the_voltage_falls_from_most_to_least()
    {
        Requirement requirement = new()
        {
            Name = "invented",
            InputVolts = new(3, 4),
            OutputVolts = [1],
            Loads = [new("on", 0.01, 1)],
            FrequencyHz = InventedGears.Hertz,
            Process = new Process { Name = "invented", Switches = [Sized.Switch], Capacitors = [Sized.Capacitor] },
        };
        Assert.Equal([new(1, 4), new(0, 3)], DischargeSlices.CurveOf(requirement));
        DischargePoint[] own = [new(1, 5), new(0.5, 2)];
        Assert.Equal(own, DischargeSlices.CurveOf(requirement with { Discharge = own }));
    }

    public static TheoryData<double, double, double, double> Refused => new()
    {
        { 1, 4, 1, 3 }, { 0.5, 4, 0.75, 3 }, { 1.01, 4, 0, 3 }, { 1, 4, -0.01, 3 }, { 1, 0, 0, 3 }, { 1, 4, 0, -3 }, { 1, 4, double.NaN, 3 },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public void A_curve_that_does_not_fall_within_one_and_zero_is_refused(double fromCharge, double fromVolts, double toCharge, double toVolts)
    {
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => DischargeSlices.Of([new(fromCharge, fromVolts), new(toCharge, toVolts)], 1));
        Assert.Equal("curve", refusal.ParamName);
        Assert.StartsWith("Expected a discharge curve of at least two points by falling state of charge, within 1 to 0, and with positive voltages.", refusal.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => DischargeSlices.Of([new(fromCharge, fromVolts)], 1));
    }

    [Fact]
    public void Only_the_last_of_three_points_can_break_the_order() =>
        Assert.Throws<ArgumentException>(() => DischargeSlices.Of([new(1, 4), new(0.5, 3), new(0.5, 2)], 1));
}
