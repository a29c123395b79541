namespace ScNet.Tests.Analysis;

public class OutputNeverChargedTests
{
    [Fact]
    public void An_output_in_no_loop_is_told_so() => Findings.Is(
        Findings.Error(Converter.Create("open").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "gnd", on: 1).Switch("s3", "p", "vout", on: 2)
            .Build()),
        DiagnosticCodes.OutputNeverCharged,
        null,
        "No charge gets from the input 'vin' to the output 'vout', at once or by way of capacitors: the output is in no loop in any phase. Close switches that connect them.");

    [Fact]
    public void An_output_that_only_meets_capacitors_the_input_never_charges_names_them() => Findings.Is(
        Findings.Error(Converter.Create("apart").Input("vin").Output("vout")
            .Capacitor("in", "vin", "gnd").Capacitor("a", "p", "gnd").Capacitor("b", "p", "gnd")
            .Switch("s1", "vout", "p", on: 1)
            .Build()),
        DiagnosticCodes.OutputNeverCharged,
        null,
        "No charge gets from the input 'vin' to the output 'vout', at once or by way of capacitors: in every phase the output is in loops with capacitors 'a', 'b' only, which the input never charges. Close switches that connect them.",
        "a", "b");

    [Fact]
    public void Charge_by_way_of_several_capacitors_and_phases_counts()
    {
        Converter relay = Converter.Create("relay").Input("vin").Output("vout").Phases(4)
            .Capacitor("a", "p", "gnd").Capacitor("b", "q", "gnd").Capacitor("c", "r", "gnd")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "p", "q", on: 2).Switch("s3", "q", "r", on: 3).Switch("s4", "r", "vout", on: 4)
            .Build();
        Assert.Empty(Findings.Warnings(relay));
    }
}
