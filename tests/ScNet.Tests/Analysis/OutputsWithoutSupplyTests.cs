using ScNet.Analysis;

namespace ScNet.Tests.Analysis;

/// <summary>Further outputs that can carry no current in the averages, each told and left out.</summary>
public sealed class OutputsWithoutSupplyTests
{
    /// <summary>No charge ends at m, so that one current would have to be the other; once the upper output is left out the lower one has no path.</summary>
    [Fact]
    public void Two_outputs_in_series_with_nothing_between_have_no_supply()
    {
        OutputMatrices outputs = ModeAnalysis.Of(Half().Switch("stub", "m", "z", on: 1).FurtherOutput("upper", "vin", "m").FurtherOutput("lower", "m").Build()).Outputs;

        Assert.Equal(3, outputs.Diagnostics.Count);
        Findings.Is(
            outputs.Diagnostics[0],
            DiagnosticCodes.CapacitorUnbalanced,
            null,
            "No charge reaches the further output 'upper' over a period. Its ratio and limits are left out; connect it to the input.",
            "upper");
        Assert.All([1, 2], phase => Findings.Is(
            outputs.Diagnostics[phase],
            DiagnosticCodes.LoadInterrupted,
            phase,
            $"In phase {phase} the current of the further output 'lower' has no path: no chain of closed switches and capacitors leads from 'm' to 'gnd'. Its ratio and limits are left out; put a capacitor across it.",
            "lower"));
        Assert.Equal(["vout: ratio 1/2", "upper: ratio ?", "lower: ratio ?"], outputs.Outputs.Select(o => o.ToString()));
    }

    [Fact]
    public void An_output_at_the_node_of_a_coil_that_rests_has_no_path_meanwhile()
    {
        OutputMatrices outputs = ModeAnalysis.Of(Converter.Create("ended").Input("vin").Output("vout").Duties(0.1, 0.3, 0.6)
            .Switch("high", "vin", "x", on: 1).Switch("low", "x", "gnd", on: 2).Inductor("coil", "x", "vout", untilZero: 2).FurtherOutput("node", "x").Build()).Outputs;

        Findings.Is(
            Assert.Single(outputs.Diagnostics),
            DiagnosticCodes.LoadInterrupted,
            3,
            "In phase 3 the current of the further output 'node' has no path: no chain of closed switches and capacitors leads from 'x' to 'gnd'. Its ratio and limits are left out; put a capacitor across it.",
            "node");
        Assert.Equal(["vout: ratio 1/4", "node: ratio ?"], outputs.Outputs.Select(o => o.ToString()));
    }

    /// <summary>
    /// In phase 2 the coils a and b meet the output "node" alone, in phase 4 a rests. What node takes then goes to the capacitor
    /// "dump", which nothing ever empties: it cannot be supplied, while the outputs of b can.
    /// </summary>
    [Fact]
    public void An_output_that_ties_coils_and_charges_a_capacitor_for_ever_is_left_out_alone()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(Converter.Create("tied").Input("vin").Output("vout").Duties(0.2, 0.1, 0.3, 0.4)
            .Switch("high", "vin", "x", on: [1, 2]).Switch("low", "x", "gnd", on: 3).Inductor("a", "x", "m", untilZero: 3)
            .Capacitor("mid", "s", "gnd").Switch("j", "m", "s", on: [1, 3, 4]).Switch("t", "vin", "s", on: 4).Inductor("b", "m", "vout")
            .Capacitor("held", "q1", "gnd").Switch("k", "q", "q1", on: [1, 2, 3]).Switch("q2", "vin", "q1", on: 1)
            .Capacitor("dump", "r", "gnd").Switch("q3", "q", "r", on: 4)
            .FurtherOutput("node", "m", "q").FurtherOutput("twin", "vout").Build());
        OutputMatrices outputs = analysis.Outputs;

        Findings.Is(
            Assert.Single(outputs.Diagnostics),
            DiagnosticCodes.LoadInterrupted,
            null,
            "The current of the further output 'node' has no path: no chain of closed switches and capacitors leads from 'm' to 'q'. Its ratio and limits are left out; put a capacitor across it.",
            "node");
        Assert.Equal([true, false, true], outputs.Outputs.Select(o => o.IsSupplied));
        Assert.Equal([analysis.Ratio, Quantity.Undetermined, analysis.Ratio], outputs.Outputs.Select(o => o.Ratio));
    }

    private static ConverterBuilder Half() => Converter.Create("half").Input("vin").Output("vout")
        .Capacitor("fly", "p", "n")
        .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2);
}
