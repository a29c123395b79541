namespace ScNet.Tests.Analysis;

/// <summary>What a mode warns of where inductor currents end phases.</summary>
public sealed class RestFindingsTests
{
    private const string Ends_of_a = "The current of inductor 'a' ends phases, so that ratio and charges depend on the load. Averages are those of the boundary, where such a phase lasts exactly its duty; ask for an operating point for others.";

    // both fall in phase 2; when a is at zero the switch of b opens as well, whatever flows there
    [Fact]
    public void A_coil_that_the_end_of_another_leaves_without_path_is_told()
    {
        IReadOnlyList<Diagnostic> warnings = Findings.Warnings(Buck("x").Switch("up", "vin", "y", on: 1).Switch("down", "y", "gnd", on: 2).Inductor("b", "vout", "y").Build());

        Assert.Equal(2, warnings.Count);
        Findings.Is(warnings[0], DiagnosticCodes.DiscontinuousConduction, null, Ends_of_a, "a");
        Findings.Is(
            warnings[1],
            DiagnosticCodes.InductorInterrupted,
            2,
            "Where phase 2 ends before its time every switch opens, which leaves the current of inductor 'b' no path, so that operating points exist only where it is zero then as well. Let a capacitor, or the body diodes of switches (diode_volts), carry it on.",
            "b");
    }

    // between two capacitors, or a capacitor and the output, a coil has a path whatever the switches do
    [Fact]
    public void A_coil_between_held_voltages_flows_on()
    {
        Diagnostic warning = Assert.Single(Findings.Warnings(
            Converter.Create("filtered").Input("vin").Output("vout").Duties(0.25, 0.75)
                .Switch("high", "vin", "x", on: 1).Switch("low", "x", "gnd", on: 2).Inductor("a", "x", "q", untilZero: 2)
                .Capacitor("c", "q", "gnd").Inductor("b", "q", "vout").Build()));
        Findings.Is(warning, DiagnosticCodes.DiscontinuousConduction, null, Ends_of_a, "a");
    }

    // b flows in phases 1 and 2 alone, and a ends phase 4
    [Fact]
    public void A_coil_that_has_no_path_anyway_when_the_phase_ends_is_not_told()
    {
        IReadOnlyList<Diagnostic> warnings = Findings.Warnings(
            Converter.Create("in turn").Input("vin").Output("vout").Duties(0.125, 0.375, 0.125, 0.375)
                .Switch("up", "vin", "y", on: 1).Switch("down", "y", "gnd", on: 2).Inductor("b", "y", "vout", untilZero: 2)
                .Switch("high", "vin", "x", on: 3).Switch("low", "x", "gnd", on: 4).Inductor("a", "x", "vout", untilZero: 4).Build());
        Assert.Equal([DiagnosticCodes.DiscontinuousConduction], warnings.Select(w => w.Code));
    }

    private static ConverterBuilder Buck(string node) => Converter.Create("beside").Input("vin").Output("vout").Duties(0.25, 0.75)
        .Switch("high", "vin", node, on: 1).Switch("low", node, "gnd", on: 2).Inductor("a", node, "vout", untilZero: 2);
}
