using ScNet.Analysis;

namespace ScNet.Tests.Analysis;

public class FloatingTerminalTests
{
    [Fact]
    public void A_node_that_one_terminal_touches_is_a_warning_of_the_netlist_and_harms_no_result()
    {
        Converter converter = Converter.Create("loose").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2).Switch("s5", "p", "typo", on: 1)
            .Build();
        Findings.Is(
            Assert.Single(converter.Warnings),
            DiagnosticCodes.FloatingTerminal,
            null,
            "Only 's5' touches node 'typo', so no charge can flow there. Connect the node, or correct its name.",
            "s5");
        ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
        Assert.Equal(Quantity.Exact(1, 2), analysis.Ratio);
        PhaseValues typo = analysis.IdealPoint.NodePotentials["typo"];
        Assert.Equal([Quantity.Exact(1), Quantity.Undetermined], typo);
        Assert.Equal(Quantity.Undetermined, analysis.BlockingVoltages.Peaks["s5"]);
    }
}
