using ScNet.Design.Sizing;

namespace ScNet.Tests.Design.Sizing;

/// <summary>Sizes of a halver, found in a few steps.</summary>
public sealed class SizedHalverTests
{
    // 50 Ω hold 0.95 V at 1 mA
    private static readonly SizingPoint s_point = InventedSizing.Point(2, 0.95, 1e-3);

    private static readonly AreaBudget s_area = new(1e-7);

    private static SizedDesign Design(SizingPoint[] points, SizingOptions? how = null) =>
        SizedDesign.Of(InventedSizing.Halver, InventedSizing.Process(), points, s_area, InventedSizing.Frequencies, how);

    [Fact]
    public void The_certificate_is_the_gap_of_the_search()
    {
        SizingSolution found = new SizingSearch(InventedSizing.Task(InventedSizing.Halver, [s_point], s_area)).Run()!;
        OptimalityCertificate certificate = Design([s_point]).Certificate!;
        Assert.InRange(found.Gap, 1e-9, 1e-6);
        Assert.Equal(-Math.Log(1 - certificate.RelativeGap), found.Gap, 1e-14);
        Assert.Equal(1 - certificate.RelativeGap, certificate.LowerBoundWatts / found.Watts, 1e-14);
        Assert.Equal((found.Rounds, found.Steps), (certificate.Rounds, certificate.Steps));
        Assert.True(certificate.IsTopologyDecided);
    }

    [Fact]
    public void The_loss_of_the_search_is_that_of_the_loss_model()
    {
        SizingPoint[] points = [s_point with { Weight = 3 }, s_point with { LoadAmperes = 2e-3, Weight = 5 }];
        SizingSolution found = new SizingSearch(InventedSizing.Task(InventedSizing.Halver, points, s_area)).Run()!;
        SizedDesign design = Design(points);
        Assert.Equal(design.WeightedLossWatts, found.Watts, 1e-6 * found.Watts);
        Assert.All(design.Points.Zip(found.FrequenciesHz), p => Assert.Equal(p.First.FrequencyHz, p.Second, 1e-5 * p.Second));
    }

    [Fact]
    public void Without_a_point_that_is_reached_there_is_no_design()
    {
        // half of 2 V is too little for 1.1 V
        SizingOutcome outcome = SizedDesign.Try(
            InventedSizing.Halver, InventedSizing.Process(), [s_point with { OutputVolts = 1.1 }], s_area, InventedSizing.Frequencies);
        Assert.Null(outcome.Design);
        Assert.Single(outcome.Unreachable);
        Assert.Equal(DiagnosticCodes.PointUnreachable, Assert.Single(outcome.Findings).Code);
    }

    [Fact]
    public void Stacks_withstand_the_highest_input_of_the_points()
    {
        // at 5 V every element has 2.5 V: two of 2 V
        Assert.All(Design([s_point]).Converter.Switches, s => Assert.Equal(1, s.Count));
        SizedDesign design = Design([s_point, InventedSizing.Point(5, 2.4, 1e-3)]);
        Assert.All(design.Converter.Switches, s => Assert.Equal(2, s.Count));
        Assert.All(design.Converter.Capacitors, c => Assert.Equal(2, c.Count));
    }

    [Fact]
    public void Stacks_withstand_input_voltages_that_are_asked_for()
    {
        SizedDesign design = Design([s_point], new() { InputVolts = new(1, 5) });
        Assert.All(design.Converter.Switches, s => Assert.Equal(2, s.Count));
        Assert.All(design.Converter.Capacitors, c => Assert.Equal(2, c.Count));
    }
}
