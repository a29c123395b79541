using Fractions;
using ScNet.Design.Choice;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Choice;

/// <summary>Duties in steps of 1/240, of a stage that steps down by D and one that steps up by 1/(1 − D) (the textbook).</summary>
public sealed class StageDutiesTests
{
    private readonly StageDuties _down = StageCandidates.StepDown().Duties, _up = StageCandidates.StepUp().Duties;

    [Theory]
    [InlineData(1)]
    [InlineData(60)]
    [InlineData(239)]
    public void Ratios_are_those_of_the_family_at_every_step(int node)
    {
        Assert.Equal(node / 240.0, _down.RatioAt(node), 1e-15);
        Assert.Equal(1, _up.RatioAt(node) * (240 - node) / 240, 1e-12);
        Assert.Equal(new Fraction(node, 480), StageCandidates.SeriesCapacitor().Duties.DutyAt(node));
    }

    [Fact]
    public void A_ratio_lies_between_two_steps()
    {
        Near(60, 0, _down.Of(60 / 240.0));
        Near(60, 0.25, _down.Of(60.25 / 240));
        Near(1, 0, _down.Of(_down.RatioAt(1)));
        Near(238, 1, _down.Of(_down.RatioAt(239)));

        // halfway between 240/180 and 240/179
        Near(60, 0.5, _up.Of(((240.0 / 180) + (240.0 / 179)) / 2));
    }

    [Fact]
    public void Beyond_the_first_and_the_last_step_no_duty_gives_a_ratio()
    {
        Assert.Null(_down.Of(0.9 / 240));
        Assert.Null(_down.Of(239.5 / 240));
        Assert.Null(_down.Of(2));
        Assert.Null(_up.Of(1));
        Assert.Null(_up.Of(241));
    }

    // what is proportional at three duties is taken as proportional: none of the others is worked out
    [Fact]
    public void A_ratio_that_is_proportional_to_the_duty_takes_three_analyses()
    {
        List<Fraction> duties = [];
        Candidate stage = Candidate.Of("counted", Fraction.One, duty =>
        {
            duties.Add(duty);
            return InductiveStage.StepDown(duty);
        });
        duties.Clear();
        Near(72, 0.5, stage.Duties.Of(72.5 / 240));
        Assert.Equal(3, duties.Count);
    }

    private static void Near(int node, double share, (int Node, double Share)? found)
    {
        Assert.Equal(node, found!.Value.Node);
        Assert.Equal(share, found.Value.Share, 1e-9);
    }
}
