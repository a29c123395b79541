namespace ScNet.Tests.Analysis;

/// <summary>Contradictions in which inductors take part, and a short that comes first of all loops.</summary>
public sealed class InductorConflictTests
{
    /// <summary>fly is charged to the input in phase 1, and the coil hangs across it in both: its average cannot be zero.</summary>
    [Fact]
    public void Loops_of_inductors_are_told_with_the_law_that_they_break() => Findings.Is(
        Findings.Error(Converter.Create("across").Input("vin").Output("vout")
            .Capacitor("fly", "p", "gnd").Capacitor("out", "vout", "gnd")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "vin", "vout", on: 2)
            .Inductor("coil", "p", "gnd").Build()),
        DiagnosticCodes.VoltageConflict,
        null,
        "No voltages satisfy these loops together, with no voltage across an inductor on average: phase 1 through s1: fly = vin; "
            + "phase 1 through s1: vin = coil; phase 2: fly = coil. Change the switches of any one of them.",
        "fly", "coil", "s1");

    [Fact]
    public void A_short_in_the_first_loop_is_told_as_one() => Findings.Is(
        Findings.Error(Converter.Create("short first").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n").Capacitor("other", "vout", "gnd")
            .Switch("across", "p", "n", on: 1).Switch("s1", "vin", "p", on: 2).Switch("s2", "n", "gnd", on: 2).Switch("s3", "vin", "vout", on: 2)
            .Build()),
        DiagnosticCodes.CapacitorShorted,
        1,
        "In phase 1 the closed switch across shorts capacitor 'fly', but other loops require it to hold a voltage: phase 2 through s1, s2: fly = vin. Open it in that phase.",
        "fly", "across", "s1", "s2");

    /// <summary>Each stage ends what it finds: an input shorted in phase 1 hides that the load current has no path in phase 2.</summary>
    [Fact]
    public void Only_the_first_kind_of_mistake_is_told()
    {
        Diagnostic shorted = Findings.Error(Converter.Create("short and open").Input("vin").Output("vout", LoadKind.Current)
            .Switch("s1", "vin", "gnd", on: 1).Switch("s2", "vin", "vout", on: 1).Build());
        Diagnostic open = Findings.Error(Converter.Create("open and contradictory").Input("vin").Output("vout", LoadKind.Current)
            .Capacitor("fly", "p", "gnd").Switch("s1", "vin", "vout", on: 1)
            .Switch("s2", "vin", "p", on: 1).Switch("s3", "p", "gnd", on: 2).Build());

        Assert.Equal((DiagnosticCodes.InputShorted, 1), (shorted.Code, shorted.Phase));
        Assert.Equal((DiagnosticCodes.LoadInterrupted, 2), (open.Code, open.Phase));
    }
}
