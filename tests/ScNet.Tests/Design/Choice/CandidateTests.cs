using Fractions;
using ScNet.Design.Choice;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Choice;

public sealed class CandidateTests
{
    [Fact]
    public void The_elements_decide_the_class()
    {
        Assert.Equal(CandidateKind.SwitchedCapacitor, Candidate.Of(Ladder.StepDown(3)).Kind);
        Assert.Equal(CandidateKind.Inductive, Candidate.Of(InductiveStage.StepDown(new(1, 3))).Kind);
        Assert.Equal(CandidateKind.Hybrid, Candidate.Of(FlyingCapacitorStage.Of(3, new(1, 3))).Kind);
        Assert.Equal((CandidateKind.Linear, null, null), (Candidate.Linear.Kind, Candidate.Linear.Converter, Candidate.Linear.Analysis));
    }

    [Fact]
    public void A_name_that_is_told_goes_before_that_of_the_converter()
    {
        Assert.Equal("mine", Candidate.Of(Ladder.StepDown(3), "mine").Name);
        Assert.Equal("Ladder 3:1", Candidate.Of(Ladder.StepDown(3)).ToString());
    }

    [Fact]
    public void A_duty_lies_between_nothing_and_the_whole_period()
    {
        Candidate stage = Candidate.Of(InductiveStage.StepDown(new(1, 3)));
        Assert.Equal(new Fraction(1, 5), stage.AtDuty(new(1, 5)).Phases[0].Duty);
        Assert.Equal(new Fraction(4, 5), stage.AtDuty(new(1, 5)).Phases[1].Duty);
        Assert.All(
            new[] { Fraction.Zero, Fraction.One, new Fraction(-1, 5), new Fraction(6, 5) },
            duty => Assert.Equal("duty", Assert.Throws<ArgumentOutOfRangeException>(() => stage.AtDuty(duty)).ParamName));
    }
}
