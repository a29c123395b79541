using ScNet.Design.Choice;
using ScNet.Design.Regulation;
using ScNet.Design.Requirements;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Choice;

/// <summary>Where a requirement limits the ripple, it decides: by what a large capacitor at the output takes from one flying capacitor, in closed form.</summary>
public sealed class OutputRippleTests
{
    private const double Amperes = 1e-3, Farads = 1e-6;

    private static readonly Candidate s_half = Candidate.Of(SeriesParallel.StepDown(2));

    // each half of the period delivers q = I h by a current that decays with RC; the output rises until it has fallen to I. Derived here
    [Fact]
    public void The_ripple_on_a_large_capacitor_is_that_of_a_decaying_current()
    {
        RankedCandidate ranked = Ranked(With(1e4, 1, Farads));
        RegulatedPoint point = ranked.Modes[0].Hold(2, 0.9, Amperes);
        Assert.Equal(RegulationOutcome.Held, point.Outcome);
        Converter converter = ranked.Sized!.Converter;
        double half = 1 / (2 * point.FrequencyHz);
        double expected = Enumerable.Range(1, 2).Max(phase =>
        {
            double ohms = converter.Capacitors[0].EsrOhms + converter.Switches.Where((_, s) => converter.Modes[0].ClosedPhases[s].Contains(phase)).Sum(s => s.Ohms);
            double tau = ohms * converter.Capacitors[0].Farads, sum = 1 - Math.Exp(-half / tau), peak = tau * Math.Log(half / tau / sum);
            return ((Amperes * half * (1 - Math.Exp(-peak / tau)) / sum) - (Amperes * peak)) / Farads;
        });
        Assert.Equal(1, ranked.RippleVolts!.Value / expected, 0.01);
        Assert.Equal(1, ranked.Parts);
    }

    // with most cycles left out both portions come long before the load has taken them
    [Fact]
    public void Where_cycles_are_left_out_it_takes_all_of_the_charge()
    {
        RankedCandidate ranked = Ranked(With(5e7, 1, Farads));
        RegulatedPoint point = ranked.Modes[0].Hold(2, 0.9, Amperes);
        Assert.True(point.RunningShare < 0.1, point.ToString());
        Assert.Equal(1, ranked.RippleVolts!.Value / (Amperes / (point.FrequencyHz * Farads)), 0.1);
    }

    [Fact]
    public void As_many_parts_as_the_ripple_needs_are_taken_and_no_more()
    {
        Requirement free = With(1e4, 1, 3e-9);
        double one = Ranked(free).RippleVolts!.Value;
        Assert.Equal(1, Ranked(free with { RippleVolts = one * 1.01 }).Parts);
        Requirement tight = free with { RippleVolts = one * 0.6 };
        RankedCandidate several = Ranked(tight);
        Assert.InRange(several.Parts, 2, 8);
        Assert.True(several.RippleVolts <= tight.RippleVolts);
        Assert.StartsWith($"{several.Parts} parts in turn: ripple of ", Assert.Single(several.Reasons), StringComparison.Ordinal);
    }

    [Fact]
    [Trait("Length", "Long")]
    public void A_ripple_that_no_number_of_parts_allows_is_a_reason_to_reject() =>
        Assert.StartsWith(
            "16 parts in turn: ripple of ",
            Assert.Single(RankedChoice.Of(With(1e4, 1, 3e-9) with { RippleVolts = 1e-6 }, [s_half]).Rejected).Reasons[0],
            StringComparison.Ordinal);

    [Fact]
    public void A_stage_whose_output_nothing_holds_up_is_rejected_and_without_a_limit_it_is_not()
    {
        Requirement bare = CoreRequirement.Of() with { OutputFarads = 0 };
        Candidate[] stage = [.. Candidates.Of(bare with { Candidates = [new() { Families = ["inductive"] }] }).All];
        Assert.StartsWith("nothing holds the output up", Assert.Single(RankedChoice.Of(bare, stage).Rejected).Reasons[0], StringComparison.Ordinal);
        Assert.Null(Assert.Single(RankedChoice.Of(bare with { RippleVolts = null }, stage).Ranked).RippleVolts);
        Assert.InRange(Assert.Single(RankedChoice.Of(bare with { OutputFarads = 1e-5 }, stage).Ranked).RippleVolts!.Value, 0, 0.05);
    }

    // at the frequency of least loss the coil's ripple is some 35 mV: half of it takes a higher one, which costs something
    [Fact]
    public void A_stage_runs_faster_until_its_ripple_is_allowed()
    {
        Requirement core = CoreRequirement.Of();
        Candidate[] stage = [.. Candidates.Of(core with { Candidates = [new() { Families = ["inductive"] }] }).All];
        RankedCandidate free = Assert.Single(RankedChoice.Of(core with { RippleVolts = 1 }, stage).Ranked);
        RankedCandidate held = Assert.Single(RankedChoice.Of(core with { RippleVolts = free.RippleVolts / 2 }, stage).Ranked);
        Assert.InRange(held.RippleVolts!.Value, free.RippleVolts!.Value / 10, free.RippleVolts.Value / 2);
        Assert.True(held.LossWatts > free.LossWatts);
    }

    private static Requirement With(double floorHz, double rippleVolts, double outputFarads) => new()
    {
        Name = "ripple",
        InputVolts = new(2, 2),
        OutputVolts = [0.9],
        Loads = [new("on", Amperes, 1)],
        Process = CoreRequirement.Process,
        AreaSquareMetres = 1e-6,
        FrequencyHz = new(floorHz, 1e8),
        RippleVolts = rippleVolts,
        OutputFarads = outputFarads,
    };

    private static RankedCandidate Ranked(Requirement requirement) => Assert.Single(RankedChoice.Of(requirement, [s_half]).Ranked);
}
