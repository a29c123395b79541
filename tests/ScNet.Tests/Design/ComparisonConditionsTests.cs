using ScNet.Design;

namespace ScNet.Tests.Design;

public sealed class ComparisonConditionsTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1.1e60)]
    [InlineData(0.9e-60)]
    public void A_value_that_is_not_positive_or_out_of_range_is_refused_by_its_name(double value)
    {
        Assert.Equal("inputVoltageVolts", Refusal(() => new ComparisonConditions(value, 1)));
        Assert.Equal("deviceRatingVolts", Refusal(() => new ComparisonConditions(1, value)));
        Assert.Equal("totalCapacitanceFarads", Refusal(() => new ComparisonConditions(1, 1, totalCapacitanceFarads: value)));
        Assert.Equal("totalConductanceSiemens", Refusal(() => new ComparisonConditions(1, 1, totalConductanceSiemens: value)));
        Assert.Equal("frequencyHz", Refusal(() => new ComparisonConditions(1, 1, frequencyHz: value)));
    }

    [Fact]
    public void The_defaults_make_both_limits_pure_numbers()
    {
        ComparisonConditions conditions = new(1, 1);
        Assert.Equal(1, conditions.TotalCapacitanceFarads * conditions.FrequencyHz, 1e-15);
        Assert.Equal(1, conditions.TotalConductanceSiemens);
    }

    [Theory]
    [InlineData(1e-60)]
    [InlineData(1e60)]
    public void The_extremes_of_voltage_are_taken(double volts)
    {
        ComparisonConditions conditions = new(volts, volts);
        Assert.Equal(1, conditions.Volts(Quantity.Exact(1))!.Value / volts, 1e-15);
        Assert.Equal(0.5, conditions.Volts(Quantity.Numeric(0.5))!.Value / volts, 1e-15);
        Assert.Null(conditions.Volts(Quantity.Undetermined));
    }

    private static string? Refusal(Func<object> create) => Assert.Throws<ArgumentOutOfRangeException>(create).ParamName;
}
