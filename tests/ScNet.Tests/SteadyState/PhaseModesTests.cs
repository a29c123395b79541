using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// The phases of a divider by two with 4 F and switches of 1, 4, 2 and 3 Ω, five in a loop, derived by hand; signs of rows are
/// free, so that products of two entries of a row are compared.
/// </summary>
public sealed class PhaseModesTests
{
    private const double Tolerance = 1e-14;

    // i = (V_in - V_out - v)/5 Ω, and v = x/√C: in the mode's row x has -1/(2√5), the sources ±1/√5, half a coulomb √5/2
    [Fact]
    public void A_loop_of_one_capacitor_has_one_mode_beside_the_row_of_its_nodes()
    {
        (PhaseModes[] phases, ResistorFlows flows) = Of(Half(LoadKind.Stiff).Build());
        PhaseModes modes = phases[0];
        Assert.Equal((1, 1, 1, 0, 2), (modes.FirstMode, modes.Groups, modes.States, modes.Directions, modes.ModeCount));
        Assert.Equal((2, 4, 5, 5, 7), (modes.SourceColumn, modes.ParticularColumn, modes.DirectionColumn, modes.ResistorColumn, modes.Rows.ColumnCount));
        Assert.Equal([0, 0.05], modes.Rates, (a, b) => Math.Abs(a - b) < Tolerance);
        Assert.Equal([0.0, 0.0], modes.Ramps);
        double coupling = modes.Coupling(1)[0];
        Assert.Equal(-0.25, coupling * modes.Particular(1), Tolerance);
        Assert.Equal((-0.1, 0.1), (Math.Round(coupling * modes.Rows[1, modes.SourceColumn], 14), Math.Round(coupling * modes.Rows[1, modes.SourceColumn + 1], 14)));
        Assert.Equal((-0.1, -0.2), (Math.Round(coupling * modes.Rows[1, modes.ResistorColumn], 14), Math.Round(coupling * modes.Rows[1, modes.ResistorColumn + 1], 14)));
        Assert.Equal(0, modes.Particular(0), Tolerance);
        PhaseModesChecks.AssertIsRotation(phases, flows, Half(LoadKind.Stiff).Build());
    }

    // one ampere charges 4 F by 1/4 V a second in phase 1, and discharges it in phase 2: √C dv/dt = ±1/2
    [Fact]
    public void Without_an_output_capacitor_the_load_current_flows_through_the_flying_one()
    {
        (PhaseModes[] phases, _) = Of(Half(LoadKind.Current).Build());
        Assert.Equal((2, 2), (phases[0].FirstMode, phases[0].ModeCount));
        Assert.Equal(0.5, Assert.Single(phases[0].Load), Tolerance);
        Assert.Equal(-0.5, Assert.Single(phases[1].Load), Tolerance);
    }

    // At fixed voltages an ampere drawn from the output divides between the loop of 5 Ω and the series resistance of 1.25 Ω
    // as 1 to 4, and the capacitor on the reference is the first state: it charges 4 F by 0.2/4 V a second, times √C, and discharges 1 F by 0.8 V a second.
    [Fact]
    public void A_load_current_divides_between_loop_and_series_resistance_as_their_conductances()
    {
        (PhaseModes[] phases, ResistorFlows flows) = Of(Half(LoadKind.Current).Capacitor("out", "vout", "gnd", 1, esrOhms: 1.25).Build());
        Assert.Equal([-0.8, 0.1], phases[0].Load, (a, b) => Math.Abs(a - b) < Tolerance);
        Assert.Equal([-0.8, -0.1], phases[1].Load, (a, b) => Math.Abs(a - b) < Tolerance);

        // (1/C + 1/C_out)/(5 + 1.25) Ω, and B J of the row: -(0.5 · 0.1 - 0.8)/√6.25 Ω
        PhaseModes modes = phases[0];
        int row = Assert.Single(Enumerable.Range(0, modes.ModeCount), k => modes.Rates[k] > 0);
        Assert.Equal(1.25 / 6.25, modes.Rates[row], Tolerance);
        Assert.Equal(0.75 / 2.5, Math.Abs(modes.Ramps[row]), Tolerance);
        Assert.Equal(-0.5 / 2.5 * 0.3, modes.Ramps[row] * modes.Coupling(row)[1], Tolerance);
        PhaseModesChecks.AssertIsRotation(phases, flows, Half(LoadKind.Current).Capacitor("out", "vout", "gnd", 1, esrOhms: 1.25).Build());
    }

    [Fact]
    public void A_load_current_without_series_resistance_discharges_the_output_capacitor_alone()
    {
        (PhaseModes[] phases, _) = Of(Half(LoadKind.Current).Capacitor("out", "vout", "gnd", 0.25).Build());
        Assert.All(phases, modes => Assert.Equal([-2.0, 0.0], modes.Load, (a, b) => Math.Abs(a - b) < Tolerance));
    }

    [Fact]
    public void A_switch_lies_between_its_nodes_and_a_series_resistance_between_the_positive_and_the_inner_node()
    {
        Converter converter = Half(LoadKind.Stiff).Capacitor("out", "vout", "gnd", 1, esrOhms: 1).Build();
        StateSpace space = StateSpace.Of(converter);
        (int First, int Second) At(string first, string second) => (converter.Nodes.PositionOf(first), converter.Nodes.PositionOf(second));
        Assert.Equal(At("vin", "p"), PhaseModes.Ends(space, converter.Network, 0));
        Assert.Equal(At("n", "gnd"), PhaseModes.Ends(space, converter.Network, 3));
        Assert.Equal(At("p", "p"), PhaseModes.Ends(space, converter.Network, 4));
        Assert.Equal((converter.Nodes.PositionOf("vout"), converter.Nodes.Count), PhaseModes.Ends(space, converter.Network, 5));
    }

    private static ConverterBuilder Half(LoadKind load) => Converter.Create("half").Input("vin").Output("vout", load)
        .Capacitor("fly", "p", "n", 4)
        .Switch("s1", "vin", "p", on: 1, ohms: 1).Switch("s2", "n", "vout", on: 1, ohms: 4)
        .Switch("s3", "p", "vout", on: 2, ohms: 2).Switch("s4", "n", Converter.ReferenceNode, on: 2, ohms: 3);

    private static (PhaseModes[] Phases, ResistorFlows Flows) Of(Converter converter)
    {
        PreparedPart part = PreparedMode.Of(converter, ModeAnalysis.Of(converter, converter.Modes[0]).Topology).Parts[0];
        return (part.Phases, part.Flows);
    }
}
