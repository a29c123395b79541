using ScNet.Topologies;

namespace ScNet.Derivations.Tests;

/// <summary>The texts of reports, one for each kind of finding, the same in every culture.</summary>
public sealed class ReportTests
{
    private static readonly string[] s_cultures = ["", "de-DE", "ar-SA", "tr-TR", "hi-IN"];

    private static Converter Third => SeriesParallel.StepDown(3);

    [Fact]
    public void A_right_derivation_takes_one_line() => Reads(
        () => Derivation.Of(Third).Ratio("1/3").Capacitor("fly1", "1/3", "-1/3"),
        "Series-parallel 3:1: right, 3 statements.");

    [Fact]
    public void A_capacitor_out_of_balance_says_what_is_left_over() => Reads(
        () => Derivation.Of(Third).Capacitor("fly1", "1/3", "-1/6"),
        """
        Series-parallel 3:1: wrong, 1 of 2 statements.
          charge of fly1 in phase 2  stated -1/6  derived -1/3
            breaks    balance of fly1: 1/3 + (-1/6) leaves 1/6
            conflicts with charge of fly1 in phase 1 = 1/3
            slip      too small by a factor of 2
        """);

    [Fact]
    public void Charge_that_a_node_does_not_pass_on_names_the_node_and_the_phase() => Reads(
        () => Derivation.Of(Dickson.StepDown(4)).InputInPhase(1, "1/4").CapacitorInPhase("fly3", 1, "2/7").OutputInPhase(2, "1/2"),
        """
        Dickson 4:1: wrong, 1 of 3 statements.
          charge of fly3 in phase 1  stated 2/7  derived 1/4
            breaks    KCL at vin+t3 in phase 1: fly3 = input, but 2/7 ≠ 1/4
            conflicts with input charge in phase 1 = 1/4
        """);

    [Fact]
    public void A_loop_that_does_not_close_is_written_in_symbols_and_numbers() => Reads(
        () => Derivation.Of(Third).Ratio("1/3").CapacitorVoltage("fly1", "1/2").CapacitorVoltage("fly2", "1/3"),
        """
        Series-parallel 3:1: wrong, 1 of 3 statements.
          voltage of fly1  stated 1/2  derived 1/3
            breaks    loop vout–fly1 in phase 2: vout = fly1, but 1/3 ≠ 1/2
            conflicts with ratio = 1/3
        """);

    [Fact]
    public void Switches_are_told_by_their_state_and_by_the_path_across_them() => Reads(
        () => Derivation.Of(Third).SwitchInPhase("series1", 2, "2/7").Blocking("series1", "1/7", "1/2"),
        """
        Series-parallel 3:1: wrong, 3 of 3 statements.
          charge of series1 in phase 2            stated 2/7  derived 0
            breaks    series1 is open in phase 2: 0, not 2/7
          blocking voltage of series1 in phase 1  stated 1/7  derived 0
            breaks    series1 is closed in phase 1: 0, not 1/7
          blocking voltage of series1 in phase 2  stated 1/2  derived 2/3
            breaks    path across series1 in phase 2: series1 + vout = vin, but 1/2 + [1/3] ≠ 1
        """);

    [Fact]
    public void Coefficients_and_peaks_are_told_by_their_formulas() => Reads(
        () => Derivation.Of(Third).Capacitor("fly1", "1/3", "-1/3").SlowCoefficient("fly1", "2/9").FastCoefficient("top1", "1/9")
            .SlowCoefficient("fly2", "1/3").PeakBlocking("top1", "1/5"),
        """
        Series-parallel 3:1: wrong, 4 of 6 statements.
          slow coefficient of fly1       stated 2/9  derived 1/9
            breaks    sum of a²/2 of fly1: (1/3)²/2 + (-1/3)²/2 = 1/9
            conflicts with charge of fly1 in phase 1 = 1/3; charge of fly1 in phase 2 = -1/3
            slip      too large by a factor of 2
          fast coefficient of top1       stated 1/9  derived 2/9
            breaks    sum of a²/D of top1: [0]²/(1/2) + [1/3]²/(1/2) = 2/9
            slip      not divided by the duties, or too small by a factor of 2
          slow coefficient of fly2       stated 1/3  derived 1/9
            breaks    sum of a²/2 of fly2: [1/3]²/2 + [-1/3]²/2 = 1/9
            slip      charges not squared
          peak blocking voltage of top1  stated 1/5  derived 2/3
            breaks    largest blocking voltage of top1: of [2/3], [0] = 2/3
        """);

