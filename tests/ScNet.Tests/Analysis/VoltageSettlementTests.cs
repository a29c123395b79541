using Fractions;
using ScNet.Analysis;

namespace ScNet.Tests.Analysis;

/// <summary>What settles voltages that averages leave open, and what is said where nothing does.</summary>
public sealed class VoltageSettlementTests
{
    private const string Advice = ": resistances decide. Ask for the periodic solution at a frequency, or state what a controller holds it at (controlled).";

    [Fact]
    public void A_warning_tells_whether_the_output_is_left_to_losses_too()
    {
        // v = (1 - fly)/5 + fly/4 on average: the output moves with the flying capacitor, and not with equal intervals
        ModeAnalysis uneven = ModeAnalysis.Of(InductiveStages.MultiLevel(3, [new(1, 5), new(3, 10), new(1, 4), new(1, 4)], [[1], [], [2], []]).Build());
        Assert.Equal(VoltageBalance.Losses, uneven.Balance);
        Assert.Equal(Quantity.Undetermined, uneven.Ratio);
        Assert.Contains(
            $"Neither averages nor the ripple of inductor currents fix the voltage of capacitor 'fly1', and with it the output's{Advice}", uneven.Diagnostics.Select(d => d.Message));
        ModeAnalysis even = ModeAnalysis.Of(InductiveStages.MultiLevel(3, new Fraction(1, 5)).Build());
        Assert.Equal($"Neither averages nor the ripple of inductor currents fix the voltage of capacitor 'fly1'{Advice}", Assert.Single(even.Diagnostics).Message);
    }

