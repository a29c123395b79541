using ScNet.Derivations.Checking;
using System.Diagnostics;
using Fractions;
using ScNet.Topologies;

namespace ScNet.Derivations.Tests;

/// <summary>Thousand-level converters within generous times.</summary>
public sealed class LargeDerivationTests
{
    private static readonly Derivation s_ladder = Restated.Published(Restated.Facts("ladder", 999), up: false);

    [Fact]
    public void Twenty_thousand_right_statements_take_seconds() => Within(10, () =>
    {
        Assert.True(s_ladder.Statements.Count > 19_000);
        Assert.True(s_ladder.Check().IsRight);
    });

    [Fact]
    public void One_slip_in_all_of_them_is_named() => Within(30, () =>
    {
        DerivationReport report = Restated.With(s_ladder, s => s.Kind <= StatementKind.SwitchCharge && s.Kind != StatementKind.Ratio ? -s.Value.Value : s.Value).Check();
        Assert.Equal(SlipKind.SignsFlipped, report.Slips[0].Kind);
        Assert.Equal(report.Wrong.Count(), report.Slips[0].Explains.Count);
        Assert.StartsWith("Ladder 1000:1: wrong, ", report.ToString(), StringComparison.Ordinal);
        Assert.InRange(report.ToString().Length, 100, 4000);
    });

    [Fact]
    public void Nonsense_throughout_is_reported_too() => Within(30, () =>
    {
        Random random = new(3);
        DerivationReport report = Restated.With(s_ladder, _ => new Fraction(random.Next(1, 1000), 1009)).Check();
        Assert.Equal(report.Findings.Count, report.Wrong.Count());
        Assert.InRange(report.ToString().Length, 100, 6000);
    });

    [Fact]
    public void A_lone_wrong_value_far_from_everything_stated_has_its_chain_of_laws() => Within(15, () =>
    {
        Finding finding = Assert.Single(Derivation.Of(SeriesParallel.StepDown(1000)).CapacitorInPhase("fly500", 1, "1/3").Check().Wrong);
        Assert.Equal("balance of fly500: 1/3 + [-1/1000] leaves 997/3000", finding.BrokenEquation);
        Assert.NotNull(finding.Conflict);
    });

    private static void Within(int seconds, Action action)
    {
        Stopwatch watch = Stopwatch.StartNew();
        action();
        Assert.True(watch.Elapsed.TotalSeconds < seconds, $"{watch.Elapsed.TotalSeconds:F1} s instead of {seconds} s at most.");
    }
}
