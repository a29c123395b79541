using ScNet.Design.Choice;
using ScNet.Design.Requirements;
using ScNet.Devices;

namespace ScNet.Tests.Design.Choice;

/// <summary>Why a place is what it is, of linear regulators whose control draws more or less, by hand.</summary>
public sealed class RankingReasonsTests
{
    [Theory]
    [InlineData(2, "1st", "1st")]
    [InlineData(3, "2nd", "1st")]
    [InlineData(4, "3rd", "1st")]
    [InlineData(5, "4th", "1st")]
    [InlineData(11, "10th", "1st")]
    [InlineData(12, "11th", "1st")]
    [InlineData(13, "12th", "1st")]
    [InlineData(14, "13th", "1st")]
    [InlineData(15, "14th", "1st")]
    [InlineData(22, "21st", "1st")]
    [InlineData(23, "22nd", "1st")]
    [InlineData(24, "23rd", "1st")]
    [InlineData(112, "111th", "1st")]
    public void One_of_many_that_do_as_well_is_told_against_the_one_before_it_and_the_first(int place, string before, string first)
    {
        CandidateDesign[] alike = [.. Enumerable.Repeat(Of(1e-3), 120)];
        string[] expected = place > 2 ? [$"does as well as {before}", $"does as well as {first}"] : [$"does as well as {before}"];
        Assert.Equal(expected, RankingReasons.Of(alike, place - 1));
    }

    // 10 mW more always, of which the state of three quarters of the time has 7.5 mW
    [Fact]
    public void The_state_and_the_kind_in_which_most_is_lost_decide()
    {
        CandidateDesign[] order = [Of(1e-3), Of(11e-3), Of(31e-3)];
        Assert.Equal(["wins over 2nd by control in sleep: 11 mW against 1 mW, 7.5 mW on average of 10 mW more in all"], RankingReasons.Of(order, 0));
        Assert.Equal(["loses to 1st by control in sleep: 11 mW against 1 mW, 7.5 mW on average of 10 mW more in all"], RankingReasons.Of(order, 1));
        Assert.Equal(
            [
                "loses to 2nd by control in sleep: 31 mW against 11 mW, 15 mW on average of 20 mW more in all",
                "loses to 1st by control in sleep: 31 mW against 1 mW, 22.5 mW on average of 30 mW more in all",
            ],
            RankingReasons.Of(order, 2));
    }

    [Fact]
    public void The_only_one_needs_no_reason() => Assert.Empty(RankingReasons.Of([Of(1e-3)], 0));

    // half of the charge lasts half as long, whatever is lost
    [Fact]
    public void Where_no_more_is_lost_none_is_told()
    {
        string reason = Assert.Single(RankingReasons.Of([Of(1e-3), Of(1e-3, coulombs: 1800)], 1));
        Assert.StartsWith("loses to 1st by ", reason, StringComparison.Ordinal);
        Assert.EndsWith(" on average", reason, StringComparison.Ordinal);
    }

    private static CandidateDesign Of(double controlWatts, double coulombs = 3600)
    {
        Requirement requirement = new()
        {
            Name = "linear",
            InputVolts = new(2, 2),
            CellCoulombs = coulombs,
            OutputVolts = [1],
            Loads = [new("sleep", 0.01, 0.75), new("on", 0.1, 0.25)],
            Process = CoreRequirement.Process with { Control = new ControlOverhead { FixedWatts = controlWatts } },
            AreaSquareMetres = 1e-6,
            FrequencyHz = new(1e4, 1e8),
        };
        return CandidateDesign.Of(Candidate.Linear, requirement, CancellationToken.None);
    }
}
