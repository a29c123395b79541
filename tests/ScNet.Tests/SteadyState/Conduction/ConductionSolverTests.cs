using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>Which diodes are tried and taken, and what is said where none can be.</summary>
public sealed class ConductionSolverTests
{
    private const double Input = 10;
    private const double Frequency = 1e6;
    private const double Drop = 0.7;

    [Fact]
    public void Of_diodes_that_share_one_the_pair_from_the_higher_rail_is_taken()
    {
        // one diode from x up to a, and from there one from ground and one from the output: in the dead time the coil drives itself
        Converter stage = Row("two rails", "a").Switch("d2", "a", Converter.ReferenceNode, diodeVolts: Drop).Switch("d3", "a", "vout", diodeVolts: Drop).Build();
        ConductionPoint point = ConductionModel.Of(stage).At(new(Input, 5, Frequency));
        Assert.Equal(["d1", "d3"], point.Diodes.Select(d => d.Switch.Name));

        // volt-seconds of the coil: 0.3 (V_in - V) = 0.6 V + 0.1 · 2 V_F
        Assert.Equal(((0.3 * Input) - (0.1 * 2 * Drop)) / 0.9, point.AverageOutputVoltageVolts, 1e-4);
    }

    [Fact]
    public void Three_diodes_in_a_row_are_tried()
    {
        Converter stage = Row("three", "a").Switch("d2", "a", "b", diodeVolts: Drop).Switch("d3", "b", Converter.ReferenceNode, diodeVolts: Drop).Build();
        ConductionPoint point = ConductionModel.Of(stage).At(new(Input, 5, Frequency));
        Assert.Equal((0.3 * Input) - (0.1 * 3 * Drop), point.AverageOutputVoltageVolts, 1e-4);
    }

    [Fact]
    public void Four_diodes_in_a_row_are_not()
    {
        Converter stage = Row("four", "a").Switch("d2", "a", "b", diodeVolts: Drop).Switch("d3", "b", "c", diodeVolts: Drop)
            .Switch("d4", "c", Converter.ReferenceNode, diodeVolts: Drop).Build();
        Assert.StartsWith("Phase 3 leaves an inductor with a current no path", Refusal(stage, 5, 3).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_diode_that_the_current_flows_against_is_no_choice() => Assert.StartsWith(
        "In phase 3 no choice of conducting body diodes agrees", Refusal(Row("against", Converter.ReferenceNode).Build(), -5, 3).Message, StringComparison.Ordinal);

    // from input to output, as nothing but the diode keeps them apart: more than 0.7 V in every phase
    [Fact]
    public void A_diode_that_no_coil_waits_for_does_not_conduct() => Assert.StartsWith(
        "Phase 1 leaves an inductor with a current no path, or drives an open switch's body diode beyond its forward voltage",
        Refusal(Row("bypass", Converter.ReferenceNode).Switch("bypass", "vout", "vin", diodeVolts: Drop).Build(), 5, 1).Message,
        StringComparison.Ordinal);

    [Fact]
    public void A_diode_whose_one_end_floats_has_no_voltage()
    {
        // in phases 2 and 3 nothing fixes the node behind the input's diode
        Converter plain = Row("plain", Converter.ReferenceNode).Build();
        Converter floating = Row("floating", Converter.ReferenceNode)
            .Switch("behind", "float", "vin", diodeVolts: Drop).Switch("follow", "float", "vin", on: 1).Switch("beside", "vin", "other", diodeVolts: Drop).Build();
        Assert.Equal(
            ConductionModel.Of(plain).At(new(Input, 5, Frequency)).AverageOutputVoltageVolts,
            ConductionModel.Of(floating).At(new(Input, 5, Frequency)).AverageOutputVoltageVolts,
            1e-9);
    }

    [Fact]
    public void A_network_of_resistances_alone_has_its_operating_point()
    {
        Converter divider = Converter.Create("divider").Input("vin").Output("vout", LoadKind.Current)
            .Switch("top", "vin", "vout", on: [1, 2], ohms: 2).Switch("low", "vout", Converter.ReferenceNode, on: [1, 2], ohms: 3).Build();
        ConductionPoint point = ConductionModel.Of(divider).At(new(Input, 0.5, Frequency));
        Assert.False(point.IsDiscontinuous);
        Assert.Equal((3 * Input / 5) - (0.5 * 1.2), point.AverageOutputVoltageVolts, 1e-12);
    }

    /// <summary>A step-down stage with a dead time as its third phase, and its lower switch's diode to a node.</summary>
    private static ConverterBuilder Row(string name, string anode) => Converter.Create(name).Input("vin").Output("vout").Duties(0.3, 0.6, 0.1)
        .Inductor("coil", "x", "vout", Stages.Henries, 1e-6)
        .Switch("high", "vin", "x", on: 1, ohms: 1e-6).Switch("low", "x", Converter.ReferenceNode, on: 2, ohms: 1e-6).Switch("d1", "x", anode, diodeVolts: Drop);

    private static Diagnostic Refusal(Converter converter, double load, int phase)
    {
        ScNetException exception = Assert.Throws<ScNetException>(() => ConductionModel.Of(converter).At(new(Input, load, Frequency)));
        Diagnostic diagnostic = Assert.Single(exception.Diagnostics);
        Assert.Equal((DiagnosticCodes.NoPeriodicState, phase), (diagnostic.Code, diagnostic.Phase));
        return diagnostic;
    }
}
