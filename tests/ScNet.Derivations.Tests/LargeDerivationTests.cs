using Fractions;
using ScNet.Topologies;

namespace ScNet.Derivations.Tests;

/// <summary>
/// Ladders of hundreds of levels. The cost is counted in bytes allocated, which do not depend on how busy the machine
/// is: from one size to another it may grow by an exponent of 1.3 at most.
/// </summary>
public sealed class LargeDerivationTests
{
    private const int Small = 124;
    private const int Large = 499;
    private const double MaximumExponent = 1.3;

    [Fact]
    public void The_cost_of_many_right_statements_grows_with_their_number() => Grows(
        size => Stated(size, v => v),
        derivation => Assert.True(derivation.Check().IsRight));

    [Fact]
    public void One_slip_in_all_of_them_is_named() => Grows(
        size => Restated.With(Restated.Published(Restated.Facts("ladder", size), up: false), s =>
            s.Kind <= StatementKind.SwitchCharge && s.Kind != StatementKind.Ratio ? -s.Value.Value : s.Value),
        derivation =>
        {
            DerivationReport report = derivation.Check();
            Assert.Equal(SlipKind.SignsFlipped, report.Slips[0].Kind);
            Assert.Equal(report.Wrong.Count(), report.Slips[0].Explains.Count);
            Assert.StartsWith("Ladder ", report.ToString(), StringComparison.Ordinal);
            Assert.InRange(report.ToString().Length, 100, 4000);
        });

    [Fact]
    public void Nonsense_throughout_is_reported_too()
    {
        Random random = new(3);
        Grows(
            size => Stated(size, _ => new Fraction(random.Next(1, 1000), 1009)),
            derivation =>
            {
                DerivationReport report = derivation.Check();
                Assert.Equal(report.Findings.Count, report.Wrong.Count());
                Assert.InRange(report.ToString().Length, 100, 6000);
            });
    }

    [Fact]
    public void A_lone_wrong_value_far_from_everything_stated_has_its_chain_of_laws() => Grows(
        size => Derivation.Of(SeriesParallel.StepDown(2 * (size + 1))).CapacitorInPhase($"fly{size + 1}", 1, "1/3"),
        derivation =>
        {
            Finding finding = Assert.Single(derivation.Check().Wrong);
            Assert.StartsWith($"balance of fly{derivation.Converter.Capacitors.Count / 2 + 1}: 1/3 + [-1/", finding.BrokenEquation, StringComparison.Ordinal);
            Assert.NotNull(finding.Conflict);
        });

    [Fact]
    public void The_cost_of_explaining_every_tenth_of_them_grows_with_their_number()
    {
        int count = 0;
        Grows(
            size => Stated(size, v => count++ % 10 == 7 ? "17/19" : v),
            derivation => Assert.All(derivation.Check().Wrong, f => Assert.NotNull(f.BrokenEquation)));
    }

    [Fact]
    [Trait("Length", "Long")]
    public void The_cost_of_explaining_nonsense_throughout_grows_with_the_number_of_findings()
    {
        Random random = new(5);
        Grows(
            size => Stated(size, _ => new Fraction(random.Next(1, 1000), 1009), "series-parallel"),
            derivation => Assert.All(derivation.Check().Wrong, f => Assert.True(f.BrokenEquation is not null || f.Conflict is null)));
    }

    private static Derivation Stated(int size, Func<StatedValue, StatedValue> map, string family = "ladder") =>
        Restated.With(Restated.Published(Restated.Facts(family, size), up: false), s => map(s.Value));

    private static void Grows(Func<int, Derivation> state, Action<Derivation> check)
    {
        Derivation small = state(Small), large = state(Large);
        check(small);
        long few = Allocations.Of(() => check(small)), many = Allocations.Of(() => check(large));
        double exponent = Math.Log((double)many / few) / Math.Log((Large + 1.0) / (Small + 1));
        Assert.True(exponent <= MaximumExponent, $"From {few} bytes to {many}: an exponent of {exponent:F2}.");
    }
}
