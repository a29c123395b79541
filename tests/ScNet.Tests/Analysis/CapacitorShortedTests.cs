using ScNet.Analysis;

namespace ScNet.Tests.Analysis;

public class CapacitorShortedTests
{
    private static ConverterBuilder Half => Converter.Create("half").Input("vin").Output("vout")
        .Capacitor("fly", "p", "n")
        .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
        .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2);

    [Fact]
    public void A_short_of_a_capacitor_that_must_hold_a_voltage_names_the_switches_and_the_demands() => Findings.Is(
        Findings.Error(Half.Phases(3).Switch("s5", "p", "a", on: 3).Switch("s6", "a", "n", on: 3).Build()),
        DiagnosticCodes.CapacitorShorted,
        3,
        "In phase 3 the closed switches s5, s6 short capacitor 'fly', but other loops require it to hold a voltage: "
            + "phase 1 through s1, s2: fly = vin - vout; phase 2 through s3, s4: fly = vout. Open one of them in that phase.",
        "fly", "s5", "s6", "s1", "s2", "s3", "s4");

    [Fact]
    public void Loops_that_have_no_part_in_the_contradiction_are_not_named()
    {
        // 'by' is shorted harmlessly and 'other' is held harmlessly; only 'fly' is in trouble
        Converter converter = Converter.Create("mixed").Input("vin").Output("vout").Phases(3)
            .Capacitor("by", "a", "b").Capacitor("fly", "p", "n").Capacitor("other", "vin", "gnd")
            .Switch("t1", "a", "b", on: [1, 2]).Switch("t2", "b", "gnd", on: 1)
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "gnd", on: [1, 3])
            .Switch("s3", "p", "vout", on: 3).Switch("s4", "p", "n", on: 2)
            .Build();
        Diagnostic error = Findings.Error(converter);
        Findings.Is(
            error,
            DiagnosticCodes.CapacitorShorted,
            2,
            "In phase 2 the closed switch s4 shorts capacitor 'fly', but other loops require it to hold a voltage: "
                + "phase 1 through s1, s2: fly = vin. Open it in that phase.",
            "fly", "s4", "s1", "s2");
    }

    [Fact]
    public void A_capacitor_shorted_in_every_loop_holds_zero_and_is_no_error()
    {
        Converter converter = Half.Capacitor("idle", "a", "b").Switch("t", "a", "b", on: [1, 2]).Build();
        ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
        Assert.Empty(analysis.Diagnostics);
        Assert.Equal(Quantity.Zero, analysis.IdealPoint.CapacitorVoltages[1]);
    }
}
