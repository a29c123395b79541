using Fractions;
using ScNet.Analysis;

namespace ScNet.Tests.Analysis;

/// <summary>
/// Ratios, voltages and currents of the classical stages. Source: R. W. Erickson and D. Maksimovic, "Fundamentals of
/// Power Electronics", chapters 2 and 6 (from memory).
/// </summary>
public class InductorAverageTests
{
    public static TheoryData<int, int> Duties => new() { { 1, 2 }, { 1, 3 }, { 3, 4 }, { 2, 15 }, { 9, 10 } };

    private static readonly (Func<Fraction, LoadKind, ConverterBuilder> Stage, Func<Fraction, Fraction> Ratio)[] s_stages =
    [
        (InductiveStages.StepDown, d => d),
        (InductiveStages.StepUp, d => 1 / (1 - d)),
        (InductiveStages.Inverting, d => -d / (1 - d)),
        (InductiveStages.CapacitorCoupledInverting, d => -d / (1 - d)),
        (InductiveStages.SinglePrimary, d => d / (1 - d)),
        (InductiveStages.ReversedSinglePrimary, d => d / (1 - d)),
        (InductiveStages.FourSwitch, d => d / (1 - d)),
    ];

    [Theory]
    [MemberData(nameof(Duties))]
    public void Ratios_of_the_textbook(int numerator, int denominator)
    {
        Fraction duty = new(numerator, denominator);
        foreach ((Func<Fraction, LoadKind, ConverterBuilder> stage, Func<Fraction, Fraction> ratio) in s_stages)
        {
            foreach (LoadKind load in new[] { LoadKind.Stiff, LoadKind.Current })
            {
                ModeAnalysis analysis = ModeAnalysis.Of(stage(duty, load).Build());
                Assert.Equal(Quantity.Exact(ratio(duty)), analysis.Ratio);
                Assert.Equal(VoltageBalance.Averages, analysis.Balance);
                Assert.Empty(analysis.Diagnostics);

                // the current law says the same
                Assert.Equal(ratio(duty), analysis.ChargeFlow.Input.Aggregate(Fraction.Zero, (sum, q) => sum + q.ToFraction()));
            }
        }
    }

