using Fractions;
using ScNet.Analysis;
using ScNet.Design.Choice;
using ScNet.Design.Requirements;
using ScNet.Reconfiguration;

namespace ScNet.Tests.Design.Choice;

public sealed class CandidatesTests
{
    private static readonly Candidates s_known = Candidates.Of(CoreRequirement.Of());

    [Fact]
    public void Without_a_request_there_are_candidates_of_every_class_with_names_of_their_own()
    {
        Assert.Empty(s_known.Diagnostics);
        Assert.Equal(Enum.GetValues<CandidateKind>(), s_known.All.Select(c => c.Kind).Distinct().Order());
        Assert.True(s_known.All.Count >= 15);
        Assert.Equal(s_known.All.Count, s_known.All.Select(c => c.Name).Distinct().Count());
    }

    [Fact]
    public void Every_known_candidate_has_a_result_in_every_mode_and_reaches_the_largest_ratio_that_is_asked_for()
    {
        Fraction largest = new(8, 28);
        foreach (Candidate candidate in s_known.All.Where(c => c.Analysis is not null))
        {
            Assert.True(candidate.Analysis!.HasAllResults, candidate.Name);
            Fraction most = candidate.Analysis.Results.Max(m => m.Ratio.ToFraction());
            Assert.True(candidate.HasDuty || most > largest, candidate.Name);
        }
    }

    [Fact]
    public void Gears_are_the_fractions_within_the_range_and_one_above_it()
    {
        Candidate gears = Assert.Single(s_known.All, c => c.Name == "Gears 1/3, 1/4, 1/5");
        Assert.Equal(["1/3", "1/4", "1/5"], gears.Analysis!.Results.Select(m => m.Ratio.ToString()));
        Assert.Equal(3, gears.Converter!.Capacitors.Count);
    }

    [Theory]
    [InlineData(2, 9)]
    [InlineData(1, 7)]
    [InlineData(3, 11)]
    public void A_stage_at_a_duty_has_the_ratio_of_its_family(int numerator, int denominator)
    {
        Fraction duty = new(numerator, denominator);
        Assert.Equal(duty, RatioOf("Stacked inductive step-down", duty));
        Assert.Equal(duty, RatioOf("Flying-capacitor stage, 3 levels", duty));
        Assert.Equal(duty, RatioOf("Flying-capacitor stage, 4 levels", duty));
        Assert.Equal(duty, RatioOf("Series-charged stage", duty));
        Assert.Equal(duty / 2, RatioOf("Ladder 2:1 before an inductor", duty));
        Assert.Equal(duty / 3, RatioOf("Ladder 3:1 before an inductor", duty));
        Assert.Equal(duty / 3, RatioOf("Dickson 3:1 before an inductor", duty));

        static Fraction RatioOf(string name, Fraction duty) =>
            ModeAnalysis.Of(s_known.All.Single(c => c.Name == name).AtDuty(duty)).Ratio.ToFraction();
    }

    [Fact]
    public void The_duty_of_a_netlist_with_inductors_is_the_share_of_its_odd_phases()
    {
        Candidate stage = Only(new CandidateRequest { File = "four-level-stage.toml" });
        Assert.Equal(CandidateKind.Hybrid, stage.Kind);
        Assert.Equal(new Fraction(1, 5), ModeAnalysis.Of(stage.AtDuty(new Fraction(3, 5))).Ratio.ToFraction());
        Assert.Throws<ArgumentOutOfRangeException>(() => stage.AtDuty(Fraction.One));
    }

    [Fact]
    public void What_no_duty_regulates_has_no_other_duty()
    {
        Assert.False(Candidate.Linear.HasDuty);
        Assert.Throws<InvalidOperationException>(() => Candidate.Linear.AtDuty(new Fraction(1, 2)));
    }

    [Fact]
    public void A_family_gives_a_candidate_per_size_or_one_with_a_gear_per_size()
    {
        CandidateRequest sizes = new() { Families = ["series-parallel"], Sizes = new(2, 4) };
        Assert.Equal(["Series-parallel 2:1", "Series-parallel 3:1", "Series-parallel 4:1"], Names(sizes));
        Assert.Equal(["Gears 1/2, 1/3, 1/4"], Names(sizes with { AreGears = true }));
        Assert.Equal(["Flying-capacitor stage, 3 levels", "Flying-capacitor stage, 4 levels"], Names(new CandidateRequest { Families = ["flying-capacitor"], Sizes = new(2, 4) }));
        Assert.Equal(["Linear regulator"], Names(new CandidateRequest { Families = ["linear"] }));
        Assert.Equal(["Recursive 1/8 to 7/8, gears 1/8, 1/4, 3/8"], Names(new CandidateRequest { Families = ["recursive"], Sizes = new(3, 3) }));
    }

    [Fact]
    public void All_may_be_asked_for_beside_others()
    {
        string[] names = [.. Names(new CandidateRequest { File = "core-gears.toml" }, new CandidateRequest { Families = ["all"] })];
        Assert.Equal(["Core gears", .. s_known.All.Select(c => c.Name)], names);
    }

