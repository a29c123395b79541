using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>Which way a current flows as the phase begins that it ends.</summary>
public sealed class EventDirectionTests
{
    /// <summary>
    /// All voltages and currents of a stage are in proportion: what flows backward into the phase that it ends does so at a millionth of
    /// them too, where an ampere is no measure.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(1e-6)]
    public void A_current_that_would_flow_backward_into_its_phase_is_refused_at_any_size(double size)
    {
        const double RingSeconds = 2.80993e-7, OnSeconds = 0.2754 * RingSeconds, Seconds = OnSeconds + (0.8668 * RingSeconds);
        Fractions.Fraction duty = Fractions.Fraction.FromDoubleRounded(OnSeconds / Seconds);
        Converter stage = Converter.Create("step-down").Input("vin").Output("vout", LoadKind.Current).Duties(duty, 1 - duty)
            .Inductor("coil", "x", "vout", 1e-6, 0.01, untilZero: 2).Capacitor("out", "vout", Converter.ReferenceNode, 2e-9, esrOhms: 0.1123)
            .Switch("high", "vin", "x", on: 1, 0.01).Switch("low", "x", Converter.ReferenceNode, on: 2, 0.02).Build();
        ScNetException exception = Assert.Throws<ScNetException>(() => ConductionModel.Of(stage).At(new(10 * size, 0.005661 * size, 1 / Seconds)));
        Diagnostic diagnostic = Assert.Single(exception.Diagnostics);
        Assert.StartsWith("No length of phase 2 brings", diagnostic.Message, StringComparison.Ordinal);
        Assert.Equal(2, diagnostic.Phase);
    }
}
