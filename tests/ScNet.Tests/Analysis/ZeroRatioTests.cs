namespace ScNet.Tests.Analysis;

public class ZeroRatioTests
{
    [Fact]
    public void Loops_that_hold_the_output_at_zero_are_named() => Findings.Is(
        Findings.Error(Converter.Create("zero").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "gnd", on: 1)
            .Switch("s3", "vin", "p", on: 2).Switch("s4", "n", "vout", on: 2)
            .Build()),
        DiagnosticCodes.ZeroRatio,
        null,
        "These loops together hold the output 'vout' at zero volts, whatever the input is: phase 1 through s1, s2: fly = vin; "
            + "phase 2 through s3, s4: fly = vin - vout. Change the switches of one of them.",
        "fly", "s1", "s2", "s3", "s4");

    [Fact]
    public void A_load_that_meets_only_a_discharged_capacitor_is_told()
    {
        Diagnostic error = Findings.Error(Converter.Create("discharged").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n").Capacitor("in", "vin", "gnd")
            .Switch("s1", "p", "n", on: 1).Switch("s2", "n", "gnd", on: 2).Switch("s3", "p", "vout", on: 2)
            .Build());
        Assert.Equal(DiagnosticCodes.ZeroRatio, error.Code);
        Assert.Contains("phase 1 through s1: fly = 0; phase 2 through s2, s3: fly = vout", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_current_load_tied_to_the_reference_in_every_phase_is_zero_on_average()
    {
        Diagnostic error = Findings.Error(Converter.Create("tied").Input("vin").Output("vout", LoadKind.Current)
            .Capacitor("in", "vin", "gnd").Switch("s1", "vout", "gnd", on: [1, 2]).Build());
        Assert.Equal(DiagnosticCodes.ZeroRatio, error.Code);
        Assert.Contains("at zero volts on average", error.Message, StringComparison.Ordinal);
    }
}
