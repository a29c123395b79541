using ScNet.Design.Sizing;

namespace ScNet.Tests.Design.Sizing;

/// <summary>An output that may follow from the load is the best of all outputs that could be held.</summary>
public sealed class FreeOutputTests
{
    [Fact]
    public void What_follows_loses_what_it_would_held_and_less_than_held_elsewhere()
    {
        SizedDesign free = Design(null);
        SizedPoint point = Assert.Single(free.Points);
        Assert.InRange(free.Certificate!.RelativeGap, 0, 1e-6);
        Assert.InRange(point.FrequencyHz, 1.1 * InventedSizing.Frequencies.Minimum!.Value, 0.9 * InventedSizing.Frequencies.Maximum!.Value);
        SizedDesign held = Design(point.OutputVolts);
        Assert.Equal(held.WeightedLossWatts, free.WeightedLossWatts, 1e-6 * free.WeightedLossWatts);
        Assert.Equal(Assert.Single(held.Points).FrequencyHz, point.FrequencyHz, 1e-3 * point.FrequencyHz);
        double drop = 1 - point.OutputVolts;
        Assert.All([0.9, 1.1], factor => Assert.True(Design(1 - (factor * drop)).WeightedLossWatts > free.WeightedLossWatts * (1 + 1e-5)));
    }

    [Fact]
    public void An_output_that_follows_does_not_move_what_is_held_beside_it()
    {
        // of next to no weight
        SizingPoint held = InventedSizing.Point(2, 0.95, 1e-3);
        SizedDesign alone = Of(held), both = Of(held, InventedSizing.Point(2, null, 1e-3, 1e-9));
        Assert.Equal(2, both.Points.Count);
        Assert.Equal(alone.Points[0].TotalLossWatts, both.Points[0].TotalLossWatts, 1e-5 * alone.Points[0].TotalLossWatts);
        Assert.InRange(both.Certificate!.RelativeGap, 0, 1e-6);
    }

    private static SizedDesign Design(double? outputVolts) => Of(InventedSizing.Point(2, outputVolts, 1e-3));

    private static SizedDesign Of(params SizingPoint[] points) =>
        SizedDesign.Of(InventedSizing.Halver, InventedSizing.Process(), points, new AreaBudget(1e-7), InventedSizing.Frequencies);
}
