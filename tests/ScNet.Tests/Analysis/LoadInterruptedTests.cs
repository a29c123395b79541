namespace ScNet.Tests.Analysis;

public class LoadInterruptedTests
{
    [Fact]
    public void A_phase_in_which_the_load_current_has_no_path_is_told() => Findings.Is(
        Findings.Error(Converter.Create("dead time").Input("vin").Output("x", LoadKind.Current).PhaseNames("on", "off", "dead")
            .Switch("high", "vin", "x", on: 1).Switch("low", "x", "gnd", on: 2).Build()),
        DiagnosticCodes.LoadInterrupted,
        3,
        "In phase 3 (dead) the load current has no path: no chain of closed switches and capacitors leads from the output 'x' to 'gnd' or to the input. Put a capacitor from the output to 'gnd', or take the load as stiff.");

    [Fact]
    public void A_floating_capacitor_at_the_output_is_no_path()
    {
        IReadOnlyList<Diagnostic> errors = Findings.Errors(Converter.Create("floating").Input("vin").Output("x", LoadKind.Current)
            .Capacitor("fly", "x", "n").Switch("high", "vin", "x", on: 1).Build());
        Diagnostic error = Assert.Single(errors);
        Assert.Equal((DiagnosticCodes.LoadInterrupted, 2), (error.Code, error.Phase));
    }

    [Fact]
    public void A_capacitor_at_the_output_carries_the_current() =>
        Assert.Empty(Findings.Warnings(Converter.Create("held").Input("vin").Output("x", LoadKind.Current)
            .Capacitor("out", "x", "gnd").Switch("high", "vin", "x", on: 1).Build()));
}
