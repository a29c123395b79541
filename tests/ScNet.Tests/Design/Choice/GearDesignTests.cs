using ScNet.Design.Choice;
using ScNet.Design.Requirements;
using ScNet.Devices;
using ScNet.Reconfiguration;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Choice;

/// <summary>Which gear serves which point, of a converter by a third and a half.</summary>
public sealed class GearDesignTests
{
    private static readonly Candidate s_gears = Candidate.Of(Gears.Of([SeriesParallel.StepDown(3), SeriesParallel.StepDown(2)], OverlayHeuristic.Default));

    private static readonly Candidate s_half = Candidate.Of(SeriesParallel.StepDown(2));

    // a third of 2.8 V is 0.933 V: no ohms at all are left at 0.1 A for what the half does with ease
    [Fact]
    public void A_point_that_the_least_ratio_does_not_carry_moves_to_the_next_one()
    {
        GearDesign light = Try(s_gears, 1, Point(2.8, 0.9, 1e-4))!, heavy = Try(s_gears, 1, Point(2.8, 0.9, 0.1))!;
        Assert.Equal("1/3", Assert.Single(light.Modes).Ratio.ToString());
        Assert.Equal("1/2", Assert.Single(heavy.Modes).Ratio.ToString());
    }

    // half of the input is the output and just the least room of 3 %
    [Fact]
    public void A_gear_of_just_the_least_room_is_the_first_one()
    {
        Candidate gears = Candidate.Of(Gears.Of([SeriesParallel.StepDown(2), FractionalDivider.Of(2, 3)], OverlayHeuristic.Default));
        Assert.Equal("1/2", Assert.Single(Try(gears, 1, Point(2 * (1 + 0.03), 1, 1e-4))!.Modes).Ratio.ToString());
    }

    [Fact]
    public void Where_no_gear_carries_a_point_the_last_one_tells_why()
    {
        Assert.Null(GearDesign.Try(s_gears, With(), [Point(2.8, 0.9, 1e3)], 1, out string several, CancellationToken.None));
        Assert.StartsWith("900 mV at 1 kA from 2.8 V is not held in 1/2: ", several, StringComparison.Ordinal);
        Assert.Null(GearDesign.Try(s_half, With(), [Point(2.8, 0.9, 1e3)], 1, out string single, CancellationToken.None));
        Assert.StartsWith("900 mV at 1 kA from 2.8 V is not held: ", single, StringComparison.Ordinal);
        Assert.Null(GearDesign.Try(s_half, With(), [Point(2.8, 2, 1e-3)], 1, out string above, CancellationToken.None));
        Assert.StartsWith("2 V at 1 mA from 2.8 V is not held: ", above, StringComparison.Ordinal);
    }

    // what corners take asks for room at the ends of the input range alone: half of the most that the area carries, ten times as much nowhere else
    [Fact]
    public void The_margin_counts_at_the_ends_of_the_range_alone()
    {
        double most = 1e-3;
        while (Try(s_half, 1, Point(2.8, 0.9, most * 2)) is not null)
        {
            most *= 2;
        }

        Assert.NotNull(Try(s_half, 10, Point(2.8, 0.9, most), Point(2.8, 0.9, most / 100) with { IsEnd = true }));
        Assert.Null(Try(s_half, 10, Point(2.8, 0.9, most) with { IsEnd = true }));
    }

    // half of 4.2 V takes two devices of 1.8 V in series, although the point is at 2 V
    [Fact]
    public void Devices_withstand_the_whole_input_range() =>
        Assert.All(Try(s_half, 1, Point(2, 0.9, 1e-3))!.Sizes.Converter.Switches, s => Assert.Equal(2, s.Count));

    [Fact]
    public void Where_nothing_withstands_the_voltages_the_element_is_named()
    {
        Requirement single = With() with { Process = CoreRequirement.Process with { MaximumSwitchesInSeries = 1 } };
        Assert.Null(GearDesign.Try(s_half, single, [Point(2, 0.9, 1e-3)], 1, out string reason, CancellationToken.None));
        Assert.StartsWith("No kind of the process withstands what ", reason, StringComparison.Ordinal);
    }

    // a third of 4.2 V does for 0.9 V, of 2 V a half
    [Fact]
    public void At_a_corner_modes_come_by_falling_ratio()
    {
        GearDesign design = Try(s_gears, 1, Point(4.2, 0.9, 1e-3), Point(2, 0.9, 1e-3))!;
        Assert.Equal(["1/2", "1/3"], design.Sized(new(1e4, 1e8)).At(new Corner("slow", 1.1)).Select(m => m.Value.Ratio.ToString()));
    }

    private static GearDesign? Try(Candidate candidate, double margin, params ProfilePoint[] points) =>
        GearDesign.Try(candidate, With(), points, margin, out _, CancellationToken.None);

    private static ProfilePoint Point(double inputVolts, double outputVolts, double amperes) => new(inputVolts, outputVolts, amperes, 1, IsEnd: false);

    private static Requirement With() => CoreRequirement.Of(CoreRequirement.Process with
    {
        Switches = [DemoDevices.NType1V8],
        Capacitors = [DemoDevices.Plate3V6],
    }) with
    { InputVolts = new(2, 4.2), Discharge = [], Loads = [new("on", 1e-3, 1, 0.8)] };
}
