using ScNet.Design.Choice;
using ScNet.Design.Requirements;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Choice;

/// <summary>Who may win instead: the first three, and the first of every kind.</summary>
public sealed class ContendersTests
{
    private static readonly Candidate s_third = Candidate.Of(SeriesParallel.StepDown(3)), s_half = Candidate.Of(SeriesParallel.StepDown(2));

    // two thirds of what a third carries at most, to 30 %
    private static readonly double s_amperes = MostOf(s_third) / 1.5;

    // of 3.2 V a third leaves 1/15 V to drop, a half 0.6 V: on a quarter of the area only the latter carries the load
    [Fact]
    public void The_second_of_a_kind_wins_where_the_first_does_not_hold()
    {
        ChoiceSensitivity sensitivity = ChoiceSensitivity.Of(RankedChoice.Of(With(s_amperes), [s_half, s_third]));
        Assert.Equal(s_third, sensitivity.Choice.Winner!.Candidate);
        Assert.Equal(s_half, Change(sensitivity, "area").Winner);
    }

    // three that are the same fail together; the fourth is the only one of its kind
    [Fact]
    public void The_first_of_another_kind_wins_where_the_first_three_fail()
    {
        ChoiceSensitivity sensitivity = ChoiceSensitivity.Of(RankedChoice.Of(With(s_amperes), [s_third, s_third.Named("b"), s_third.Named("c"), Candidate.Linear]));
        Assert.Equal(s_third, sensitivity.Choice.Winner!.Candidate);
        Assert.Equal(Candidate.Linear, Change(sensitivity, "area").Winner);
    }

    // the fourth of one kind is not looked at
    [Fact]
    public void The_fourth_of_a_kind_does_not_win()
    {
        ChoiceSensitivity sensitivity = ChoiceSensitivity.Of(RankedChoice.Of(With(s_amperes), [s_third, s_third.Named("b"), s_third.Named("c"), s_half]));
        Assert.Equal(4, sensitivity.Choice.Ranked.Count);
        Assert.Null(Change(sensitivity, "area").Winner);
    }

    // the same of what was varied first: less of the capacitors' density, with which the first three fail
    [Fact]
    public void The_fourth_of_a_kind_does_not_win_where_the_work_is_stopped()
    {
        using CancellationTokenSource stop = new();
        RankedChoice choice = RankedChoice.Of(With(s_amperes), [s_third, s_third.Named("b"), s_third.Named("c"), s_half]);
        ChoiceSensitivity sensitivity = ChoiceSensitivity.Of(choice, new Stopping(stop), threads: 1, stop.Token);
        Assert.False(sensitivity.IsComplete);
        ChangedAssumption change = Assert.Single(sensitivity.Changes);
        Assert.Equal("capacitor density", change.Assumption);
        Assert.True(change.Factor < 1);
        Assert.Null(change.Winner);
    }

    private static ChangedAssumption Change(ChoiceSensitivity sensitivity, string assumption) => Assert.Single(sensitivity.Changes, c => c.Assumption == assumption);

    private static double MostOf(Candidate candidate)
    {
        double most = 1e-3;
        while (CandidateDesign.Of(candidate, With(most * 1.3), CancellationToken.None).IsAccepted)
        {
            most *= 1.3;
        }

        return most;
    }

    private static Requirement With(double amperes) => OnePointRequirement.Of(3.2, amperes, switchesInSeries: 2);

    private sealed class Stopping(CancellationTokenSource stop) : IProgress<double>
    {
        public void Report(double value) => stop.Cancel();
    }
}
