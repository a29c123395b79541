using ScNet.Design.Choice;
using ScNet.Design.Losses;
using ScNet.Design.Requirements;
using ScNet.Netlists;
using ScNet.Results;

namespace ScNet.Tests.Design.Choice;

public sealed class RankedChoiceTests
{
    private static readonly CandidateRequest[] s_requests =
    [
        new() { Families = ["linear", "inductive"] },
        new() { Families = ["series-parallel"], Sizes = new(2, 4) },
        new() { Families = ["flying-capacitor"], Sizes = new(3, 3) },
        new() { Families = ["ladder-fed"], Sizes = new(2, 2) },
        new() { Families = ["fraction"], Sizes = new(2, 3), AreGears = true },
    ];

    private static readonly Requirement s_requirement = CoreRequirement.Of(candidates: s_requests);
    private static readonly Candidates s_candidates = Candidates.Of(s_requirement);
    private static readonly RankedChoice s_choice = RankedChoice.Of(s_requirement, s_candidates.All);

    [Fact]
    public void The_winner_has_the_longest_life_and_every_candidate_has_its_place()
    {
        double[] lives = [.. s_choice.Ranked.Select(r => r.LifeHours!.Value)];
        Assert.Equal(lives.OrderDescending(), lives);
        Assert.Equal(Enumerable.Range(1, lives.Length), s_choice.Ranked.Select(r => r.Rank));
        Assert.Equal(
            s_candidates.All.Select(c => c.Name).Order(),
            s_choice.Ranked.Select(r => r.Candidate.Name).Concat(s_choice.Rejected.Select(r => r.Candidate.Name)).Order());
        Assert.True(s_choice.IsComplete);
        Assert.Equal(Enum.GetValues<CandidateKind>(), s_choice.Ranked.Select(r => r.Candidate.Kind).Distinct().Order());
    }

    [Fact]
    public void Input_power_is_output_power_and_all_losses()
    {
        foreach (RankedCandidate ranked in s_choice.Ranked)
        {
            double lost = ranked.Loads.Sum(l => l.Load.Share * Enum.GetValues<LossKind>().Sum(l.WattsOf));
            Assert.Equal(ranked.InputWatts, ranked.OutputWatts + lost, 1e-9 * ranked.InputWatts);
            Assert.Equal(1, ranked.SharesOfModes.Sum(), 1e-9);
            Assert.True(ranked.AreaSquareMetres <= 1e-6 * (1 + 1e-6), ranked.ToString());
        }
    }

    // efficiency of a linear regulator is output over input voltage: 19 % from 4.2 V to 0.8 V; common practice, no source
    [Fact]
    public void A_linear_regulator_from_a_full_cell_to_the_core_has_19_percent()
    {
        Requirement full = new()
        {
            Name = "full",
            InputVolts = new(4.2, 4.2),
            OutputVolts = [0.8],
            Loads = [new("on", 0.01, 1)],
            Process = CoreRequirement.Process with { Control = ScNet.Devices.ControlOverhead.None },
            AreaSquareMetres = 1e-6,
            FrequencyHz = new(1e4, 1e8),
        };
        RankedCandidate linear = Assert.Single(RankedChoice.Of(full, [Candidate.Linear]).Ranked);
        Assert.Equal(0.8 / 4.2, linear.Efficiency, 1e-12);
        Assert.Null(linear.LifeHours);
    }

    // one load, a discharge of one voltage: charge over current, by hand
    [Fact]
    public void Life_is_charge_over_current()
    {
        Requirement flat = CoreRequirement.Of() with { Discharge = [new(1, 3.6), new(0, 3.6)], SourceOhms = 0, Loads = [new("on", 0.01, 1, 0.8)], CellCoulombs = 3600 };
        RankedCandidate linear = Assert.Single(RankedChoice.Of(flat, [Candidate.Linear]).Ranked);
        Assert.Equal(1 / (0.01 + (2e-6 / 3.6)), linear.LifeHours!.Value, 1e-9);
    }

    [Fact]
    public void What_cannot_be_held_or_withstood_is_rejected_with_the_reason()
    {
        RejectedCandidate quarter = Assert.Single(s_choice.Rejected, r => r.Candidate.Name == "Series-parallel 4:1");
        Assert.Contains("is not held", quarter.Reasons[0], StringComparison.Ordinal);
        Assert.Contains("ratio", quarter.Reasons[0], StringComparison.Ordinal);

        Requirement one = CoreRequirement.Of(CoreRequirement.Process with { MaximumSwitchesInSeries = 1 });
        RejectedCandidate third = Assert.Single(RankedChoice.Of(one, Candidates.Of(one with { Candidates = [new() { Families = ["series-parallel"], Sizes = new(3, 3) }] }).All).Rejected);
        Assert.Equal(["series1, top1, bottom1 each need 2.8 V: demo n 1.8 V stands 1.8 V, 1 is allowed in series"], third.Reasons);
    }

