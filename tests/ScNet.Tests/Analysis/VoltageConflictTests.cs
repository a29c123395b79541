namespace ScNet.Tests.Analysis;

public class VoltageConflictTests
{
    [Fact]
    public void Only_the_demands_that_contradict_each_other_are_told_with_their_phases_and_switches() => Findings.Is(
        Findings.Error(Converter.Create("conflict").Input("vin").Output("vout").PhaseNames("one", "two", "three")
            .Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "gnd", on: [1, 2]).Switch("s3", "p", "vout", on: 2)
            .Switch("s4", "p", "vout", on: 3).Switch("s5", "n", "vin", on: 3)
            .Build()),
        DiagnosticCodes.VoltageConflict,
        null,
        "No voltages satisfy these loops together: phase 2 (two) through s2, s3: fly = vout; "
            + "phase 3 (three) through s4, s5: fly = vout - vin. Change the switches of any one of them.",
        "fly", "s2", "s3", "s4", "s5");

    [Fact]
    public void A_capacitor_turned_round_between_two_phases_shows_in_the_signs() => Findings.Is(
        Findings.Error(Converter.Create("turned").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n").Capacitor("out", "vout", "gnd")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "gnd", on: 1)
            .Switch("s3", "vin", "n", on: 2).Switch("s4", "p", "gnd", on: 2)
            .Build()),
        DiagnosticCodes.VoltageConflict,
        null,
        "No voltages satisfy these loops together: phase 1 through s1, s2: fly = vin; phase 2 through s3, s4: fly = -vin. Change the switches of any one of them.",
        "fly", "s1", "s2", "s3", "s4");

    [Fact]
    public void A_contradiction_without_capacitors_names_the_ports()
    {
        Diagnostic error = Findings.Error(Converter.Create("ports").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2).Switch("bypass", "vin", "vout", on: 2)
            .Build());
        Assert.Equal(DiagnosticCodes.VoltageConflict, error.Code);
        Assert.Contains("phase 2 through bypass: vout = vin", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Independent_contradictions_are_separate_findings()
    {
        Converter converter = Converter.Create("two").Input("vin").Output("vout")
            .Capacitor("a", "p", "n").Capacitor("b", "q", "m").Capacitor("good", "v", "w")
            .Switch("a1", "p", "vin", on: 1).Switch("a2", "n", "gnd", on: 1).Switch("a3", "n", "vin", on: 2).Switch("a4", "p", "gnd", on: 2)
            .Switch("b1", "q", "vin", on: 1).Switch("b2", "m", "gnd", on: 1).Switch("b3", "m", "vin", on: 2).Switch("b4", "q", "gnd", on: 2)
            .Switch("c1", "v", "vin", on: 1).Switch("c2", "w", "vout", on: 1).Switch("c3", "v", "vout", on: 2).Switch("c4", "w", "gnd", on: 2)
            .Build();
        IReadOnlyList<Diagnostic> errors = Findings.Errors(converter);
        Assert.Equal(2, errors.Count);
        Assert.Equal([["a"], ["b"]], errors.Select(e => e.Elements.Where(n => n.Length == 1)));
    }

    [Fact]
    public void One_mistake_that_shows_in_parallel_capacitors_is_told_once()
    {
        // a redundant capacitor beside the one in conflict, in every phase
        Diagnostic error = Findings.Error(Converter.Create("redundant").Input("vin").Output("vout").Phases(3)
            .Capacitor("x", "p", "n").Capacitor("fly", "p", "n").Capacitor("y", "p", "n")
            .Switch("s1", "vin", "p", on: [1, 3]).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: [2, 3])
            .Build());
        Assert.Equal(DiagnosticCodes.VoltageConflict, error.Code);
        Assert.Equal(3, error.Message.Split("phase ").Length - 1);
        Assert.Single(error.Elements, n => n is "x" or "fly" or "y");
        Assert.Equal(DiagnosticSeverity.Error, error.Severity);
    }

    [Fact]
    public void A_contradiction_of_very_many_loops_is_told_briefly()
    {
        Diagnostic error = Findings.Error(Ladders.Builder(400).Switch("wrong", "m200", "r202", on: 2).Build());
        Assert.Equal(DiagnosticCodes.VoltageConflict, error.Code);
        Assert.InRange(error.Message.Length, 300, 1000);
        Assert.Contains("more terms; phase 1", error.Message, StringComparison.Ordinal);
        Assert.Contains(" more. Change the switches of any one of them.", error.Message, StringComparison.Ordinal);
    }
}
