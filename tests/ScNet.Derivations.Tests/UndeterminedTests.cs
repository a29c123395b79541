
namespace ScNet.Derivations.Tests;

public sealed class UndeterminedTests
{
    [Fact]
    public void A_value_that_nothing_fixes_is_neither_right_nor_wrong()
    {
        DerivationReport report = Derivation.Of(Circuits.Series()).Ratio("1/2").CapacitorVoltage("a", "1/4").Check();
        Assert.False(report.IsRight);
        Assert.Empty(report.Wrong);
        Finding open = Assert.Single(report.Undetermined);
        Assert.Null(open.Conflict);
        Assert.Null(open.BrokenEquation);
        Assert.Equal(Quantity.Undetermined, open.IfOthersAreRight);
        Assert.Equal("Series: 1 of 2 statements not determined.\n  voltage of a  stated 1/4  not determined by the circuit", report.ToString());
    }

    [Fact]
    public void Saying_that_it_is_undetermined_is_right() =>
        Assert.True(Derivation.Of(Circuits.Series()).CapacitorVoltage("a", "?").CapacitorVoltage("b", "?").Check().IsRight);

    [Fact]
    public void Saying_so_of_a_value_that_is_fixed_is_wrong()
    {
        Finding finding = Assert.Single(Derivation.Of(Circuits.Half()).CapacitorVoltage("fly", "?").Check().Wrong);
        Assert.Equal(Quantity.Exact(1, 2), finding.Derived);
        Assert.Null(finding.BrokenEquation);
    }

    [Fact]
    public void Two_values_that_cannot_go_together_are_a_contradiction_all_the_same()
    {
        DerivationReport report = Derivation.Of(Circuits.Series()).Ratio("1/2").CapacitorVoltage("a", "1/4").CapacitorVoltage("b", "1/2").Check();
        Assert.Equal(
            """
            Series: 2 of 3 statements not determined.
              voltage of a  stated 1/4  not determined by the circuit
                breaks    loop vout–b–a in phase 2: vout = b + a, but 1/2 ≠ 1/2 + 1/4
                conflicts with ratio = 1/2; voltage of b = 1/2
                would be  0 if the others are right
              voltage of b  stated 1/2  not determined by the circuit
                breaks    loop vout–b–a in phase 2: vout = b + a, but 1/2 ≠ 1/2 + 1/4
                conflicts with ratio = 1/2; voltage of a = 1/4
                would be  1/4 if the others are right
            """,
            report.ToString());
        Assert.Equal(3, report.Findings[1].Conflict!.Statements.Count);
    }

    [Fact]
    public void Without_the_ratio_the_contradiction_runs_through_the_laws()
    {
        Finding finding = Derivation.Of(Circuits.Series()).CapacitorVoltage("a", "1/4").CapacitorVoltage("b", "1/2").Check().Findings[0];
        Assert.Equal(2, finding.Conflict!.Statements.Count);
        Assert.True(finding.Conflict.Laws.Count > 1);
        Assert.Equal(Quantity.Zero, finding.IfOthersAreRight);
    }

    [Fact]
    public void Values_that_fit_each_other_are_said_to_agree()
    {
        DerivationReport report = Derivation.Of(Circuits.Series()).CapacitorVoltage("a", "1/8").CapacitorVoltage("b", "3/8").Check();
        Assert.All(report.Findings, f => Assert.Null(f.Conflict));
        Assert.Contains("agrees    with the other statements", report.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_contradiction_among_others_is_not_blamed_on_a_bystander()
    {
        DerivationReport report = Derivation.Of(Converter.Create("Two chains").Input("vin").Output("vout")
                .Capacitor("a", "p", "m").Capacitor("b", "m", "n").Capacitor("c", "p", "k").Capacitor("d", "k", "n")
                .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
                .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2).Build())
            .CapacitorVoltage("a", "1/4").CapacitorVoltage("b", "1/2").CapacitorVoltage("c", "1/4").Check();
        Assert.Equal(["voltage of a = 1/4", "voltage of b = 1/2"], report.Findings[0].Conflict!.Statements.Select(s => s.ToString()).Order());
        Assert.Null(report.Findings[2].Conflict);
        Assert.Null(report.Findings[2].BrokenEquation);
    }
}
