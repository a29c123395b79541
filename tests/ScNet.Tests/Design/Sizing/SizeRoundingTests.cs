using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Sizing;
using ScNet.Devices;
using ScNet.Tests.Design.Losses;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Sizing;

/// <summary>Sizes in steps of which each takes 1 µm² (10⁻¹² m²), of a capacitor as of a switch of 1 µm² per µm.</summary>
public sealed class SizeRoundingTests
{
    private const double Step = 1e-12;

    private static readonly ConverterAnalysis s_third = ConverterAnalysis.Of(SeriesParallel.StepDown(3));

    [Fact]
    public void Where_there_is_room_every_size_is_the_nearest_whole_one_and_one_at_least()
    {
        double[] steps = Rounded(InventedSizing.Halver, new AreaBudget(1000 * Step, 500 * Step, 500 * Step), [10.4], [3.6, 7.7, 0.2, 5.3]);
        Assert.Equal([10, 4, 8, 1, 5], steps);
    }

    [Fact]
    public void What_gained_most_gives_back_first()
    {
        // 20 + 4 + 13 + 31 + 6 = 74 steps; gained are 0.3, 0.4, 0.2 and 0.1
        double[] capacitors = [20.1], switches = [3.7, 12.6, 30.8, 5.9];
        Assert.Equal([20, 4, 13, 31, 6], Rounded(InventedSizing.Halver, new AreaBudget(74.5 * Step), capacitors, switches));
        Assert.Equal([20, 4, 12, 31, 6], Rounded(InventedSizing.Halver, new AreaBudget(73.5 * Step), capacitors, switches));
        Assert.Equal([20, 3, 12, 31, 6], Rounded(InventedSizing.Halver, new AreaBudget(72.5 * Step), capacitors, switches));
        Assert.Equal([20, 3, 12, 30, 6], Rounded(InventedSizing.Halver, new AreaBudget(71.5 * Step), capacitors, switches));
        Assert.Equal([20, 3, 12, 30, 5], Rounded(InventedSizing.Halver, new AreaBudget(70.5 * Step), capacitors, switches));
    }

    [Fact]
    public void What_gained_nothing_or_is_one_step_gives_nothing_back()
    {
        // 10 + 3 · 1 + 2 = 15 steps where 11 are allowed
        double[] steps = Rounded(InventedSizing.Halver, new AreaBudget(11 * Step), [10.4], [0.1, 0.1, 0.1, 2]);
        Assert.Equal([10, 1, 1, 1, 2], steps);
    }

    [Fact]
    public void Capacitors_keep_their_own_area_together()
    {
        // 6 + 8 of 13.5 steps: the first gained 0.4, the second 0.2
        double[] steps = Rounded(s_third, new AreaBudget(null, 13.5 * Step, 500 * Step), [5.6, 7.8], [2, 2, 2, 2, 2, 2, 2]);
        Assert.Equal([5, 8, 2, 2, 2, 2, 2, 2, 2], steps);
    }

    [Fact]
    public void Switches_keep_their_own_area_together()
    {
        // 4 + 3 + 5 · 2 = 17 of 16.5 steps: the first gained 0.4, the second 0.1
        double[] steps = Rounded(s_third, new AreaBudget(null, 500 * Step, 16.5 * Step), [5.2, 7.3], [3.6, 2.9, 2, 2, 2, 2, 2]);
        Assert.Equal([5, 7, 3, 3, 2, 2, 2, 2, 2], steps);
    }

    [Theory]
    [InlineData(40, null, null)]
    [InlineData(null, 8, 100)]
    [InlineData(null, 100, 32)]
    public void An_area_that_is_taken_to_the_last_step_is_enough(int? total, int? capacitors, int? switches)
    {
        // steps of powers of two, so that no sum is rounded: 8 and 4 · 8 steps, of which every size gained
        double step = Math.ScaleB(1, -40);
        SwitchDevice @switch = Sized.Switch with { OnResistanceOhmMicrometres = 1024, AreaSquareMetresPerMicrometre = step };
        CapacitorDevice capacitor = Sized.Capacitor with { FaradsPerSquareMetre = Math.ScaleB(1, -7) };
        Process process = InventedSizing.Process(@switch, capacitor);
        double width = 1024 / 136.0;
        SizedConverter sized = InventedSizing.OfSteps(InventedSizing.Halver.Converter, process, [7.75 * step], [width, width, width, width]);
        Assert.Equal([8, 8, 8, 8, 8], StepsOf(Design(InventedSizing.Halver, new AreaBudget(total * step, capacitors * step, switches * step), sized).WithGrid(new(1, step)), step));
    }

    private static double[] Rounded(ConverterAnalysis analysis, AreaBudget area, double[] capacitors, double[] switches)
    {
        SizedConverter sized = InventedSizing.OfSteps(analysis.Converter, InventedSizing.Process(), [.. capacitors.Select(s => s * Step)], switches);
        return StepsOf(Design(analysis, area, sized).WithGrid(new(1, Step)), Step);
    }

    private static SizedDesign Design(ConverterAnalysis analysis, AreaBudget area, SizedConverter sized) =>
        new(InventedSizing.Task(analysis, [InventedSizing.Point(2, null, 1e-3)], area, sized.Process), sized, [], [], null);

    private static double[] StepsOf(SizedDesign design, double step) =>
    [
        .. design.Converter.Capacitors.Select(c => Math.Round(c.AreaOfEachSquareMetres / step, 9)), .. design.Converter.Switches.Select(s => Math.Round(s.WidthOfEachMicrometres, 9)),
    ];
}
