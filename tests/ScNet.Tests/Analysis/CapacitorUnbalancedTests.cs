namespace ScNet.Tests.Analysis;

public class CapacitorUnbalancedTests
{
    [Fact]
    public void A_capacitor_that_is_only_ever_charged_one_way_is_named() => Findings.Is(
        Findings.Error(Converter.Create("one way").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Build()),
        DiagnosticCodes.CapacitorUnbalanced,
        null,
        "No flow delivers charge to the output 'vout' and leaves every capacitor balanced over the period: it always leaves a net charge on capacitor 'fly'. Close switches, in this or another phase, that lead this charge back.",
        "fly");

    [Fact]
    public void Where_the_charge_may_be_left_on_one_of_several_all_are_named()
    {
        // 'a' and 'c' feed the output in phase 1 and 'b' in phase 2; nothing ever empties them
        Diagnostic error = Findings.Error(Converter.Create("two").Input("vin").Output("vout")
            .Capacitor("a", "p", "n").Capacitor("b", "q", "gnd").Capacitor("c", "p", "n")
            .Switch("s1", "vin", "p", on: [1, 2]).Switch("s2", "n", "vout", on: 1).Switch("s3", "n", "q", on: 2)
            .Build());
        Assert.Equal(DiagnosticCodes.CapacitorUnbalanced, error.Code);
        Assert.Contains("a net charge on one of the capacitors 'a', 'b', 'c'", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_load_current_through_a_capacitor_that_nothing_recharges_is_told()
    {
        Diagnostic error = Findings.Error(Converter.Create("drained").Input("vin").Output("vout", LoadKind.Current)
            .Capacitor("store", "vout", "p")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "p", "gnd", on: 2)
            .Build());
        Assert.Equal(DiagnosticCodes.CapacitorUnbalanced, error.Code);
        Assert.Equal(["store"], error.Elements);
    }

    [Fact]
    public void A_current_load_on_an_island_of_its_own_is_never_charged()
    {
        Diagnostic error = Findings.Error(Converter.Create("island").Input("vin").Output("vout", LoadKind.Current)
            .Capacitor("store", "vout", "gnd").Capacitor("in", "p", "gnd").Switch("s1", "vin", "p", on: 1)
            .Build());
        Assert.Equal(DiagnosticCodes.OutputNeverCharged, error.Code);
    }

    [Fact]
    public void Very_many_capacitors_are_not_all_named_in_the_message()
    {
        var builder = Converter.Create("many").Input("vin").Output("vout").Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1);
        for (int k = 1; k <= 20; k++)
        {
            builder.Capacitor($"c{k}", "p", "n");
        }

        Diagnostic error = Findings.Error(builder.Build());
        Assert.Contains("'c8' and 12 more.", error.Message, StringComparison.Ordinal);
        Assert.Equal(20, error.Elements.Count);
    }
}
