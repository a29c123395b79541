using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Which conditions a converter can be asked to run under.</summary>
public sealed class OperatingPointTests
{
    [Theory]
    [InlineData(0.1)]
    [InlineData(0)]
    [InlineData(-0.1)]
    [InlineData(1e60)]
    [InlineData(-1e-60)]
    public void A_load_current_of_either_sign_or_none_is_kept(double amperes)
    {
        OperatingPoint point = new(3, amperes, 1e5);
        Assert.Equal((3, amperes, 1e5), (point.InputVoltageVolts, point.LoadCurrentAmperes, point.FrequencyHz));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(1e70)]
    [InlineData(-1e70)]
    [InlineData(1e-70)]
    [InlineData(double.NegativeInfinity)]
    public void A_load_current_out_of_range_is_refused_by_name(double amperes) =>
        Assert.Equal("loadCurrentAmperes", Assert.Throws<ArgumentOutOfRangeException>(() => new OperatingPoint(3, amperes, 1e5)).ParamName);

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(1e70)]
    public void Input_voltage_and_frequency_are_positive(double value)
    {
        Assert.Equal("inputVoltageVolts", Assert.Throws<ArgumentOutOfRangeException>(() => new OperatingPoint(value, 0, 1e5)).ParamName);
        Assert.Equal("frequencyHz", Assert.Throws<ArgumentOutOfRangeException>(() => new OperatingPoint(3, 0, value)).ParamName);
    }
}
