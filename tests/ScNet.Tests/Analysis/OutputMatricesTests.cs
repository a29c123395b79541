using Fractions;
using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.Analysis;

/// <summary>Several outputs in the averages: ratios, charges and limits as matrices.</summary>
public sealed class OutputMatricesTests
{
    /// <summary>
    /// A ladder of three rungs as load currents see it, by hand: with one unit from the middle node fly brings 2/3 in phase 1 and
    /// takes it away in phase 2, fly2 passes on 1/3, and so on; each entry is ½ Σ a_i a_k / C over phases and capacitors.
    /// </summary>
    [Fact]
    public void A_ladder_has_the_matrices_that_its_charges_give_by_hand()
    {
        OutputMatrices outputs = ModeAnalysis.Of(Ladder()).Outputs;

        Assert.Equal(["vout: ratio 1/3", "mid: ratio 2/3", "rung: ratio 1/3"], outputs.Outputs.Select(o => o.ToString()));
        Assert.Equal("{[1/6, -1/6], [-1/6, 1/6], [2/3, -2/3], [1/3, -1/3]}", outputs.Outputs["mid"].ChargeFlow!.Capacitors.ToString());
        Assert.Equal("[0, 0]", outputs.Outputs["mid"].ChargeFlow!.Output.ToString());
        double c1 = 1e-6, c2 = 2e-6, fly = 1e-6, fly2 = 1e-6;
        AssertClose((1 / (36 * c1)) + (1 / (9 * c2)) + (1 / (9 * fly)) + (4 / (9 * fly2)), outputs.SlowSwitchingLimit["vout", "vout"]);
        AssertClose((1 / (36 * c1)) + (1 / (36 * c2)) + (4 / (9 * fly)) + (1 / (9 * fly2)), outputs.SlowSwitchingLimit["mid", "mid"]);
        AssertClose((-1 / (36 * c1)) + (1 / (18 * c2)) + (2 / (9 * fly)) + (2 / (9 * fly2)), outputs.SlowSwitchingLimit["vout", "mid"]);
        AssertClose((-1 / (36 * c1)) + (1 / (18 * c2)) + (2 / (9 * fly)) + (2 / (9 * fly2)), outputs.SlowSwitchingLimit["mid", "vout"]);

        // four switches of 2 ohms carry what the upper flying capacitor does, four what the lower does, each half the time
        AssertClose(2 * 4 * 2 * ((1 / 9.0) + (4 / 9.0)), outputs.FastSwitchingLimit[0, 0]);
        AssertClose(2 * 4 * 2 * ((2 / 9.0) + (2 / 9.0)), outputs.FastSwitchingLimit[0, 1]);
    }

    [Fact]
    public void What_is_asked_of_one_output_is_what_the_mode_says()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(OutputNetworks.With(Ladder()));
        OutputMatrices outputs = analysis.Outputs;

