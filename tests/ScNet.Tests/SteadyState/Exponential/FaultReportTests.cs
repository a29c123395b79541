using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>What is said of networks without a periodic state.</summary>
public sealed class FaultReportTests
{
    private static readonly Converter s_converter = Converter.Create("stage").Input("vin").Output("vout").Duties(0.25, 0.75)
        .Inductor("near", "x", "vout").Inductor("far", "x", "vout").Switch("high", "vin", "x", on: 1).Switch("low", "x", "gnd", on: 2)
        .FurtherOutput("first", "x").FurtherOutput("second", "x").Build();

    [Fact]
    public void Without_a_fault_nothing_is_thrown() =>
        Assert.Null(Record.Exception(() => FaultReport.Require(s_converter, s_converter.Modes[0], NetworkFault.None, 1)));

    [Theory]
    [InlineData(NetworkFault.InductorWithoutPath, 0, "The current of an inductor has no path in phase 1. Close a switch that gives it one, or state the capacitance that takes it.")]
    [InlineData(NetworkFault.LoadWithoutPath, 1, "The load's current has no path in phase 2. Put a capacitor across the output.")]
    [InlineData(NetworkFault.LoadWithoutPath, -1, "The load's current has no path. Put a capacitor across the output.")]
    [InlineData(NetworkFault.LoadWithoutSupply, -1, "No steady current can reach the load: over a period it would charge a capacitor in one direction only.")]
    [InlineData(NetworkFault.InductorAcrossSources, -1, "An inductor without winding resistance lies across sources in every phase, so its current grows without end. State its resistance in ohms.")]
    [InlineData(NetworkFault.NoOutputCurrent, -1, "No average current passes between the stiff output and the network, so the output voltage is not determined.")]
    [InlineData(NetworkFault.Resonance, -1, "A disturbance returns unchanged after every period, as in a resonance without resistance that is in step with the switching. State the resistances of the inductors, or choose another frequency.")]
    public void A_fault_is_an_error_with_its_phase(object fault, int phase, string message)
    {
        ScNetException thrown = Assert.Throws<ScNetException>(() => FaultReport.Require(s_converter, s_converter.Modes[0], (NetworkFault)fault, phase));
        Diagnostic found = Assert.Single(thrown.Diagnostics);
        Assert.StartsWith($"Mode '{s_converter.Modes[0].Name}' of 'stage' has no periodic state:", thrown.Message, StringComparison.Ordinal);
        Assert.Equal((DiagnosticSeverity.Error, DiagnosticCodes.NoPeriodicState, message), (found.Severity, found.Code, found.Message));
        Assert.Equal(phase < 0 ? null : phase + 1, found.Phase);
        bool isOfInductors = (NetworkFault)fault is NetworkFault.InductorWithoutPath or NetworkFault.InductorAcrossSources;
        Assert.Equal(isOfInductors ? ["near", "far"] : [], found.Elements);
    }

    [Theory]
    [InlineData(NetworkFault.LoadWithoutPath, 0, "its current has no path in phase 1", DiagnosticCodes.LoadInterrupted)]
    [InlineData(NetworkFault.LoadWithoutPath, 1, "its current has no path in phase 2", DiagnosticCodes.LoadInterrupted)]
    [InlineData(NetworkFault.None, -1, "its current has no path", DiagnosticCodes.LoadInterrupted)]
    [InlineData(NetworkFault.LoadWithoutSupply, -1, "no steady current can reach it: over a period it would charge a capacitor in one direction only", DiagnosticCodes.CapacitorUnbalanced)]
    public void A_further_output_that_is_left_out_is_a_warning(object fault, int phase, string reason, string code)
    {
        Diagnostic found = FaultReport.OfOutput(s_converter, 1, (NetworkFault)fault, phase);
        Assert.Equal((DiagnosticSeverity.Warning, code, phase < 0 ? null : phase + 1), (found.Severity, found.Code, found.Phase));
        Assert.Equal($"The further output 'second' is left out of the periodic solution: {reason}. Put a capacitor across it that the network charges.", found.Message);
        Assert.Equal(["second"], found.Elements);
    }
}