    [Fact]
    public void Reasons_name_the_loss_that_decides_and_the_stacks()
    {
        RankedCandidate last = s_choice.Ranked[^1];
        Assert.Equal("Linear regulator", last.Candidate.Name);
        Assert.StartsWith($"loses to {s_choice.Ranked.Count - 1}th by linear drop in active: ", last.Reasons[0], StringComparison.Ordinal);
        Assert.StartsWith("wins over 2nd by ", s_choice.Winner!.Reasons[0], StringComparison.Ordinal);
        Assert.Contains(
            s_choice.Ranked.Single(r => r.Candidate.Name == "Stacked inductive step-down").Reasons,
            r => r == "high, low each need 4.2 V: demo n 1.8 V stands 1.8 V, 3 in series: area × 9");
    }

    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    public void The_answer_is_the_same_to_the_byte_on_any_number_of_threads(int threads)
    {
        RankedChoice again = RankedChoice.Of(s_requirement, Candidates.Of(s_requirement).All, threads: threads);
        Assert.Equal(ResultTable.OfChoice(s_choice).ToJson(), ResultTable.OfChoice(again).ToJson());
        Assert.Equal(s_choice.Winner!.ToToml(), again.Winner!.ToToml());
    }

    [Fact]
    public void What_is_done_when_the_work_is_stopped_is_ranked()
    {
        using CancellationTokenSource stop = new();
        StopAfter progress = new(2, stop);
        RankedChoice part = RankedChoice.Of(s_requirement, s_candidates.All, progress, threads: 1, stop.Token);
        Assert.False(part.IsComplete);
        Assert.Equal(2, part.Ranked.Count + part.Rejected.Count);
        Assert.Equal(s_candidates.All.Skip(2).Select(c => c.Name), part.Left.Select(c => c.Name));
        Assert.NotNull(part.Winner);
        foreach (RankedCandidate ranked in part.Ranked)
        {
            Assert.Equal(s_choice.Ranked.Single(r => r.Candidate == ranked.Candidate).LifeHours, ranked.LifeHours);
        }
    }

    [Fact]
    public void The_netlist_of_a_sized_candidate_reads_back_with_its_values()
    {
        foreach (RankedCandidate ranked in s_choice.Ranked.Where(r => r.Sized is not null))
        {
            Converter read = NetlistReader.Read(ranked.ToToml()!).GetConverter();
            Assert.All(ranked.Sized!.Converter.Switches.Zip(read.Switches), s => Assert.Equal(s.First.Ohms, s.Second.Ohms, 1e-5 * s.First.Ohms));
            Assert.All(ranked.Sized.Converter.Capacitors.Zip(read.Capacitors), c => Assert.Equal(c.First.Farads, c.Second.Farads, 1e-5 * c.First.Farads));
        }
    }

    [Fact]
    public void Where_no_candidate_does_what_is_required_there_is_no_winner()
    {
        RankedChoice none = RankedChoice.Of(s_requirement, [s_candidates.All.Single(c => c.Name == "Series-parallel 4:1")]);
        Assert.Null(none.Winner);
        Assert.Contains("no candidate", none.ToString(), StringComparison.Ordinal);
        Assert.Empty(ChoiceSensitivity.Of(none).Changes);
    }

    // a MOS capacitor that holds little at the voltage of the flying capacitor takes the area that it needs there, as in converters without inductors
    [Fact]
    public void Capacitors_of_stages_with_inductors_have_the_density_at_their_voltage()
    {
        ScNet.Devices.CapacitorDevice plain = CoreRequirement.Process.Capacitors[^1];
        Requirement biased = CoreRequirement.Of(CoreRequirement.Process with { Capacitors = [plain with { DensityAgainstBias = [new(0, plain.FaradsPerSquareMetre), new(4.2, plain.FaradsPerSquareMetre / 4)] }] });
        RankedCandidate stage = Assert.Single(RankedChoice.Of(biased, [s_candidates.All.Single(c => c.Name == "Flying-capacitor stage, 3 levels")]).Ranked);
        ScNet.Devices.StackedCapacitor fly = Assert.Single(stage.Sized!.Capacitors);
        Assert.Equal(2.1, Math.Abs(fly.HeldVolts!.Value), 1e-9);
        Assert.Equal(fly.CapacitanceOfEachFarads / plain.FaradsPerSquareMetre / 0.625, fly.AreaOfEachSquareMetres, 1e-6 * fly.AreaOfEachSquareMetres);
    }

    private sealed class StopAfter(int count, CancellationTokenSource stop) : IProgress<double>
    {
        private int _reports;

        public void Report(double value)
        {
            if (++_reports == count)
            {
                stop.Cancel();
            }
        }
    }
}
