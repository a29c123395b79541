using ScNet.Design.Losses;
using ScNet.Design.Sizing;

namespace ScNet.Tests.Design.Sizing;

/// <summary>What answers about sizes say, in figures and in words.</summary>
public sealed class SizingAnswersTests
{
    // 0.9 V at 0.1 A are 90 mW; 10 mW lost leave 90 %
    [Fact]
    public void A_point_has_output_power_losses_and_efficiency()
    {
        SizedPoint point = Point(0.9);
        Assert.Equal(0.09, point.OutputWatts, 1e-15);
        Assert.Equal(0.01, point.TotalLossWatts, 1e-15);
        Assert.Equal(0.9, point.Efficiency!.Value, 1e-12);
        Assert.Equal(0.007, point.WattsOf(LossKind.Conduction));
        Assert.Equal($"{point.Point}: 2E+06 Hz, 0.01 W lost, 90 %", point.ToString());
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-0.3)]
    public void A_point_without_output_power_has_no_efficiency(double volts)
    {
        SizedPoint point = Point(volts);
        Assert.Null(point.Efficiency);
        Assert.EndsWith("W lost", point.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_certificate_tells_whether_component_values_move_the_flow()
    {
        Assert.Equal("within 2.5E-07 of the least loss of sizes near by; 1 convex program, 12 steps", new OptimalityCertificate(2.5e-7, 1, true, 1, 12).ToString());
        Assert.Equal(
            "within 2.5E-07 of the least loss of sizes near by, as far as component values leave the flow as it is; 3 convex programs, 1 step",
            new OptimalityCertificate(2.5e-7, 1, false, 3, 1).ToString());
    }

    [Fact]
    public void A_point_out_of_reach_tells_what_stands_against_it()
    {
        SizingPoint point = new("half", 2, 0.9, 0.1);
        Assert.Equal("needs R_out ≤ 1 Ω, area and highest frequency allow 3 Ω", new UnreachablePoint(point, 1, 3, isAlone: true).Reason);
        Assert.Equal("needs R_out ≤ 1 Ω, sizes that serve the other points too allow 3 Ω", new UnreachablePoint(point, 1, 3, isAlone: false).Reason);
        Assert.Equal("the ratio is too low, even without load", new UnreachablePoint(point, -1, null, isAlone: true).Reason);
    }

    // 90 mW are the most of two points: on 0.3 mm² 0.3 W/mm²; both together deliver 120 mW and lose 20 mW
    [Fact]
    public void A_trade_off_is_the_largest_power_over_the_area_and_the_efficiency_of_all()
    {
        SizingTask task = HalfTasks.Of([HalfTasks.Free(2, 1e-3)], new AreaBudget(3e-7));
        SizedDesign design = new(task, task.Build(new int[6], [1e-10, 1e-9, 1, 1, 1, 1]), [Point(0.9), Point(0.3)], [], null);
        SizingOutcome outcome = new("half", design, [], []);
        TradeOffPoint point = new(task.Area, 3e-7, outcome);
        Assert.Equal(3e5, point.WattsPerSquareMetre!.Value, 1e-6);
        Assert.Equal(6.0 / 7, point.Efficiency!.Value, 1e-12);
        Assert.Equal("0.3 mm² in all: 0.3 W/mm², 85.71 %", point.ToString());
        Assert.Equal(design.ToString(), outcome.ToString());
        Assert.Equal("half: no sizes; ", new SizingOutcome("half", null, [], []).ToString());
    }

    [Fact]
    public void A_trade_off_that_leaves_a_point_out_has_no_figures()
    {
        UnreachablePoint lost = new(new("half", 2, 0.9, 0.1), 1, 3, isAlone: true);
        TradeOffPoint point = new(new AreaBudget(3e-7), 3e-7, new SizingOutcome("half", null, [lost], []));
        Assert.Null(point.WattsPerSquareMetre);
        Assert.Equal("0.3 mm² in all: not all points are reached", point.ToString());
    }

    private static SizedPoint Point(double volts)
    {
        var watts = new double[LossModel.KindCount];
        (watts[(int)LossKind.Conduction], watts[(int)LossKind.Plates]) = (0.007, 0.003);
        return new SizedPoint(new("half", 2, null, 0.1), 2e6, 1, volts, watts);
    }
}