    [Fact]
    public void An_output_that_no_capacitor_moves_with_is_named_alone()
    {
        // the coil takes the output in turn, and then the input: whatever the output is, both average to nothing
        ModeAnalysis analysis = ModeAnalysis.Of(Converter.Create("in turn").Input("vin").Output("vout").Phases(4)
            .Switch("s1", "vout", "x", on: 1).Switch("s2", "y", "gnd", on: [1, 4]).Switch("s3", "vout", "y", on: 2).Switch("s4", "x", "gnd", on: [2, 3])
            .Switch("s5", "vin", "x", on: 4).Switch("s6", "vin", "y", on: 3).Inductor("coil", "x", "y").Build());
        Assert.Equal((VoltageBalance.Losses, Quantity.Undetermined), (analysis.Balance, analysis.Ratio));
        Assert.Equal("[?, ?, -1, 1]", analysis.Inductors["coil"].Voltage.ToString());
        Diagnostic warning = Assert.Single(analysis.Diagnostics, d => d.Code == DiagnosticCodes.BalancedByLosses);
        Assert.Equal($"Neither averages nor the ripple of inductor currents fix the voltage of the output{Advice}", warning.Message);
        Assert.Empty(warning.Elements);
        Assert.StartsWith(
            "At constant inductor currents no charge reaches the output 'vout' on average: what some phases bring, others take, so that there is no charge flow and no limit. Ask",
            Assert.Single(analysis.Diagnostics, d => d.Code == DiagnosticCodes.LoadMovesVoltages).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void One_of_two_held_has_a_warning_for_each()
    {
        // by ripple they go to 2/3 and 1/3
        ModeAnalysis analysis = ModeAnalysis.Of(InductiveStages.MultiLevel(
            4, [.. Enumerable.Repeat(new[] { new Fraction(1, 5), new Fraction(2, 15) }, 3).SelectMany(d => d)], [[1], [], [2], [], [3], []], [new(3, 4), null]).Build());
        Assert.Equal(VoltageBalance.Losses, analysis.Balance);
        Assert.Equal(
            [
                (DiagnosticSeverity.Warning, DiagnosticCodes.ControlledAgainstBalance, "Capacitor 'fly1' is controlled at 3/4 of the input, but by itself, with the duties as they are, it goes to 2/3: the controller has to shift duties for ever."),
                (DiagnosticSeverity.Warning, DiagnosticCodes.BalancedByLosses, $"Neither averages nor the ripple of inductor currents fix the voltage of capacitor 'fly2'{Advice}"),
            ],
            analysis.Diagnostics.Select(d => (d.Severity, d.Code, d.Message)));
        Assert.Equal(["fly1", "fly2"], analysis.Diagnostics.SelectMany(d => d.Elements));
    }

    [Fact]
    public void A_controller_holds_a_pair_that_floats_and_leaves_another()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(Pair(Pair(Half(), "a", new Fraction(1, 4)), "b", null).Build());
        Assert.Equal(VoltageBalance.Control, analysis.Balance);
        Assert.Equal(["1/2", "1/4", "1/4", "?", "?"], analysis.Capacitors.Select(c => c.Voltage.ToString()));
        Assert.All(analysis.Diagnostics, d => Assert.Equal((DiagnosticSeverity.Warning, DiagnosticCodes.CapacitorVoltageUndetermined), (d.Severity, d.Code)));
        Assert.Equal(["b1", "b2"], analysis.Diagnostics.Select(d => d.Elements[0]));
    }

    [Fact]
    public void A_pair_that_floats_beside_a_coil_is_no_matter_of_losses()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(Pair(InductiveStages.StepDown(new Fraction(1, 4)), "a", null).Build());
        Assert.Equal(VoltageBalance.Averages, analysis.Balance);
        Assert.Equal("1/4", analysis.Ratio.ToString());
        Assert.Equal("[3/4, -1/4]", analysis.Inductors["coil"].Voltage.ToString());
        Assert.Equal(["?", "?"], analysis.Capacitors.Select(c => c.Voltage.ToString()));
        Assert.Equal(Enumerable.Repeat(DiagnosticCodes.CapacitorVoltageUndetermined, 2), analysis.Diagnostics.Select(d => d.Code));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Ripple_says_nothing_where_inductors_are_in_series_for_a_part_of_the_period(bool isHeldForOnePhase)
    {
        // four levels with the coil in two halves; a switch holds their middle at the output while the bridge freewheels, so that one
        // half takes all of its voltage and neither averages to nothing. A filter inductor before them sees no voltage at all.
        Converter whole = InductiveStages.MultiLevel(4, new Fraction(1, 5)).Build();
        ConverterBuilder builder = Converter.Create("held").Input("vin").Output("vout").Duties([.. whole.Phases.Select(p => p.Duty)])
            .Inductor("filter", "vin", "z").Capacitor("smooth", "z", "gnd")
            .Inductor("outer", "x", "m").Inductor("inner", "m", "vout", henries: 3).Switch("hold", "m", "vout", on: isHeldForOnePhase ? [2] : []);
        foreach (Switch s in whole.Switches)
        {
            builder.Switch(s.Name, s.FirstNode, s.SecondNode, whole.Modes[0].ClosedPhases[whole.Switches.PositionOf(s.Name)]);
        }

        foreach (Capacitor c in whole.Capacitors)
        {
            builder.Capacitor(c.Name, c.PositiveNode, c.BottomNode);
        }

        ModeAnalysis analysis = ModeAnalysis.Of(builder.Build());
        Assert.Equal("1/5", analysis.Ratio.ToString());
        Assert.Equal("[0, 0, 0, 0, 0, 0]", analysis.Inductors["filter"].Voltage.ToString());
        Assert.Equal(isHeldForOnePhase ? VoltageBalance.Losses : VoltageBalance.Ripple, analysis.Balance);
        Assert.Equal(isHeldForOnePhase ? ["1", "?", "?"] : ["1", "2/3", "1/3"], analysis.Capacitors.Select(c => c.Voltage.ToString()));

        // a third or nothing less a fifth, by one to three
        Assert.Equal(isHeldForOnePhase ? "[?, ?, ?, ?, ?, ?]" : "[1/30, -1/20, 1/30, -1/20, 1/30, -1/20]", analysis.Inductors["outer"].Voltage.ToString());
        Assert.Equal(isHeldForOnePhase ? "[?, ?, ?, ?, ?, ?]" : "[1/10, -3/20, 1/10, -3/20, 1/10, -3/20]", analysis.Inductors["inner"].Voltage.ToString());
    }

    private static ConverterBuilder Half() => Converter.Create("half").Input("vin").Output("vout").Capacitor("fly", "p", "n")
        .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2);

    // two capacitors side by side that nothing else touches
    private static ConverterBuilder Pair(ConverterBuilder builder, string name, Fraction? controlled) => builder
        .Capacitor($"{name}1", $"{name}+", $"{name}-", controlled: controlled).Capacitor($"{name}2", $"{name}+", $"{name}-");
}
