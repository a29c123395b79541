using ScNet.Analysis;
using ScNet.Design.Choice;
using ScNet.Design.Requirements;
using ScNet.Devices;
using ScNet.Results;
using ScNet.SteadyState;

namespace ScNet.Tests.Design.Choice;

/// <summary>Corners of the process decide where a requirement names them, by the exact impedance of the same sizes with the values that they have there.</summary>
public sealed class CornerTests
{
    private const double Resistance = 1.1, Capacitance = 0.93;

    private static readonly Corner s_slow = new("slow", Resistance, Capacitance);

    private static readonly Candidate[] s_third = [.. Candidates.Of(CoreRequirement.Of(candidates: [new() { Families = ["series-parallel"], Sizes = new(3, 3) }])).All];

    [Fact]
    public void Sizes_hold_what_is_required_at_every_corner_that_is_named()
    {
        Requirement silent = With();
        Assert.True(LeastOhms(Ranked(silent)) > NeededOhms, "the corner decides nothing here");

        RankedCandidate slow = Ranked(With(s_slow));
        Assert.True(LeastOhms(slow) <= NeededOhms * (1 + 1e-6), $"{LeastOhms(slow)} of {NeededOhms}");
        Assert.Contains(slow.Reasons, r => r.StartsWith("corner slow decides its sizes: ", StringComparison.Ordinal) && r.Contains("from 2.8 V is not held", StringComparison.Ordinal));
        Assert.True(slow.LifeHours < Ranked(silent).LifeHours);
    }

    [Fact]
    public void A_corner_that_takes_nothing_changes_nothing()
    {
        RankedChoice without = RankedChoice.Of(With(), s_third), fast = RankedChoice.Of(With(new Corner("fast", 0.8, 1.1)), s_third);
        Assert.Equal(ResultTable.OfChoice(without).ToJson(), ResultTable.OfChoice(fast).ToJson());
    }

    [Theory]
    [InlineData("series-parallel", 3)]
    [InlineData("flying-capacitor", 3)]
    public void A_corner_that_takes_too_much_rejects_by_its_name(string family, int size)
    {
        Requirement requirement = With(new Corner("fast", 0.8, 1.1), new Corner("hopeless", 1, 1e-4));
        RankedChoice choice = RankedChoice.Of(requirement, Candidates.Of(requirement with { Candidates = [new() { Families = [family], Sizes = new(size, size) }] }).All);
        Assert.StartsWith("in corner hopeless ", Assert.Single(choice.Rejected).Reasons[0], StringComparison.Ordinal);
    }

    private static double NeededOhms => ((2.8 / 3) - 0.8) / 0.05;

    private static Requirement With(params Corner[] corners) => CoreRequirement.Of(CoreRequirement.Process with { Corners = corners });

    private static RankedCandidate Ranked(Requirement requirement) =>
        RankedChoice.Of(requirement, s_third) is { Winner: { } winner } ? winner : throw new InvalidOperationException(RankedChoice.Of(requirement, s_third).Rejected[0].ToString());

    // no threshold is told, so that on-resistances go with the factor alone
    private static double LeastOhms(RankedCandidate ranked)
    {
        Assert.All(ranked.Sized!.Switches, s => Assert.Equal(0, s.Device.ThresholdVolts));
        Converter at = ranked.Sized.Converter.WithValues(
            [.. ranked.Sized.Converter.Capacitors.Select(c => c.Farads * Capacitance)],
            [.. ranked.Sized.Converter.Switches.Select(s => s.Ohms * Resistance)],
            [.. ranked.Sized.Converter.Capacitors.Select(c => c.EsrOhms * Resistance)]);
        return OutputImpedance.Of(ModeAnalysis.Of(at)).Ohms(100e6);
    }
}
