using ScNet.Design.Choice;
using ScNet.Design.Requirements;
using ScNet.Devices;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Choice;

/// <summary>For which load a halving converter is sized where a corner takes from it, and what is told of that.</summary>
public sealed class CandidateCornersTests
{
    private const double MoreThanLack = 1.001;

    private static readonly Candidate s_half = Candidate.Of(SeriesParallel.StepDown(2));

    // sizes that are found for what lacked twice, and a thousandth more each time, hold the corner
    [Fact]
    public void Sizes_are_found_for_as_much_more_load_as_lacks_and_a_thousandth()
    {
        Requirement requirement = With(new Corner("weak", 1.2, 1 / 1.2));
        CornerCheck first = CheckOf(requirement, 1), second = CheckOf(requirement, first.Lack * MoreThanLack);
        GearDesign expected = Try(requirement, first.Lack * MoreThanLack * second.Lack * MoreThanLack);
        Assert.Null(CornerCheck.Of(requirement, expected.Sized(requirement.FrequencyHz).At));
        CandidateDesign design = CandidateDesign.Of(s_half, requirement, CancellationToken.None);
        Assert.Equal(expected.Sizes.Converter.Switches.Select(s => s.Ohms), design.Sized!.Switches.Select(s => s.Ohms));
        Assert.Equal(expected.Sizes.Converter.Capacitors.Select(c => c.Farads), design.Sized.Capacitors.Select(c => c.Farads));
    }

    // the mild corner, which stands first, fails the sizes of least loss; those that hold it fail the weak one
    [Fact]
    public void The_corner_that_the_sizes_of_least_loss_fail_is_told()
    {
        Requirement requirement = With(new Corner("mild", 1.1, 1 / 1.1), new Corner("weak", 1.3, 1 / 1.3));
        CornerCheck first = CheckOf(requirement, 1);
        Assert.Equal(("mild", "weak"), (first.Corner.Name, CheckOf(requirement, first.Lack * MoreThanLack * 1.05).Corner.Name));
        CandidateDesign design = CandidateDesign.Of(s_half, requirement, CancellationToken.None);
        Assert.Equal(first.Note, design.Notes[^1]);
    }

    private static CornerCheck CheckOf(Requirement requirement, double margin) => CornerCheck.Of(requirement, Try(requirement, margin).Sized(requirement.FrequencyHz).At)!;

    private static GearDesign Try(Requirement requirement, double margin) =>
        GearDesign.Try(s_half, requirement, OperatingProfile.Of(requirement), margin, out _, CancellationToken.None)!;

    private static Requirement With(params Corner[] corners) => new()
    {
        Name = "corners",
        InputVolts = new(1.85, 2),
        OutputVolts = [0.9],
        Loads = [new("on", 0.01, 1)],
        Process = new Process { Name = "invented", Switches = [DemoDevices.NType1V8], Capacitors = [DemoDevices.Plate3V6], Corners = corners },
        AreaSquareMetres = 1e-6,
        FrequencyHz = new(1e4, 1e8),
    };
}
