using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// Capacitors that the same sources hold in several phases. They carry no charge between equilibria, but
/// what other elements drive through their switches within a phase goes through them too.
/// </summary>
public sealed class HeldCapacitorTests
{
    /// <summary>
    /// A capacitor shorted in both phases through 450 Ω. No switch of its loop carries charge over a period;
    /// an idle capacitor drives a current through them all the same. The figures are those of the node
    /// equations, solved with matrix exponentials in numbers of 900 bits.
    /// </summary>
    [Theory]
    [InlineData(1e5, 41439.83831224579)]
    [InlineData(1e6, 3935.5091341077852)]
    [InlineData(1e7, 292.929871437448)]
    [InlineData(1e8, 27.681215945459331)]
    public void Transients_of_an_idle_capacitor_go_through_a_held_one(double frequencyHz, double expectedOhms)
    {
        ModeAnalysis analysis = Of(Held().Switch("s5", "n", "p", on: [1, 2], ohms: 450));
        Assert.Equal(expectedOhms, OutputImpedance.Of(analysis).Ohms(frequencyHz), 1e-12 * expectedOhms);
    }

    [Fact]
    public void A_held_capacitor_leaves_the_charges_between_equilibria_to_topology()
    {
        ModeAnalysis analysis = Of(Held().Switch("s5", "n", "p", on: [1, 2], ohms: 450));
        Assert.Equal(FlowDetermination.Topology, analysis.ChargeFlow.DeterminedBy);
        Assert.All(Enumerable.Range(1, 2), phase => Assert.Equal(Quantity.Zero, analysis.ChargeFlow.Capacitors[0][phase]));
    }

    [Fact]
    public void A_capacitor_between_sources_without_a_switch_settles_nothing()
    {
        ModeAnalysis analysis = Of(Converter.Create("Decoupled").Input("vin").Output("vout")
            .Capacitor("in", "vin", "gnd", 1e-6, esrOhms: 0.1).Capacitor("fly", "p", "n", 1e-9)
            .Switch("s1", "vin", "p", on: 1, ohms: 2).Switch("s2", "n", "vout", on: 1, ohms: 2)
            .Switch("s3", "p", "vout", on: 2, ohms: 2).Switch("s4", "n", "gnd", on: 2, ohms: 2));
        Assert.Empty(analysis.Topology.Directions);
        Assert.Equal(Quantity.Zero, analysis.FastSwitchingLimit.CapacitorCoefficients[0]);
    }

    private static ConverterBuilder Held() => Converter.Create("Held").Input("vin").Output("vout", LoadKind.Current)
        .Capacitor("held", "p", "n", 0.03e-9).Capacitor("idle", "p", "q", 1e-6).Capacitor("out", "vout", "gnd", 0.06e-9)
        .Switch("s0", "n", "vout", on: [1, 2], ohms: 1e-3).Switch("s1", "gnd", "q", on: 2, ohms: 1e-3)
        .Switch("s3", "vin", "n", on: 1, ohms: 1e-3);

    private static ModeAnalysis Of(ConverterBuilder builder)
    {
        Converter converter = builder.Build();
        return ModeAnalysis.Of(converter, converter.Modes[0]);
    }
}