        Assert.Single(outputs.Outputs);
        Assert.Equal(analysis.SlowSwitchingLimit.OhmsAtOneHertz, outputs.SlowSwitchingLimit[0, 0]);
        Assert.Equal(analysis.ChargeSharing!.OhmsAtOneHertz, outputs.ChargeSharing[0, 0]);
        Assert.Equal(analysis.FastSwitchingLimit.Ohms, outputs.FastSwitchingLimit[0, 0]);
        Assert.Same(analysis.ChargeFlow, outputs.Outputs[0].ChargeFlow);
        MultiPortPoint point = SteadyStateModel.Of(analysis).MultiPort.At(1e5);
        Assert.Equal(SteadyStateModel.Of(analysis).TwoPort.At(1e5).Ohms, point.Ohms[0, 0]);
    }

    // what the input gives straight to an output drives no switch, also where two of them lie side by side
    [Fact]
    public void An_output_at_the_input_moves_nothing_exactly()
    {
        OutputMatrices outputs = ModeAnalysis.Of(OutputNetworks.With(
            Converter.Create("half").Input("vin").Output("vout").Capacitor("fly", "p", "n")
                .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2).Switch("beside", "n", "gnd", on: 2).Build(),
            ("direct", "vin", "gnd"))).Outputs;

        ChargeFlow flow = outputs.Outputs["direct"].ChargeFlow!;
        Assert.Equal(FlowDetermination.Topology, flow.DeterminedBy);
        Assert.All(flow.Switches.SelectMany(s => s).Concat(flow.Capacitors.SelectMany(c => c)), q => Assert.Equal(Quantity.Zero, q));
        Assert.Equal(0, outputs.FastSwitchingLimit["direct", "direct"]);
    }

    // the coil takes its current from the capacitor in phase 2, but the closed switch beside it leaves the output nothing that charge has to be shared for
    [Fact]
    public void An_output_that_switches_tie_to_the_input_has_no_slow_limit_beside_a_coil()
    {
        OutputMatrices outputs = ModeAnalysis.Of(OutputNetworks.With(
            Converter.Create("tied").Input("vin").Output("vout").Capacitor("fly", "p", "n").Capacitor("c", "q", "gnd").Inductor("coil", "x", "a")
                .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)
                .Switch("t1", "vin", "q", on: 1).Switch("t2", "vin", "x", on: 1).Switch("t3", "q", "x", on: 2).Switch("tie", "vin", "a", on: [1, 2]).Build(),
            ("aux", "a", "gnd"))).Outputs;

        Assert.Equal(1, outputs.Outputs["aux"].Ratio.ToDouble());
        Assert.NotEqual(0, outputs.Outputs["aux"].ChargeFlow!.Inductors["coil"][1].ToDouble());
        Assert.Equal((0, 0), (outputs.SlowSwitchingLimit["aux", "aux"], outputs.ChargeSharing["aux", "aux"]));
    }

    [Fact]
    public void An_output_without_path_is_told_and_left_out()
    {
        Converter converter = OutputNetworks.With(Half(), ("rail", "p", "gnd"), ("good", "vout", "gnd"));
        OutputMatrices outputs = ModeAnalysis.Of(converter).Outputs;

        Diagnostic warning = Assert.Single(outputs.Diagnostics);
        Assert.Equal((DiagnosticSeverity.Warning, DiagnosticCodes.LoadInterrupted, (int?)3), (warning.Severity, warning.Code, warning.Phase));
        Assert.StartsWith("In phase 3 the current of the further output 'rail' has no path: no chain of closed switches and capacitors leads from 'p' to 'gnd'.", warning.Message, StringComparison.Ordinal);
        Assert.Equal((false, false, null), (outputs.Outputs["rail"].IsSupplied, outputs.Outputs["rail"].Ratio.IsDetermined, outputs.Outputs["rail"].ChargeFlow));
        Assert.Null(outputs.SlowSwitchingLimit["rail", "rail"]);
        Assert.Null(outputs.FastSwitchingLimit["rail", "good"]);
        Assert.Null(outputs.ChargeSharing["vout", "rail"]);
        Assert.Equal("1/2", outputs.Outputs["good"].Ratio.ToString());
        Assert.Equal(outputs.FastSwitchingLimit[0, 0], outputs.FastSwitchingLimit["good", "vout"]);

        MultiPort exact = SteadyStateModel.Of(ModeAnalysis.Of(converter)).MultiPort;
        Assert.Equal((DiagnosticCodes.LoadInterrupted, (int?)3), (Assert.Single(exact.Diagnostics).Code, exact.Diagnostics[0].Phase));
        MultiPortPoint point = exact.At(1e6);
        Assert.Null(point.Ratios["rail"]);
        Assert.Null(point.Ohms["good", "rail"]);
        Assert.Throws<ArgumentException>(() => point.Operate(1, 0, 1, 0));
        Assert.Throws<ArgumentException>(() => point.Operate(1, 0, 0));
        Assert.Null(point.Operate(1, 1, 0, 0).OutputVolts["rail"]);
    }

    [Fact]
    public void An_output_that_would_charge_a_capacitor_for_ever_is_told_and_left_out()
    {
        Converter converter = Converter.Create("Half").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n").Capacitor("alone", "x", "gnd")
            .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2)
            .FurtherOutput("rail", "x").Build();
        OutputMatrices outputs = ModeAnalysis.Of(converter).Outputs;

        Diagnostic warning = Assert.Single(outputs.Diagnostics);
        Assert.Equal(DiagnosticCodes.CapacitorUnbalanced, warning.Code);
        Assert.StartsWith("No flow delivers charge to the further output 'rail' and leaves capacitor 'alone' as they were", warning.Message, StringComparison.Ordinal);
        Assert.False(outputs.Outputs["rail"].IsSupplied);
        Assert.Equal(DiagnosticCodes.CapacitorUnbalanced, Assert.Single(SteadyStateModel.Of(ModeAnalysis.Of(converter)).MultiPort.Diagnostics).Code);
    }

    /// <summary>All that flows here cancels exactly, so that what the elimination leaves of it is rounding only.</summary>
    [Fact]
    public void Rounding_of_currents_that_cancel_is_no_drift()
    {
        Converter converter = Converter.Create("tied").Input("vin").Output("vout").Duties(new Fraction(3, 11), new Fraction(3, 11), new Fraction(1, 11), new Fraction(4, 11))
            .Capacitor("c0", "p0", "b0", 4.5).Capacitor("c1", "p1", "b1", 1.5)
            .Switch("s0", "vout", "vin", [1, 2, 3, 4], 1.5).Switch("s1", "b1", "vin", 4, 2.5).Switch("s2", "p1", "vin", 1, 6.5)
            .Switch("s3", "vout", "b1", 4, 5.5).Switch("s4", "p1", "vout", 1, 5.5).Switch("s5", "b0", "b1", 1, 3.5).Switch("s6", "b0", "p1", 3, 5.5)
            .Build();

        Assert.Equal(NetworkFault.None, ExponentialTwoPort.Of(converter, converter.Modes[0]).Solver.Fault);
    }

    [Fact]
    public void Averages_at_given_loads_follow_from_the_matrices()
    {
        MultiPortPoint point = SteadyStateModel.Of(ModeAnalysis.Of(Ladder())).MultiPort.At(1e6);
        MultiPortOperation at = point.Operate(3, 0.02, 0.01, 0);

        AssertClose(1 - (0.02 * point.Ohms[0, 0]!.Value) - (0.01 * point.Ohms["vout", "mid"]!.Value), at.OutputVolts[0]);
        AssertClose(2 - (0.02 * point.Ohms[1, 0]!.Value) - (0.01 * point.Ohms[1, 1]!.Value), at.OutputVolts["mid"]);
        AssertClose((0.02 / 3) + (0.02 / 3), at.InputAmperes);
        AssertClose(3 * at.InputAmperes, at.InputWatts);
        AssertClose((0.02 * at.OutputVolts[0]!.Value) + (0.01 * at.OutputVolts[1]!.Value), at.OutputWatts);
        AssertClose(at.InputWatts - at.OutputWatts, at.DissipationWatts);
        AssertClose(at.OutputWatts / at.InputWatts, at.Efficiency);
        Assert.Null(point.Operate(3, 0, 0, 0).Efficiency);
    }

    [Fact]
    public void A_matrix_is_read_by_name_and_position()
    {
        OutputMatrix<double?> limit = ModeAnalysis.Of(Ladder()).Outputs.FastSwitchingLimit;

        Assert.Equal(3, limit.Count);
        Assert.Equal(limit[2, 1], limit["rung", "mid"]);
        Assert.Throws<ArgumentOutOfRangeException>(() => limit[3, 0]);
        Assert.Throws<ArgumentOutOfRangeException>(() => limit[0, -1]);
        Assert.Contains("Did you mean 'rung'?", Assert.Throws<ArgumentException>(() => limit["rang", "mid"]).Message, StringComparison.Ordinal);
    }

    private static void AssertClose(double expected, double? actual) => Assert.Equal(expected, actual!.Value, 1e-12 * Math.Abs(expected));

    private static Converter Half() => Converter.Create("Half").Input("vin").Output("vout").Phases(3)
        .Capacitor("fly", "p", "n", 1e-9)
        .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2)
        .Build();

    private static Converter Ladder() => Converter.Create("Ladder").Input("vin").Output("vout", LoadKind.Current)
        .Capacitor("c1", "vout", "gnd", 1e-6).Capacitor("c2", "mid", "vout", 2e-6)
        .Capacitor("fly", "p", "n", 1e-6).Capacitor("fly2", "q", "r", 1e-6)
        .Switch("s1", "vin", "p", 1, 2).Switch("s2", "n", "mid", 1, 2).Switch("s3", "p", "mid", 2, 2).Switch("s4", "n", "vout", 2, 2)
        .Switch("s5", "q", "mid", 1, 2).Switch("s6", "r", "vout", 1, 2).Switch("s7", "q", "vout", 2, 2).Switch("s8", "r", "gnd", 2, 2)
        .FurtherOutput("mid", "mid").FurtherOutput("rung", "mid", "vout")
        .Build();
}
