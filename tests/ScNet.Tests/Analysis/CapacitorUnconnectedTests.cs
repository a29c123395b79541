using ScNet.Analysis;

namespace ScNet.Tests.Analysis;

public class CapacitorUnconnectedTests
{
    [Fact]
    public void A_capacitor_in_no_loop_is_a_warning_and_its_voltage_undetermined()
    {
        Converter converter = Converter.Create("spare").Input("vin").Output("vout")
            .Capacitor("spare", "a", "vin").Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2).Switch("s5", "a", "b", on: 1)
            .Build();
        Findings.Is(
            Assert.Single(Findings.Warnings(converter)),
            DiagnosticCodes.CapacitorUnconnected,
            null,
            "Capacitor 'spare' is in no loop in any phase: it carries no charge and nothing fixes its voltage. Leave it out, or close switches on both its plates in some phase.",
            "spare");
        ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
        Assert.Equal(Quantity.Undetermined, analysis.IdealPoint.CapacitorVoltages[0]);
        Assert.Equal(Quantity.Zero, analysis.SlowSwitchingLimit.Coefficients[0]);
        Assert.Equal([Quantity.Zero, Quantity.Zero], analysis.ChargeFlow.Capacitors[0]);
        Assert.Equal(Quantity.Exact(1, 2), analysis.Ratio);
    }
}
