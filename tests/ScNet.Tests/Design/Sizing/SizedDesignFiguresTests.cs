using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Sizing;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Sizing;

/// <summary>Sums, shares and words of a design that is put together by hand.</summary>
public sealed class SizedDesignFiguresTests
{
    private static readonly SizingPoint s_light = InventedSizing.Point(3, 0.9, 1e-3, 3), s_heavy = InventedSizing.Point(3, 0.8, 2e-3, 5);

    private static readonly ConverterAnalysis s_third = ConverterAnalysis.Of(SeriesParallel.StepDown(3));

    // 10 and 6 steps of capacitors, 12 of switches, each of 1 µm²
    private static readonly SizedConverter s_sized = InventedSizing.OfSteps(s_third.Converter, InventedSizing.Process(), [10e-12, 6e-12], [3, 3, 2, 1, 1, 1, 1]);

    // 3 · 0.9 mW + 5 · 1.6 mW = 10.7 mW at the output; 3 · 0.9 mW + 5 · 1.6 mW lost as well
    private static readonly SizedPoint[] s_points = [new(s_light, 1e6, 100, 0.9, [0.5e-3, 0.4e-3]), new(s_heavy, 2e6, 100, 0.8, [1e-3, 0.6e-3])];

    [Fact]
    public void Outputs_and_losses_are_summed_with_their_weights()
    {
        SizedDesign design = Of([]);
        Assert.Equal(10.7e-3, design.WeightedOutputWatts, 1e-15);
        Assert.Equal(10.7e-3, design.WeightedLossWatts, 1e-15);
        Assert.Equal(0.5, design.Efficiency, 1e-12);
    }

    [Fact]
    public void Capacitors_share_the_area_with_switches() => Assert.Equal(16.0 / 28, Of([]).CapacitorShare, 1e-12);

    [Fact]
    public void A_design_tells_efficiency_and_what_it_leaves_out()
    {
        UnreachablePoint one = new(s_heavy, 1, 2, isAlone: true);
        Assert.Equal($"{s_sized}: 50 % over 2 points", Of([]).ToString());
        Assert.Equal($"{s_sized}: 50 % over 2 points; 1 point not reached", Of([one]).ToString());
        Assert.Equal($"{s_sized}: 50 % over 2 points; 2 points not reached", Of([one, one]).ToString());
    }

    [Fact]
    public void A_design_tells_how_good_it_is_for_certain()
    {
        OptimalityCertificate certificate = new(1e-7, 1e-3, isTopologyDecided: true, 3, 40);
        Assert.Equal($"{s_sized}: 50 % over 2 points, {certificate}", Of([], certificate).ToString());
    }

    private static SizedDesign Of(UnreachablePoint[] unreachable, OptimalityCertificate? certificate = null) =>
        new(InventedSizing.Task(s_third, [s_light, s_heavy], new AreaBudget(1e-8)), s_sized, s_points, unreachable, certificate);
}