    [Fact]
    public void Named_ratios_choose_the_members_of_families_and_one_network_each_as_gears()
    {
        CandidateRequest request = new() { Families = ["fraction", "dickson"], Sizes = new(2, 5), Ratios = [new(1, 2), new(2, 5), new(1, 3)], AreGears = true };
        Assert.Equal(["1/2", "1/3", "2/5"], Only(request).Analysis!.Results.Select(m => m.Ratio.ToString()).Order());
        Assert.Equal(["Dickson 3:1"], Names(new CandidateRequest { Families = ["dickson"], Sizes = new(2, 5), Ratios = [new(1, 3)] }));
        Assert.Contains("of these sizes and ratios", Assert.Single(Candidates.Of(CoreRequirement.Of() with { Candidates = [new CandidateRequest { Families = ["ladder"], Sizes = new(2, 5), Ratios = [new(1, 7)] }] }).Diagnostics).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_network_of_a_mixed_set_of_gears_is_a_mode()
    {
        Candidate gears = Only(new CandidateRequest { Families = ["series-parallel", "dickson"], Sizes = new(3, 3), AreGears = true });
        Assert.Equal(["Series-parallel 3:1", "Dickson 3:1"], gears.Converter!.Modes.Select(m => m.Name));
    }

    [Fact]
    public void A_second_candidate_of_a_name_gets_a_number()
    {
        CandidateRequest same = new() { Families = ["ladder"], Sizes = new(3, 3) };
        Assert.Equal(["Ladder 3:1", "Ladder 3:1 (2)"], Names(same, same));
    }

    [Fact]
    public void As_many_candidates_of_a_name_as_there_are_get_numbers()
    {
        CandidateRequest same = new() { Families = ["ladder"], Sizes = new(3, 3) };
        Assert.Equal(["Ladder 3:1", "Ladder 3:1 (2)", "Ladder 3:1 (3)"], Names(same, same, same));
    }

    [Fact]
    public void What_has_no_member_says_what_it_is_not_for()
    {
        CandidateRequest none = new() { Families = ["fraction"], Sizes = new(9, 9) };
        Assert.EndsWith("the family has no member of these sizes.", Finding(none), StringComparison.Ordinal);
        Assert.EndsWith("the family has no member of these sizes and ratios.", Finding(none with { Ratios = [new(1, 2)] }), StringComparison.Ordinal);
        Assert.EndsWith("of these sizes, or none that gears can be made of.", Finding(none with { AreGears = true }), StringComparison.Ordinal);

        static string Finding(CandidateRequest request) => Assert.Single(Of(request).Diagnostics).Message;
    }

    // cascades and binary converters have a mode per ratio already
    [Theory]
    [InlineData("recursive", "series-parallel")]
    [InlineData("series-parallel", "recursive")]
    [InlineData("series-parallel", "binary")]
    public void Networks_of_several_modes_make_no_gears(string first, string second)
    {
        Candidates none = Of(new CandidateRequest { Families = [first, second], Sizes = new(2, 2), AreGears = true });
        Assert.Empty(none.All);
        Assert.EndsWith("or none that gears can be made of.", Assert.Single(none.Diagnostics).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_request_all_that_is_known_for_the_ratios_is_tried()
    {
        Requirement half = CoreRequirement.Of() with { InputVolts = new(2, 2), Discharge = [], OutputVolts = [1], Loads = [new("on", 1e-3, 1)] };
        Assert.Equal(KnownCandidates.Of(new(new(1, 2), new(1, 2)), OverlayHeuristic.Default).Select(c => c.Name), Candidates.Of(half).All.Select(c => c.Name));
        Assert.Same(Candidate.Linear, Candidates.Of(half).All[0]);
    }

    [Fact]
    public void The_method_that_is_told_lays_gears_over_one_another()
    {
        Counting method = new();
        CandidateRequest gears = new() { Families = ["series-parallel"], Sizes = new(2, 3), AreGears = true };
        Assert.Equal(["Gears 1/2, 1/3"], Candidates.Of(CoreRequirement.Of(candidates: [gears]), overlays: method).All.Select(c => c.Name));
        Assert.Equal(1, method.Count);
    }

    [Fact]
    public void Mistakes_are_all_reported_and_the_other_candidates_stay()
    {
        Candidates candidates = Candidates.Of(CoreRequirement.Of(candidates:
        [
            new CandidateRequest { File = "missing.toml" },
            new CandidateRequest { Families = ["laddre"], Sizes = new(3, 3) },
            new CandidateRequest { Families = ["fraction"], Sizes = new(9, 9) },
            new CandidateRequest { Families = ["linear"] },
        ]));
        Assert.Equal(["Linear regulator"], candidates.All.Select(c => c.Name));
        Assert.Equal([DiagnosticCodes.FileUnreadable, DiagnosticCodes.WrongValue, DiagnosticCodes.WrongValue], candidates.Diagnostics.Select(d => d.Code));
        Assert.Contains("'laddre'", candidates.Diagnostics[1].Message, StringComparison.Ordinal);
        Assert.Contains("ladder-fed", candidates.Diagnostics[1].Message, StringComparison.Ordinal);
    }

    private sealed class Counting : IOverlayMethod
    {
        public int Count { get; private set; }

        public Overlay Lay(string name, IReadOnlyList<Converter> networks, IProgress<double>? progress = null, CancellationToken cancellationToken = default)
        {
            Count++;
            return OverlayHeuristic.Default.Lay(name, networks, progress, cancellationToken);
        }
    }

    private static IEnumerable<string> Names(params CandidateRequest[] requests) => Of(requests).All.Select(c => c.Name);

    private static Candidate Only(CandidateRequest request) => Assert.Single(Of(request).All);

    private static Candidates Of(params CandidateRequest[] requests) =>
        Candidates.Of(CoreRequirement.Of(candidates: requests), RepositoryFiles.PathOf("docs", "examples"));
}