    [Fact]
    public void A_coefficient_that_follows_from_wrong_charges_says_so()
    {
        DerivationReport report = Derivation.Of(Third).Capacitor("fly1", "2/5", "-2/5").SlowCoefficient("fly1", "4/25").Check();
        Assert.Equal(SlipKind.FollowsFromWrong, report.Findings[2].Slips[0].Kind);
        Assert.Equal("follows from the stated charges of fly1", report.Findings[2].Slips[0].Description);
        Assert.Equal("sum of a²/2 of fly1: [1/3]²/2 + [-1/3]²/2 = 1/9", report.Findings[2].BrokenEquation);
    }

    [Fact]
    public void Charges_per_unit_of_input_charge_are_recognised_as_one_slip() => Reads(
        () => Derivation.Of(Third).Ratio("1/3").Capacitor("fly1", 1, -1).Output(1, 2),
        """
        Series-parallel 3:1: wrong, 4 of 5 statements.
          slip: charges per unit of input charge instead of output charge (explains 4 of 4)
          charge of fly1 in phase 1  stated 1   derived 1/3
            breaks    KCL at vin+p1 in phase 1: fly1 = input, but 1 ≠ [1/3]
            conflicts with ratio = 1/3
          charge of fly1 in phase 2  stated -1  derived -1/3
            breaks    KCL at n1 in phase 2: bottom1 = fly1, but [-1/3] ≠ -1
            conflicts with ratio = 1/3
          output charge in phase 1   stated 1   derived 1/3
            breaks    output charge of a period is 1: 1 + 2 = 3
            conflicts with output charge in phase 2 = 2
            would be  -1 if the others are right
          output charge in phase 2   stated 2   derived 2/3
            breaks    output charge of a period is 1: 1 + 2 = 3
            conflicts with output charge in phase 1 = 1
            would be  0 if the others are right
        """);

    [Fact]
    public void Three_phases_in_the_wrong_order_are_recognised()
    {
        DerivationReport report = Derivation.Of(Circuits.ThreePhases())
            .Capacitor("fly1", "1/4", "1/4", "-1/2").Capacitor("fly2", "-1/4", "1/4", 0).Output("1/4", "1/4", "1/2").Check();
        Assert.Equal("all values one phase too late", Assert.Single(report.Slips).Description);
        Assert.Equal(7, report.Slips[0].Explains.Count);
    }

    [Fact]
    public void Two_slips_at_once_are_both_named()
    {
        Derivation right = Restated.Published(Restated.Facts("ladder", 4), up: false);
        DerivationReport report = Restated.With(right, s =>
            s.Element == "s3" && s.Kind is StatementKind.SwitchCharge or StatementKind.BlockingVoltage or StatementKind.PeakBlockingVoltage && s.Element == "s3"
                ? -s.Value.Value
                : s.Kind == StatementKind.SlowCoefficient ? Quantity.Exact(2 * s.Value.Value.ToFraction()) : s.Value).Check();
        Assert.Equal(
            ["slow coefficients too large by a factor of 2", "terminals of s3 reversed"],
            report.Slips.Where(s => s.Explains.Count > 2).Select(s => s.Description).Order());
    }

    [Fact]
    public void A_value_stated_twice_conflicts_with_itself() => Reads(
        () => Derivation.Of(Circuits.Half()).CapacitorVoltage("fly", "1/2").CapacitorVoltage("fly", "2/3"),
        """
        Half: wrong, 1 of 2 statements.
          voltage of fly  stated 2/3  derived 1/2
            breaks    loop vout–fly in phase 2: vout = fly, but [1/2] ≠ 2/3
            conflicts with voltage of fly = 1/2
        """);

    [Fact]
    public void A_mode_without_result_becomes_a_report_that_says_so()
    {
        DerivationReport report = Derivation.Of(Circuits.WithoutResult()).Ratio("1/2").CapacitorVoltage("fly", "1/2").Check();
        Assert.False(report.IsRight);
        Assert.False(report.HasResult);
        Assert.All(report.Findings, f => Assert.Equal(Verdict.Undetermined, f.Verdict));
        Assert.Null(report.Findings[0].Conflict);
        string[] lines = report.ToString().Split('\n');
        Assert.Equal("Shorted: the mode has no result, so nothing can be compared.", lines[0]);
        Assert.StartsWith("  error input-shorted: ", lines[1], StringComparison.Ordinal);
    }

    private static void Reads(Func<Derivation> derivation, string expected)
    {
        foreach (string culture in s_cultures)
        {
            using CultureScope scope = new(culture);
            Assert.Equal(expected.ReplaceLineEndings("\n"), derivation().Check().ToString());
        }
    }
}
