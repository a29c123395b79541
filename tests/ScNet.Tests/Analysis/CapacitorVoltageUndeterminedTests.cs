using ScNet.Analysis;

namespace ScNet.Tests.Analysis;

public class CapacitorVoltageUndeterminedTests
{
    [Fact]
    public void Capacitors_that_are_always_in_series_share_a_voltage_that_nothing_divides()
    {
        Converter converter = Converter.Create("series").Input("vin").Output("vout")
            .Capacitor("a", "p", "m").Capacitor("b", "m", "n")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)
            .Build();
        IReadOnlyList<Diagnostic> warnings = Findings.Warnings(converter);
        Assert.Equal(2, warnings.Count);
        Findings.Is(
            warnings[0],
            DiagnosticCodes.CapacitorVoltageUndetermined,
            null,
            "Nothing fixes the voltage of capacitor 'a': it can shift together with that of capacitor 'b', and every loop still closes. Put it, in some phase, into a loop of known voltages.",
            "a", "b");
        ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
        Assert.Equal(Quantity.Exact(1, 2), analysis.Ratio);
        Assert.All(analysis.IdealPoint.CapacitorVoltages, v => Assert.Equal(Quantity.Undetermined, v));
        Assert.Equal(Quantity.Undetermined, analysis.IdealPoint.NodePotentials["m"][1]);
    }

    [Fact]
    public void Parallel_capacitors_that_nothing_else_touches_are_told_too()
    {
        Converter converter = Converter.Create("island").Input("vin").Output("vout")
            .Capacitor("a", "p", "q").Capacitor("b", "p", "q").Capacitor("fly", "f", "g")
            .Switch("s1", "vin", "f", on: 1).Switch("s2", "g", "vout", on: 1)
            .Switch("s3", "f", "vout", on: 2).Switch("s4", "g", "gnd", on: 2)
            .Build();
        Assert.Equal([["a", "b"], ["b", "a"]], Findings.Warnings(converter).Select(w => w.Elements));
    }

    // the coils in series keep a and b at one voltage on average, whichever it is: both move, and no coil sees it
    [Fact]
    public void Capacitors_that_coils_in_series_join_can_shift_together()
    {
        Converter converter = Converter.Create("joined").Input("vin").Output("vout")
            .Capacitor("a", "x", "gnd").Capacitor("b", "y", "gnd").Inductor("one", "x", "m").Inductor("other", "m", "y").Capacitor("fly", "f", "g")
            .Switch("s1", "vin", "f", on: 1).Switch("s2", "g", "vout", on: 1)
            .Switch("s3", "f", "vout", on: 2).Switch("s4", "g", "gnd", on: 2)
            .Build();
        Assert.Equal([["a", "b"], ["b", "a"]], Findings.Warnings(converter).Select(w => w.Elements));
    }

    [Fact]
    public void A_load_current_through_a_capacitor_turned_round_has_an_average_but_no_potential_in_each_phase()
    {
        // vin + a in one half of the period, vin - a in the other
        Converter converter = Converter.Create("turning").Input("vin").Output("vout", LoadKind.Current)
            .Capacitor("a", "p", "n")
            .Switch("s1", "vin", "n", on: 1).Switch("s2", "p", "vout", on: 1)
            .Switch("s3", "vin", "p", on: 2).Switch("s4", "n", "vout", on: 2)
            .Build();
        Diagnostic warning = Assert.Single(Findings.Warnings(converter));
        Assert.Contains("capacitor 'a': every loop closes whatever it is", warning.Message, StringComparison.Ordinal);
        ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
        Assert.Equal(Quantity.Exact(1), analysis.Ratio);
        Assert.All(analysis.IdealPoint.NodePotentials[2], v => Assert.Equal(Quantity.Undetermined, v));
        Assert.Equal([Quantity.Exact(-1, 2), Quantity.Exact(1, 2)], analysis.ChargeFlow.Capacitors[0]);
    }
}
