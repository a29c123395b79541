using Fractions;
using ScNet.Analysis;

namespace ScNet.Tests.Analysis;

/// <summary>Capacitors that a controller outside the netlist holds.</summary>
public class ControlledCapacitorTests
{
    [Fact]
    public void A_controller_holds_what_nothing_else_fixes()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(ThreeLevels(new Fraction(1, 2)));
        Assert.Equal(VoltageBalance.Control, analysis.Balance);
        Assert.Equal("1/2", analysis.Capacitors["fly1"].Voltage.ToString());
        Assert.Equal("[3/10, -1/5, 3/10, -1/5]", analysis.Inductors["coil"].Voltage.ToString());
        Assert.All(analysis.Switches, s => Assert.Equal(0.5, Math.Abs(s.PeakBlocking.ToDouble())));
        Assert.Empty(analysis.Diagnostics);
    }

    [Fact]
    public void What_ripple_says_too_needs_no_controller()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(FourLevels(new Fraction(2, 3), new Fraction(1, 3)));
        Assert.Equal(VoltageBalance.Ripple, analysis.Balance);
        Assert.Empty(analysis.Diagnostics);
    }

    [Fact]
    public void A_controller_beats_ripple_with_a_warning_that_names_where_ripple_goes()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(FourLevels(new Fraction(3, 5), new Fraction(1, 3)));
        Assert.Equal(VoltageBalance.Control, analysis.Balance);
        Assert.Equal("3/5", analysis.Capacitors["fly1"].Voltage.ToString());
        Diagnostic warning = Assert.Single(analysis.Diagnostics);
        Assert.Equal((DiagnosticSeverity.Warning, DiagnosticCodes.ControlledAgainstBalance), (warning.Severity, warning.Code));
        Assert.Equal(["fly1"], warning.Elements);
        Assert.Contains("it goes to 2/3", warning.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void One_of_two_held_leaves_the_other_to_losses()
    {
        // one movement is left, and a skew form of one movement says nothing
        ModeAnalysis analysis = ModeAnalysis.Of(FourLevels(new Fraction(2, 3) + new Fraction(1, 10), null));
        Assert.Equal(VoltageBalance.Losses, analysis.Balance);
        Assert.Equal("23/30", analysis.Capacitors["fly1"].Voltage.ToString());
        Assert.Equal("?", analysis.Capacitors["fly2"].Voltage.ToString());
    }

    [Fact]
    public void Averages_that_say_otherwise_are_an_error_that_names_the_loop()
    {
        Converter half = Converter.Create("half").Input("vin").Output("vout").Capacitor("fly", "p", "n", controlled: new Fraction(1, 3))
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2).Build();
        Findings.Is(
            Findings.Error(half),
            DiagnosticCodes.ControlledContradiction,
            null,
            "A controller cannot hold 'fly' at 1/3 of the input against these loops, which come to 1/2: phase 1 through s1, s2: fly = vin - vout; phase 2 through s3, s4: fly = vout. Leave it uncontrolled, or change the switches of one of the loops.",
            "fly",
            "s1",
            "s2",
            "s3",
            "s4");
    }

    [Fact]
    public void Two_controllers_that_a_loop_ties_contradict_each_other()
    {
        // both flying capacitors of a stage in parallel for a phase
        Converter converter = Converter.Create("tied").Input("vin").Output("vout").Duties(0.2, 0.3, 0.2, 0.3)
            .Capacitor("a", "p", "n", controlled: new Fraction(1, 2)).Capacitor("b", "q", "n", controlled: new Fraction(1, 3))
            .Switch("join", "p", "q", on: [1, 2, 3, 4]).Switch("u1", "vin", "p", on: 1).Switch("u2", "p", "x", on: 3)
            .Switch("d2", "n", "x", on: 1).Switch("d1", "gnd", "n", on: 3).Switch("free", "x", "gnd", on: [2, 4]).Inductor("coil", "x", "vout").Build();
        Diagnostic error = Findings.Error(converter);
        Findings.Is(
            error,
            DiagnosticCodes.ControlledContradiction,
            null,
            "A controller cannot hold 'a' at 1/2, 'b' at 1/3 of the input against these loops: phase 1 through join: a = b. Leave one of them uncontrolled, or change the switches of one of the loops.",
            "a",
            "b",
            "join");
    }

    [Fact]
    public void A_right_statement_changes_nothing()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(Converter.Create("half").Input("vin").Output("vout").Capacitor("fly", "p", "n", controlled: new Fraction(1, 2))
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2).Build());
        Assert.Equal(VoltageBalance.Averages, analysis.Balance);
    }

    private static Converter ThreeLevels(Fraction controlled) => InductiveStages.MultiLevel(
        3, [new(1, 5), new(3, 10), new(1, 5), new(3, 10)], [[1], [], [2], []], [controlled]).Build();

    private static Converter FourLevels(Fraction? first, Fraction? second) => InductiveStages.MultiLevel(
        4,
        [.. Enumerable.Repeat(new[] { new Fraction(1, 5), new Fraction(2, 15) }, 3).SelectMany(d => d)],
        [[1], [], [2], [], [3], []],
        [first, second]).Build();
}