    [Fact]
    public void A_step_down_stage_in_full()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(InductiveStages.StepDown(new Fraction(1, 4)).Build());
        InductorAnalysis coil = analysis.Inductors["coil"];
        Assert.Equal("1", coil.Current.ToString());
        Assert.Equal("[3/4, -1/4]", coil.Voltage.ToString());
        Assert.Equal("[1/4, 3/4]", coil.Charge.ToString());
        Assert.Equal("1", coil.FastCoefficient.ToString());
        Assert.Equal("[1/4, 0]", analysis.ChargeFlow.Input.ToString());
        Assert.Equal("[0, 1]", analysis.Switches["high"].Blocking.ToString());
        Assert.Equal("[1, 0]", analysis.Switches["low"].Blocking.ToString());
        Assert.Equal("1/4", analysis.Switches["high"].FastCoefficient.ToString());
        Assert.Equal("3/4", analysis.Switches["low"].FastCoefficient.ToString());
        Assert.Equal(1, analysis.FastSwitchingLimit.Ohms, 1e-15);
        Assert.Equal(0, analysis.ChargeSharing!.OhmsAtOneHertz);
    }

    [Fact]
    public void The_winding_counts_in_the_fast_limit()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(Converter.Create("up").Input("vin").Output("vout").Duties(0.75, 0.25)
            .Inductor("coil", "vin", "x", ohms: 0.1).Switch("low", "x", "gnd", on: 1, ohms: 0.2).Switch("high", "x", "vout", on: 2, ohms: 0.3).Build());
        Assert.Equal("4", analysis.Inductors["coil"].Current.ToString());
        Assert.Equal("16", analysis.Inductors["coil"].FastCoefficient.ToString());

        // the dissipation of I = 4 in winding, low switch for 3/4 and high switch for 1/4 of the time
        Assert.Equal(16 * (0.1 + (0.75 * 0.2) + (0.25 * 0.3)), analysis.FastSwitchingLimit.Ohms, 1e-14);
    }

    [Fact]
    public void Currents_of_the_coupled_stage()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(InductiveStages.CapacitorCoupledInverting(new Fraction(3, 4)).Build());
        Assert.Equal("4", analysis.Capacitors["fly"].Voltage.ToString());
        Assert.Equal("-3", analysis.Inductors["l1"].Current.ToString());
        Assert.Equal("1", analysis.Inductors["l2"].Current.ToString());
        Assert.Equal("[1, -3]", analysis.Inductors["l1"].Voltage.ToString());
        Assert.Equal("[-1, 3]", analysis.Inductors["l2"].Voltage.ToString());
        Assert.Equal("4", analysis.Switches["s1"].PeakBlocking.ToString());
        Assert.Equal("0", analysis.ChargeSharing!.Coefficients["fly"].ToString());
    }

    [Fact]
    public void Many_inductors_side_by_side_share_a_current_by_their_windings()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(Converter.Create("twins").Input("vin").Output("vout").Duties(0.25, 0.75)
            .Switch("high", "vin", "x", on: 1).Switch("low", "x", "gnd", on: 2)
            .Inductor("a", "x", "vout", ohms: 1).Inductor("b", "x", "vout", ohms: 3).Build());
        Assert.Equal(0.75, analysis.Inductors["a"].Current.ToDouble(), 1e-14);
        Assert.Equal(0.25, analysis.Inductors["b"].Current.ToDouble(), 1e-14);
        Assert.Equal(0.75 + 1, analysis.FastSwitchingLimit.Ohms, 1e-14);
    }

    [Fact]
    public void Without_windings_they_share_it_by_inductance()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(Converter.Create("twins").Input("vin").Output("vout").Duties(0.25, 0.75)
            .Switch("high", "vin", "x", on: 1).Switch("low", "x", "gnd", on: 2)
            .Inductor("a", "x", "vout", henries: 1e-6).Inductor("b", "x", "vout", henries: 3e-6).Build());
        Assert.Equal(0.75, analysis.Inductors["a"].Current.ToDouble(), 1e-14);
        Assert.Equal(0.25, analysis.Inductors["b"].Current.ToDouble(), 1e-14);
    }

    [Fact]
    public void Two_stages_side_by_side_share_by_all_that_is_in_their_way()
    {
        // each stage is a resistance of winding and switches: 0.1 + 0.2 and 0.3 + 0.6
        ModeAnalysis analysis = ModeAnalysis.Of(Converter.Create("interleaved").Input("vin").Output("vout").Phases(2)
            .Switch("u1", "vin", "x", on: 1, ohms: 0.2).Switch("d1", "x", "gnd", on: 2, ohms: 0.2).Inductor("a", "x", "vout", ohms: 0.1)
            .Switch("u2", "vin", "y", on: 2, ohms: 0.6).Switch("d2", "y", "gnd", on: 1, ohms: 0.6).Inductor("b", "y", "vout", ohms: 0.3).Build());
        Assert.Equal("1/2", analysis.Ratio.ToString());
        Assert.Equal(0.75, analysis.Inductors["a"].Current.ToDouble(), 1e-14);
        Assert.Equal(0.3 * 0.9 / 1.2, analysis.FastSwitchingLimit.Ohms, 1e-14);
    }

    [Fact]
    public void Inductors_in_series_divide_the_voltage_and_carry_one_current()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(Converter.Create("series").Input("vin").Output("vout").Duties(0.25, 0.75)
            .Switch("high", "vin", "x", on: 1).Switch("low", "x", "gnd", on: 2)
            .Inductor("a", "x", "m", henries: 1e-6).Inductor("b", "vout", "m", henries: 3e-6).Build());
        Assert.Equal("1/4", analysis.Ratio.ToString());
        Assert.Equal("1", analysis.Inductors["a"].Current.ToString());
        Assert.Equal("-1", analysis.Inductors["b"].Current.ToString());
        Assert.Equal("[3/16, -1/16]", analysis.Inductors["a"].Voltage.ToString());
        Assert.Equal("[-9/16, 3/16]", analysis.Inductors["b"].Voltage.ToString());
        Assert.Equal("[?, ?]", analysis.IdealPoint.NodePotentials["m"].ToString());
    }

    [Fact]
    public void An_inductor_may_feed_a_load_current_without_a_capacitor()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(Converter.Create("bare").Input("vin").Output("vout", LoadKind.Current).Duties(0.25, 0.75)
            .Switch("high", "vin", "x", on: 1).Switch("low", "x", "gnd", on: 2).Inductor("coil", "x", "vout").Build());
        Assert.Equal("1/4", analysis.Ratio.ToString());
        Assert.Equal("1", analysis.Inductors["coil"].Current.ToString());

        // a constant current leaves an inductor no voltage, so that the output follows the switching node
        Assert.Equal("[0, 0]", analysis.Inductors["coil"].Voltage.ToString());
    }

    [Fact]
    public void A_series_capacitor_makes_two_inductors_carry_the_same()
    {
        // common practice, no source: the ratio of the series-capacitor stage is half the duty
        ModeAnalysis analysis = ModeAnalysis.Of(Converter.Create("series capacitor").Input("vin").Output("vout").Duties(0.2, 0.3, 0.2, 0.3)
            .Switch("u1", "vin", "a", on: 1).Capacitor("fly", "a", "x").Switch("d1", "x", "gnd", on: [2, 3, 4]).Inductor("l1", "x", "vout")
            .Switch("u2", "a", "y", on: 3).Switch("d2", "y", "gnd", on: [1, 2, 4]).Inductor("l2", "y", "vout").Build());
        Assert.Equal("1/10", analysis.Ratio.ToString());
        Assert.Equal("1/2", analysis.Capacitors["fly"].Voltage.ToString());
        Assert.Equal("1/2", analysis.Inductors["l1"].Current.ToString());
        Assert.Equal("1/2", analysis.Inductors["l2"].Current.ToString());
        Assert.Equal(VoltageBalance.Averages, analysis.Balance);
        Assert.Equal("0", analysis.ChargeSharing!.Coefficients["fly"].ToString());
    }

    [Fact]
    public void An_inductor_without_a_path_is_told_with_its_phase() => Findings.Is(
        Findings.Error(Converter.Create("broken").Input("vin").Output("vout").Phases(3)
            .Switch("high", "vin", "x", on: 1).Switch("low", "x", "gnd", on: 2).Inductor("coil", "x", "vout").Build()),
        DiagnosticCodes.InductorInterrupted,
        3,
        "In phase 3 the current of inductor 'coil' has no path: no chain of closed switches and capacitors leads from 'x' to 'vout' in it. Close a switch that carries the current on, or let the phase before end when the current is zero (until_zero); operating points also take the body diodes that are stated (diode_volts).",
        "coil");

    [Fact]
    public void An_inductor_is_told_once_with_all_phases_that_leave_it_without_a_path()
    {
        ConverterBuilder dead = Converter.Create("dead times").Input("vin").Output("vout").Phases(4);
        foreach (string own in (string[])["a", "b"])
        {
            dead.Switch($"high {own}", "vin", own, on: 1).Switch($"low {own}", own, "gnd", on: 3).Inductor($"coil {own}", own, "vout");
        }

        Converter converter = dead.Build();
        Diagnostic[] errors = [.. ModeAnalysis.Try(converter, converter.Modes[0]).Diagnostics];
        Assert.Equal(["coil a", "coil b"], errors.Select(e => Assert.Single(e.Elements)));
        Assert.All(errors, e => Assert.Equal((DiagnosticCodes.InductorInterrupted, 2), (e.Code, e.Phase)));
        Assert.All(errors, e => Assert.StartsWith("In phases 2, 4 the current of inductor", e.Message, StringComparison.Ordinal));
        Assert.StartsWith(
            "In phases 2, 4 the current of inductor 'coil b' has no path: no chain of closed switches and capacitors leads from 'b' to 'vout' in them. Close a switch",
            errors[1].Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_current_that_has_ended_needs_no_path()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(Converter.Create("ended").Input("vin").Output("vout").Duties(0.1, 0.3, 0.6)
            .Switch("high", "vin", "x", on: 1).Switch("low", "x", "gnd", on: 2).Inductor("coil", "x", "vout", untilZero: 2).Build());
        Assert.Equal("1/4", analysis.Ratio.ToString());
        Assert.Equal("1", analysis.Inductors["coil"].Current.ToString());
        Assert.Equal("[1/4, 3/4, 0]", analysis.Inductors["coil"].Charge.ToString());
        Assert.Equal("[3/4, -1/4, 0]", analysis.Inductors["coil"].Voltage.ToString());
        Findings.Is(Assert.Single(analysis.Diagnostics), DiagnosticCodes.DiscontinuousConduction, null, Ends("inductor 'coil'"), "coil");
    }

    [Fact]
    public void Several_currents_that_end_are_told_together()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(Converter.Create("both").Input("vin").Output("vout").Duties(0.1, 0.3, 0.15, 0.45)
            .Switch("u1", "vin", "x", on: 1).Switch("d1", "x", "gnd", on: 2).Inductor("a", "x", "vout", untilZero: 2)
            .Switch("u2", "vin", "y", on: 3).Switch("d2", "y", "gnd", on: 4).Inductor("b", "y", "vout", untilZero: 4).Build());
        Findings.Is(Assert.Single(analysis.Diagnostics), DiagnosticCodes.DiscontinuousConduction, null, Ends("inductors 'a', 'b'"), "a", "b");
    }

    private static string Ends(string inductors) =>
        $"The current of {inductors} ends phases, so that ratio and charges depend on the load. Averages are those of the boundary, where such a phase lasts exactly its duty; ask for an operating point for others.";
}
