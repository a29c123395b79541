using ScNet.Design.Choice;
using ScNet.Design.Requirements;
using ScNet.Devices;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Choice;

/// <summary>A corner of three times the impedance, of which sizes with room to spare lack little at a time.</summary>
public sealed class CornerRoomTests
{
    // 75 mV at 1 mA allow 75 Ω; the sizes of least loss have a third of 84 Ω, and keep it until the load that they are found for is 2.7 times as large:
    // larger by what lacks four times, then by its square, its fourth power and so on
    [Fact]
    public void Sizes_with_room_to_spare_are_found_for_ever_larger_loads_until_a_corner_holds()
    {
        Candidate half = Candidate.Of(SeriesParallel.StepDown(2));
        Requirement requirement = With(new Corner("weak", 3, 1 / 3.0));
        double margin = 1;
        int rounds = 0;
        while (CheckOf(half, requirement, margin) is { } check)
        {
            Assert.InRange(check.Lack, 1, 1.3);
            margin *= Math.Pow(check.Lack * 1.001, rounds < 4 ? 1 : Math.Pow(2, rounds - 3));
            rounds++;
        }

        Assert.True(rounds > 5, $"{rounds} rounds");
        CandidateDesign design = CandidateDesign.Of(half, requirement, CancellationToken.None);
        Assert.Empty(design.Rejections);
        Assert.StartsWith("corner weak ", design.Notes[^1], StringComparison.Ordinal);
        Assert.Equal(Try(half, requirement, margin).Sizes.Converter.Switches.Select(s => s.Ohms), design.Sized!.Switches.Select(s => s.Ohms));
    }

    private static CornerCheck? CheckOf(Candidate candidate, Requirement requirement, double margin) =>
        CornerCheck.Of(requirement, Try(candidate, requirement, margin).Sized(requirement.FrequencyHz).At);

    private static GearDesign Try(Candidate candidate, Requirement requirement, double margin) =>
        GearDesign.Try(candidate, requirement, OperatingProfile.Of(requirement), margin, out _, CancellationToken.None)!;

    private static Requirement With(Corner corner) => new()
    {
        Name = "room",
        InputVolts = new(1.95, 2),
        OutputVolts = [0.9],
        Loads = [new("on", 1e-3, 1)],
        Process = new Process { Name = "invented", Switches = [DemoDevices.NType1V8], Capacitors = [DemoDevices.Plate3V6], Corners = [corner] },
        AreaSquareMetres = 1e-6,
        FrequencyHz = new(1e4, 1e8),
    };
}
