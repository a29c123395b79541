using ScNet.Design.Choice;
using ScNet.Design.Requirements;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Choice;

/// <summary>What changes the winner among linear regulators and halving converters at one operating point.</summary>
public sealed class ChangedWinnerTests
{
    private static readonly double s_step = Math.Pow(2, 1.0 / 16);

    // on-resistances, and one over capacitances, of the whole area go with one over it: what a load of k times asks of the converter an area
    // of 1/k does. A factor is found to the sixteenth root of two and no further: of two loads that are half of that apart one lies in the far half of a step
    [Theory]
    [InlineData(1.5)]
    [InlineData(1.533)]
    public void A_larger_load_and_as_much_smaller_an_area_change_the_winner(double room)
    {
        Candidate half = Candidate.Of(SeriesParallel.StepDown(2));
        Requirement requirement = With(0.1);
        double most = 0.1;
        while (IsHeld(most * 1.3))
        {
            most *= 1.3;
        }

        requirement = With(most / room);
        RankedChoice choice = RankedChoice.Of(requirement, [Candidate.Linear, half]);
        Assert.Equal(half, choice.Winner!.Candidate);
        ChoiceSensitivity sensitivity = ChoiceSensitivity.Of(choice);
        ChangedAssumption area = Assert.Single(sensitivity.Changes, c => c.Assumption == "area"), load = Assert.Single(sensitivity.Changes, c => c.Assumption == "load current");
        Assert.Equal((Candidate.Linear, Candidate.Linear), (area.Winner, load.Winner));
        Assert.InRange(load.Factor!.Value, 1, 2);
        Assert.InRange(area.Factor!.Value * load.Factor.Value, 1 / s_step, s_step);
        Assert.All(sensitivity.Changes.Where(c => c.Factor is not null), c => Assert.Equal(0, Math.IEEERemainder(16 * Math.Log2(c.Factor!.Value), 1), 1e-9));
        Assert.False(IsHeld(most / room * load.Factor.Value));
        Assert.True(IsHeld(most / room * load.Factor.Value / (s_step * (1 + 1e-9))));
        Assert.Equal("gate charge: the same winner", Assert.Single(sensitivity.Changes, c => c.Assumption == "gate charge").ToString());
        Assert.True(sensitivity.IsComplete);

        bool IsHeld(double amperes) => CandidateDesign.Of(half, With(amperes), CancellationToken.None).IsAccepted;
    }

    // the first of equals stays the winner whatever is assumed
    [Fact]
    public void Of_two_that_are_the_same_the_first_stays_the_winner()
    {
        RankedChoice choice = RankedChoice.Of(With(0.1), [Candidate.Linear, Candidate.Linear.Named("another")]);
        Assert.Equal("Linear regulator", choice.Winner!.Candidate.Name);
        Assert.All(ChoiceSensitivity.Of(choice).Changes, c => Assert.Null(c.Factor));
    }

    [Fact]
    public void Work_is_told_side_by_side_and_on_no_more_threads_than_are_allowed()
    {
        RankedChoice choice = RankedChoice.Of(With(0.1), [Candidate.Linear]);
        Recorder recorder = new();
        ChoiceSensitivity all = ChoiceSensitivity.Of(choice, recorder, threads: 1);

        // six assumptions, each down and up
        Assert.Equal(6, all.Changes.Count);
        Assert.Equal(Enumerable.Range(1, 12).Select(k => k / 12.0), recorder.Values);
        Assert.Equal(1, recorder.MostAtOnce);
    }

    [Fact]
    public void What_is_stopped_halfway_is_not_complete_and_keeps_what_is_done()
    {
        using CancellationTokenSource stop = new();
        RankedChoice choice = RankedChoice.Of(With(0.1), [Candidate.Linear]);
        ChoiceSensitivity part = ChoiceSensitivity.Of(choice, new Recorder { After = (3, stop) }, threads: 1, stop.Token);
        Assert.False(part.IsComplete);
        Assert.Equal("capacitor density: the same winner", part.ToString());
    }

    [Fact]
    public void A_choice_without_a_winner_has_nothing_to_vary_and_is_done()
    {
        ChoiceSensitivity none = ChoiceSensitivity.Of(RankedChoice.Of(With(0.1), []));
        Assert.True(none.IsComplete);
        Assert.Empty(none.Changes);
    }

    [Fact]
    public void A_change_tells_its_factor_and_who_wins()
    {
        Assert.Equal("area × 0.5: Linear regulator wins", new ChangedAssumption("area", 0.5, Candidate.Linear).ToString());
        Assert.Equal("area × 0.5: no candidate does what is required", new ChangedAssumption("area", 0.5, null).ToString());
        Assert.Equal("area: the same winner", new ChangedAssumption("area", null, null).ToString());
    }

    [Fact]
    public void A_choice_tells_its_order_and_what_is_done()
    {
        Recorder recorder = new();
        RankedChoice choice = RankedChoice.Of(With(0.1), [Candidate.Linear, Candidate.Linear.Named("another")], recorder, threads: 1);
        Assert.Equal([0.5, 1], recorder.Values);
        Assert.Equal(1, recorder.MostAtOnce);
        Assert.Equal([1, 2], choice.Ranked.Select(r => r.Rank));
        Assert.StartsWith("1. Linear regulator: ", choice.ToString(), StringComparison.Ordinal);
        Assert.Contains("; 2. another: ", choice.ToString(), StringComparison.Ordinal);
        Assert.Equal("one point: no candidate does what is required", RankedChoice.Of(With(0.1), []).ToString());
    }

    private static Requirement With(double amperes) => OnePointRequirement.Of(3, amperes);

    private sealed class Recorder : IProgress<double>
    {
        private readonly Lock _lock = new();
        private int _now;

        public List<double> Values { get; } = [];

        public int MostAtOnce { get; private set; }

        public (int Count, CancellationTokenSource Stop)? After { get; init; }

        public void Report(double value)
        {
            lock (_lock)
            {
                MostAtOnce = Math.Max(MostAtOnce, ++_now);
            }

            Thread.Sleep(2);
            lock (_lock)
            {
                _now--;
                Values.Add(value);
                if (Values.Count == After?.Count)
                {
                    After.Value.Stop.Cancel();
                }
            }
        }
    }
}
