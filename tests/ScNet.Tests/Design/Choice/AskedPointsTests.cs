using ScNet.Design.Choice;
using ScNet.Design.Requirements;

namespace ScNet.Tests.Design.Choice;

/// <summary>What a requirement asks beyond the states of the load decides too.</summary>
public sealed class AskedPointsTests
{
    private static readonly CandidateRequest[] s_third = [new() { Families = ["series-parallel"], Sizes = new(3, 3) }];

    [Fact]
    public void A_load_must_be_carried_over_the_whole_range_that_is_asked_for()
    {
        Requirement silent = CoreRequirement.Of(candidates: s_third);
        Candidate[] all = [.. Candidates.Of(silent).All];
        Assert.Single(RankedChoice.Of(silent, all).Ranked);
        Assert.Single(RankedChoice.Of(silent with { LoadRangeAmperes = new(1e-6, 0.05) }, all).Ranked);
        RejectedCandidate rejected = Assert.Single(RankedChoice.Of(silent with { LoadRangeAmperes = new(1e-6, 2) }, all).Rejected);
        Assert.Contains(" at 2 A from 2.8 V is not held: ", rejected.Reasons[0], StringComparison.Ordinal);
    }

    // from 3 V the third gives outputs below 1 V and the half those from 1 V on: of 0.6, 0.8, 1.0, 1.2 and 1.4 V two and three, of the ends one each
    [Fact]
    public void Of_a_range_of_the_output_the_voltages_inside_count_as_its_ends_do()
    {
        Requirement ends = CoreRequirement.Of(candidates: [new() { Families = ["series-parallel"], Sizes = new(2, 3), AreGears = true }]) with
        {
            InputVolts = new(3, 3),
            Discharge = [],
            SourceOhms = 0,
            OutputVolts = [0.6, 1.4],
            Loads = [new("on", 1e-3, 1)],
        };
        Candidate[] all = [.. Candidates.Of(ends).All];
        Assert.Equal([0.5, 0.5], Shares(ends).Order().Select(s => Math.Round(s, 6)));

        // a mode draws its ratio of the load's current and some losses, and one that draws more lasts less long
        Assert.Equal([0.4, 0.6], Shares(ends with { OutputIsRange = true }).Order().Select(s => Math.Round(s, 6)));

        double[] Shares(Requirement requirement) => [.. Assert.Single(RankedChoice.Of(requirement, all).Ranked).SharesOfModes];
    }

    [Fact]
    public void A_requirement_that_contradicts_itself_is_told_and_nothing_is_worked_out()
    {
        Requirement broken = CoreRequirement.Of() with { OutputVolts = [0.8] };
        RankedChoice choice = RankedChoice.Of(broken, [Candidate.Linear]);
        Diagnostic found = Assert.Single(choice.Diagnostics);
        Assert.Equal((DiagnosticSeverity.Error, DiagnosticCodes.OutsideRange), (found.Severity, found.Code));
        Assert.Contains("'sleep' asks for 0.5 V", choice.ToString(), StringComparison.Ordinal);
        Assert.Empty(choice.Ranked);
        Assert.False(choice.IsComplete);
        Assert.Empty(RankedChoice.Of(CoreRequirement.Of(), [Candidate.Linear]).Diagnostics);
    }
}
