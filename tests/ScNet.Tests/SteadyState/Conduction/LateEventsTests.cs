using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>A current that passes zero only as long as another is not ended in time.</summary>
public sealed class LateEventsTests
{
    private const double Frequency = 1e6;

    /// <summary>
    /// The first coil charges the output, the second takes from it and gives back in phase 4. With 1 µH and 1 µs, and with V of
    /// output, the first ends phase 2 at 0.2 (10 - V) - 0.3 V, below zero from 4 V on, and the second phase 4 at 0.3 (10 - V) - 0.2 V,
    /// above zero up to 6 V. Taken whole, both bring 0.2 A at some 4.2 V, and both pass zero; but with the second ended in time the
    /// voltage of that load is some 3.6 V, where the first still flows as phase 2 ends, and nothing takes its current.
    /// </summary>
    [Fact]
    public void A_current_that_another_event_keeps_from_zero_lasts_its_whole_phase()
    {
        Converter stage = Converter.Create("to and fro").Input("vin").Output("vout").Duties(0.2, 0.3, 0.2, 0.3)
            .Inductor("first", "x", "vout", Stages.Henries, 1e-6, untilZero: 2).Inductor("second", "y", "vout", Stages.Henries, 1e-6, untilZero: 4)
            .Switch("high1", "vin", "x", on: 1, ohms: 1e-6).Switch("low1", "x", Converter.ReferenceNode, on: 2, ohms: 1e-6)
            .Switch("low2", "y", Converter.ReferenceNode, on: 3, ohms: 1e-6).Switch("high2", "vin", "y", on: 4, ohms: 1e-6).Build();
        ScNetException exception = Assert.Throws<ScNetException>(() => ConductionModel.Of(stage).At(new(10, 0.2, Frequency)));
        Diagnostic diagnostic = Assert.Single(exception.Diagnostics);
        Assert.StartsWith("Phase 3 leaves an inductor with a current no path", diagnostic.Message, StringComparison.Ordinal);
        Assert.Equal(3, diagnostic.Phase);
    }
}
