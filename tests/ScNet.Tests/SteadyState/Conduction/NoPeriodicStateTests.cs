using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>Loads that no periodic state supplies.</summary>
public sealed class NoPeriodicStateTests
{
    [Fact]
    public void Behind_a_capacitor_alone_a_stiff_output_gets_no_current()
    {
        Converter blocked = Converter.Create("blocked").Input("vin").Output("vout")
            .Capacitor("series", "a", "vout", 1e-6).Switch("s", "vin", "a", on: [1, 2]).Build();
        Diagnostic diagnostic = Refusal(blocked, 0.2);
        Assert.Equal("The operating point has no periodic state.", diagnostic.Message);
        Assert.Null(diagnostic.Phase);
    }

    /// <summary>Without load the coil would have to carry nothing: no length of phase 2 does it, whether the diode of phase 3 conducts or not.</summary>
    [Fact]
    public void A_phase_that_a_current_ends_needs_a_load_with_and_without_the_diode_of_a_dead_time() => Refusal(
        Converter.Create("dead time").Input("vin").Output("vout").Duties(0.3, 0.6, 0.1)
            .Inductor("coil", "x", "vout", Stages.Henries, 1e-6, untilZero: 2)
            .Switch("high", "vin", "x", on: 1, ohms: 1e-6).Switch("low", "x", Converter.ReferenceNode, on: 2, ohms: 1e-6)
            .Switch("diode", "x", Converter.ReferenceNode, diodeVolts: 0.7).Build(),
        0);

    private static Diagnostic Refusal(Converter converter, double load)
    {
        ScNetException exception = Assert.Throws<ScNetException>(() => ConductionModel.Of(converter).At(new(10, load, 1e6)));
        Diagnostic diagnostic = Assert.Single(exception.Diagnostics);
        Assert.Equal(DiagnosticCodes.NoPeriodicState, diagnostic.Code);
        return diagnostic;
    }
}
