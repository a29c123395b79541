namespace ScNet.Tests.Analysis;

public class InputShortedTests
{
    private static ConverterBuilder Half => Converter.Create("half").Input("vin").Output("vout")
        .Capacitor("fly", "p", "n")
        .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
        .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2);

    [Fact]
    public void A_path_from_input_to_reference_is_named_in_its_order() => Findings.Is(
        Findings.Error(Half.Switch("x1", "vin", "a", on: 2).Switch("x2", "a", "n", on: 2).Build()),
        DiagnosticCodes.InputShorted,
        2,
        "In phase 2 the closed switches x1, x2, s4 connect the input 'vin' to 'gnd'. Open one of them in that phase.",
        "x1", "x2", "s4");

    [Fact]
    public void A_single_switch_and_a_named_phase_are_said_as_such() => Findings.Is(
        Findings.Error(Half.PhaseNames("charge", "discharge").Switch("x", "gnd", "vin", on: 1).Build()),
        DiagnosticCodes.InputShorted,
        1,
        "In phase 1 (charge) the closed switch x connects the input 'vin' to 'gnd'. Open it in that phase.",
        "x");

    [Fact]
    public void Every_phase_with_a_short_is_reported()
    {
        IReadOnlyList<Diagnostic> errors = Findings.Errors(Half.Switch("x", "gnd", "vin", on: [1, 2]).Build());
        Assert.Equal([1, 2], errors.Select(e => e.Phase!.Value));
        Assert.All(errors, e => Assert.Equal(DiagnosticCodes.InputShorted, e.Code));
    }

    [Fact]
    public void A_current_load_does_not_hide_a_shorted_input() => Assert.Equal(
        DiagnosticCodes.InputShorted,
        Findings.Error(Half.Output("vout", LoadKind.Current).Capacitor("out", "vout", "gnd").Switch("x", "gnd", "vin", on: 1).Build()).Code);
}
