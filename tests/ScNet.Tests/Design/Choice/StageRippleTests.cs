using ScNet.Design.Choice;
using ScNet.Design.Requirements;
using ScNet.Devices;

namespace ScNet.Tests.Design.Choice;

/// <summary>A stage whose ripple is too large runs faster by as much as it is too large, at least a tenth and at most twice at once.</summary>
public sealed class StageRippleTests
{
    [Theory]
    [InlineData(1.5, 1.5)]
    [InlineData(1.02, 1.1)]
    public void The_floor_of_the_frequency_rises_by_what_the_ripple_is_too_large(double tooLarge, double raise)
    {
        OutputRipple free = Of(1).Ripple!;
        Assert.True(free.HasCoils);
        CandidateDesign held = Of(free.Volts / tooLarge);
        Assert.True(held.IsAccepted);
        Assert.InRange(held.Ripple!.RunningHertz / free.RunningHertz, raise * (1 - 1e-6), raise * 1.05);
        Assert.True(held.Ripple.Volts <= free.Volts / tooLarge);
        Assert.True(held.Life.InputWatts > Of(1).Life.InputWatts);
    }

    [Fact]
    public void A_ripple_that_is_just_what_is_allowed_is_allowed()
    {
        OutputRipple free = Of(1).Ripple!;
        Assert.Equal(free.RunningHertz, Of(free.Volts).Ripple!.RunningHertz);
        Assert.True(Of(free.Volts).IsAccepted);
    }

    // three times as fast is not enough: what is told is what it has where it loses least
    [Fact]
    public void Where_no_frequency_is_enough_the_ripple_of_least_loss_is_the_reason()
    {
        OutputRipple free = Of(1).Ripple!;
        CandidateDesign rejected = Of(free.Volts / 1e7, ceilingHertz: 3 * free.RunningHertz);
        Assert.False(rejected.IsAccepted);
        Assert.True(rejected.IsOpen);
        Assert.Equal(1, rejected.Ripple!.RunningHertz / free.RunningHertz, 1e-3);
        Assert.StartsWith("ripple of ", Assert.Single(rejected.Rejections), StringComparison.Ordinal);
    }

    // of 10 mH at a floor of 20 kHz D (1 − D) V/(8 L C f²) swings (the textbook); 2^8 = 256 times the floor is the most: 150 times is enough within eight raises,
    // 400 times would be one more
    [Fact]
    public void The_floor_of_the_frequency_is_raised_eight_times() => Assert.True(IsAcceptedAt(150));

    [Fact]
    public void The_floor_of_the_frequency_is_raised_eight_times_at_most() => Assert.False(IsAcceptedAt(400));

    // the ceiling is a third above the frequency of least loss, and the ripple there 9/16 of the one that is there
    [Fact]
    public void The_ceiling_is_tried_before_a_stage_is_given_up()
    {
        OutputRipple free = Of(1).Ripple!;
        double ceiling = free.RunningHertz * 4 / 3;
        CandidateDesign held = Of(free.Volts / 1.5, ceilingHertz: ceiling);
        Assert.True(held.IsAccepted);
        Assert.Equal(1, held.Ripple!.RunningHertz / ceiling, 1e-6);
    }

    private static bool IsAcceptedAt(double timesTheFloor)
    {
        Process process = LossyStages.Process with { Switches = [LossyStages.Switch], Inductors = [LossyStages.Coil with { Henries = 1e-2, CoreWatts = 0 }] };
        double hertz = timesTheFloor * 2e4, duty = 0.8 / 3.6;
        return Of(duty * (1 - duty) * 3.6 / (8 * 1e-2 * 1e-6 * hertz * hertz), process, floorHertz: 2e4).IsAccepted;
    }

    private static CandidateDesign Of(double rippleVolts, Process? process = null, double ceilingHertz = 1e11, double floorHertz = 1e3)
    {
        Requirement requirement = new()
        {
            Name = "ripple",
            InputVolts = new(3.6, 3.6),
            OutputVolts = [0.8],
            Loads = [new("on", 0.1, 1)],
            Process = process ?? LossyStages.Process with { Switches = [LossyStages.Switch] },
            AreaSquareMetres = 1e-6,
            FrequencyHz = new(floorHertz, ceilingHertz),
            RippleVolts = rippleVolts,
            OutputFarads = 1e-6,
        };
        return CandidateDesign.Of(LossyStages.StepDown, requirement, CancellationToken.None);
    }
}
