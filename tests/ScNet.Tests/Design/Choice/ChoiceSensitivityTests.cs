using ScNet.Design.Choice;
using ScNet.Design.Requirements;

namespace ScNet.Tests.Design.Choice;

public sealed class ChoiceSensitivityTests
{
    private const double SmallArea = 4e-7;

    // a halving converter from 3 V to 1 V against a linear regulator: with plates of half of the capacitance it wins by so little that
    // more of them change the winner, and at the factor that is told, but not well below it, the other one wins
    [Fact]
    public void The_factor_that_is_told_is_where_the_winner_changes()
    {
        Requirement requirement = new()
        {
            Name = "close",
            InputVolts = new(3, 3),
            OutputVolts = [1.0],
            Loads = [new("on", 0.02, 1)],
            Process = CoreRequirement.Process with { Capacitors = [.. CoreRequirement.Process.Capacitors.Select(c => c with { BottomPlateFraction = 0.5 })] },
            AreaSquareMetres = 3e-7,
            FrequencyHz = new(1e4, 1e8),
            Candidates = [new() { Families = ["linear"] }, new() { Families = ["series-parallel"], Sizes = new(2, 2) }],
        };
        Candidate[] both = [.. Candidates.Of(requirement).All];
        RankedChoice choice = RankedChoice.Of(requirement, both);
        ChoiceSensitivity sensitivity = ChoiceSensitivity.Of(choice, threads: 2);
        Assert.True(sensitivity.IsComplete);
        ChangedAssumption[] plates = [.. sensitivity.Changes.Where(c => c.Assumption == "plate fraction" && c.Factor is not null)];
        Assert.True(plates.Length > 0, $"{choice}\n{sensitivity}");
        foreach (ChangedAssumption change in plates)
        {
            Assert.Equal(change.Winner, At(change.Factor!.Value));
            Assert.Equal(choice.Winner!.Candidate, At(Math.Pow(change.Factor.Value, 0.8)));
        }

        Assert.Equal(
            ChoiceSensitivity.Of(choice, threads: 1).Changes.Select(c => c.ToString()),
            sensitivity.Changes.Select(c => c.ToString()));

        Candidate At(double factor) => RankedChoice.Of(requirement with
        {
            Process = requirement.Process with { Capacitors = [.. requirement.Process.Capacitors.Select(c => c with { BottomPlateFraction = c.BottomPlateFraction * factor })] },
        }, both).Winner!.Candidate;
    }

    // too small an area for the third: what is rejected is tried again, and with more area it wins
    [Fact]
    public void What_is_rejected_may_be_admitted_by_another_assumption()
    {
        Requirement requirement = CoreRequirement.Of(candidates: [new() { Families = ["linear"] }, new() { Families = ["series-parallel"], Sizes = new(3, 4) }]) with { AreaSquareMetres = SmallArea };
        Candidate[] all = [.. Candidates.Of(requirement).All];
        RankedChoice choice = RankedChoice.Of(requirement, all);
        Assert.Equal(["Series-parallel 3:1", "Series-parallel 4:1"], choice.Rejected.Select(r => r.Candidate.Name));
        ChangedAssumption area = Assert.Single(ChoiceSensitivity.Of(choice).Changes, c => c.Assumption == "area" && c.Factor is not null);
        Assert.Equal("Series-parallel 3:1", area.Winner!.Name);
        Assert.True(area.Factor > 1);
        Assert.Equal(area.Winner, At(area.Factor!.Value));
        Assert.Equal(Candidate.Linear, At(Math.Pow(area.Factor.Value, 0.8)));

        Candidate At(double factor) => RankedChoice.Of(requirement with { AreaSquareMetres = SmallArea * factor }, all).Winner!.Candidate;
    }

    [Fact]
    public void Work_that_is_stopped_says_so()
    {
        Requirement requirement = CoreRequirement.Of();
        RankedChoice choice = RankedChoice.Of(requirement, [Candidate.Linear]);
        ChoiceSensitivity stopped = ChoiceSensitivity.Of(choice, cancellationToken: new CancellationToken(canceled: true));
        Assert.False(stopped.IsComplete);
        Assert.Empty(stopped.Changes);
    }

    [Fact]
    public void With_one_candidate_nothing_changes_the_winner()
    {
        ChoiceSensitivity alone = ChoiceSensitivity.Of(RankedChoice.Of(CoreRequirement.Of(), [Candidate.Linear]));
        Assert.All(alone.Changes, c => Assert.Null(c.Factor));
        Assert.Contains("area: the same winner", alone.ToString(), StringComparison.Ordinal);
    }
}
