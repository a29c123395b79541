using ScNet.Design.Choice;
using ScNet.Design.Maps;
using ScNet.Design.Requirements;
using ScNet.Tests.Design.Choice;

namespace ScNet.Tests.Design.Maps;

/// <summary>Two ways to the life of a ranked candidate: the choice's own sum, and the estimate over its modes.</summary>
public sealed class LifeOfChoiceTests
{
    [Fact]
    public void The_life_of_ranked_candidates_is_that_of_their_modes()
    {
        Requirement requirement = CoreRequirement.Of(candidates: [new() { Families = ["linear", "inductive"] }, new() { Families = ["series-parallel"], Sizes = new(2, 3) }]);
        RankedChoice choice = RankedChoice.Of(requirement, Candidates.Of(requirement).All);
        Assert.True(choice.Ranked.Count >= 3, string.Join("; ", choice.Rejected));
        foreach (RankedCandidate ranked in choice.Ranked)
        {
            LifeEstimate life = LifeEstimate.Of(ranked.Modes, choice.Requirement, slices: 20);
            Assert.Equal(1, life.Hours!.Value / ranked.LifeHours!.Value, 0.01);
            Assert.Equal(life.AverageEfficiency!.Value, ranked.Efficiency, 1e-3);
        }
    }
}
