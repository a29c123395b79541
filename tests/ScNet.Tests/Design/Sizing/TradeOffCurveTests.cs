using ScNet.Analysis;
using ScNet.Design.Sizing;

namespace ScNet.Tests.Design.Sizing;

/// <summary>The order of areas, for a point that no area reaches, so that nothing is sized.</summary>
public sealed class TradeOffCurveTests
{
    private static readonly ConverterAnalysis s_half = ConverterAnalysis.Of(HalfTasks.Half);

    // what each kind may take together counts where it is less than the total, and where there is no total
    [Theory]
    [InlineData(4e-7, null, null, 5e-7, 1e-7, 2e-7)]
    [InlineData(4e-7, null, null, 9e-7, 3e-7, 2e-7)]
    [InlineData(4e-7, 3e-7, null, 5e-7, null, 2e-7)]
    [InlineData(3e-7, null, null, null, 2e-7, 1.5e-7)]
    [InlineData(4e-7, null, null, null, 2e-7, 1.5e-7)]
    [InlineData(4e-7, 1e-6, 1e-6, 5e-7, 9e-7, 9e-7)]
    public void Points_stand_by_rising_area(double? total, double? ofCapacitors, double? ofSwitches, double? otherTotal, double? ofOtherCapacitors, double? ofOtherSwitches)
    {
        AreaBudget one = new(total, ofCapacitors, ofSwitches), other = new(otherTotal, ofOtherCapacitors, ofOtherSwitches);
        double ownArea = Math.Min(total ?? double.MaxValue, (ofCapacitors + ofSwitches) ?? double.MaxValue);
        double otherArea = Math.Min(otherTotal ?? double.MaxValue, (ofOtherCapacitors + ofOtherSwitches) ?? double.MaxValue);
        AreaBudget[] expected = ownArea < otherArea ? [one, other] : [other, one];
        Assert.Equal(expected, Of(one, other).Points.Select(p => p.Area));
        Assert.Equal(expected, Of(other, one).Points.Select(p => p.Area));
        Assert.All(Of(one, other).Points, p => Assert.Null(p.Efficiency));
    }

    [Fact]
    public void No_areas_are_refused()
    {
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => Of());
        Assert.StartsWith("Expected at least one area", refusal.Message, StringComparison.Ordinal);
    }

    private static TradeOffCurve Of(params AreaBudget[] areas) =>
        TradeOffCurve.Of(s_half, HalfTasks.Process([HalfTasks.Long], [HalfTasks.Metal]), [new(Mode.DefaultName, 2, 1.5, 1e-3)], areas, new(1e4, 1e8));
}
