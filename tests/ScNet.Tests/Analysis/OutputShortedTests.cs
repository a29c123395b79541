using ScNet.Analysis;

namespace ScNet.Tests.Analysis;

public class OutputShortedTests
{
    [Fact]
    public void A_stiff_output_tied_to_the_reference_is_an_error_naming_the_path() => Findings.Is(
        Findings.Error(Converter.Create("shorted").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2).Switch("s5", "p", "n", on: 2)
            .Build()),
        DiagnosticCodes.OutputShorted,
        2,
        "In phase 2 the closed switches s3, s5, s4 connect the output 'vout' to 'gnd'. Open one of them in that phase.",
        "s3", "s5", "s4");

    [Fact]
    public void Input_and_output_shorted_in_one_phase_are_two_findings()
    {
        IReadOnlyList<Diagnostic> errors = Findings.Errors(Converter.Create("both").Input("vin").Output("vout")
            .Switch("s1", "vin", "gnd", on: 2).Switch("s2", "vout", "vin", on: [1, 2]).Build());
        Assert.Equal([DiagnosticCodes.InputShorted, DiagnosticCodes.OutputShorted], errors.Select(e => e.Code));
        Assert.Equal(["s2", "s1"], errors[1].Elements);
    }

    [Fact]
    public void A_current_load_may_be_tied_to_the_reference_in_a_phase_and_averages_it()
    {
        // the switching node of a buck stage: connected to the input for 3/10 of the period
        Converter buck = Converter.Create("buck").Input("vin").Output("x", LoadKind.Current).Duties(0.3, 0.7)
            .Switch("high", "vin", "x", on: 1).Switch("low", "x", "gnd", on: 2).Build();
        Assert.Equal(Quantity.Exact(3, 10), ModeAnalysis.Of(buck, buck.Modes[0]).Ratio);
    }
}
