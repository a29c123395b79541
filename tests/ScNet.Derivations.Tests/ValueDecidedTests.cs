namespace ScNet.Derivations.Tests;

/// <summary>Flows that component values decide: numbers, compared within the tolerance.</summary>
public sealed class ValueDecidedTests
{
    [Fact]
    public void Fractions_and_numbers_are_right_within_the_tolerance()
    {
        Derivation derivation = Derivation.Of(Circuits.Parallel()).Capacitor("a", "1/8", "-1/8").Capacitor("b", 0.3750001, -0.375).SlowCoefficient("a", 0.015625);
        Assert.True(derivation.Check().IsRight, derivation.Check().ToString());
        Assert.Equal(Verdict.Wrong, derivation.WithTolerance(1e-9).Check().Findings[2].Verdict);
    }

    [Fact]
    public void A_split_that_leaves_charge_over_breaks_the_current_law_and_the_rest_says_what_it_would_be()
    {
        Finding finding = Assert.Single(Derivation.Of(Circuits.Parallel()).InputInPhase(1, "1/2").CapacitorInPhase("a", 1, "1/8").CapacitorInPhase("b", 1, "1/3").Check().Wrong);
        Assert.Equal(QuantityKind.Numeric, finding.Derived.Kind);
        Assert.Equal("KCL at vin+p in phase 1: a + b = input, but 1/8 + 1/3 ≠ 1/2", finding.BrokenEquation);
        Assert.Equal(Quantity.Exact(3, 8), finding.IfOthersAreRight);
        Assert.Equal(3, finding.Conflict!.Statements.Count);
    }

    [Fact]
    public void An_equal_split_between_unequal_capacitors_is_recognised()
    {
        DerivationReport report = Derivation.Of(Circuits.Parallel()).Capacitor("a", "1/4", "-1/4").Capacitor("b", "1/4", "-1/4").SlowCoefficient("a", "1/16").Check();
        Assert.Equal(5, report.Wrong.Count());
        Slip slip = report.Slips[0];
        Assert.Equal((SlipKind.EqualParts, 5), (slip.Kind, slip.Explains.Count));
        Assert.Equal("as if all capacitors and all switches were equal", slip.ToString());
    }

    [Fact]
    public void What_topology_fixes_stays_exact_beside_it()
    {
        DerivationReport report = Derivation.Of(Circuits.Parallel()).Ratio(0.5000001).CapacitorVoltage("a", "1/2").Input("1/2", 0).Check();
        Assert.True(report.IsRight, report.ToString());
        Assert.False(Derivation.Of(Circuits.Parallel()).Ratio("0.5000001").Check().IsRight);
    }
}
