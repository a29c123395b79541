using ScNet.Design.Choice;
using ScNet.Design.Regulation;
using ScNet.Design.Requirements;
using ScNet.Devices;

namespace ScNet.Tests.Design.Choice;

/// <summary>Which corner and which point of modes that are told decide, and how points are named.</summary>
public sealed class CornerCheckTests
{
    private static readonly Corner s_fast = new("fast"), s_slow = new("slow");

    private static readonly Requirement s_requirement = CoreRequirement.Of(CoreRequirement.Process with { Corners = [s_fast, s_slow] }) with
    {
        InputVolts = new(3, 3),
        Discharge = [],
        OutputVolts = [0.8],
        Loads = [new("light", 1e-3, 0.5), new("heavy", 2e-3, 0.5)],
        SourceOhms = 0.5,
    };

    [Fact]
    public void The_point_that_lacks_most_at_the_first_corner_that_lacks_is_found()
    {
        CornerCheck check = CornerCheck.Of(s_requirement, corner => [Lacking("half", corner == s_slow ? 3 : 0.9, corner == s_slow ? 2 : 1)])!;
        Assert.Equal((s_slow, 1e-3, 3.0), (check.Corner, check.Point.LoadAmperes, check.Lack));
        Assert.Equal("in corner slow 800 mV at 1 mA from 3 V is not held: half is too weak", check.ToString());
        Assert.Equal("corner slow decides its sizes: with those that lose least typically 800 mV at 1 mA from 3 V is not held: half is too weak", check.Note);
    }

    [Fact]
    public void Any_mode_may_hold_a_point()
    {
        Assert.Null(CornerCheck.Of(s_requirement, _ => [Lacking("half", 3, 3), Lacking("whole", 1, 0.5)]));
        Assert.Equal(2, CornerCheck.Of(s_requirement, _ => [Lacking("half", 3, 3), Lacking("whole", 2, 0.5)])!.Lack);
    }

    // the mode of the largest ratio comes nearest, and is named where there are several
    [Fact]
    public void The_reason_names_the_mode_where_there_are_several()
    {
        ProfilePoint point = OperatingProfile.Ends(s_requirement)[1];
        Assert.Equal("800 mV at 2 mA from 3 V is not held: half is too weak", OperatingProfile.ReasonAt([Of("half", new(1, 2))], point));
        Assert.Equal("800 mV at 2 mA from 3 V is not held in half: half is too weak", OperatingProfile.ReasonAt([Of("third", new(1, 3)), Of("half", new(1, 2))], point));

        static RegulatedMode Of(string name, Fractions.Fraction ratio) => new InventedMode(name, _ => InventedMode.Lost, ratio: Quantity.Exact(ratio));
    }

    // five parts of the discharge and the end of the range, at which the voltage is the converter's own
    [Fact]
    public void Ends_alone_are_without_the_resistance_of_the_source()
    {
        ProfilePoint[] all = OperatingProfile.Of(s_requirement);
        Assert.Equal([false, false, false, false, false, false, false, false, false, false, true, true], all.Select(p => p.IsEnd));
        Assert.All(all, p => Assert.Equal(p.IsEnd ? 0 : 0.5, p.SourceOhms(s_requirement)));
        Assert.All(all.Take(10), p => Assert.Equal(0.1, p.Weight));
    }

    private static Lazy<RegulatedMode> Lacking(string name, double atLight, double atHeavy) =>
        new(() => new InventedMode(name, _ => InventedMode.Lost, lackOf: amperes => amperes < 1.5e-3 ? atLight : atHeavy));
}
