using ScNet.Analysis;
using ScNet.Design;

namespace ScNet.Tests.Analysis;

/// <summary>Currents that topology leaves open, and those beside which a capacitor keeps its voltage, by hand.</summary>
public sealed class OpenCurrentsTests
{
    [Fact]
    public void An_inductor_to_the_output_takes_all_charge_from_a_capacitor_beside_it_at_low_frequency()
    {
        // phase 1 puts the capacitor between input and output, phase 2 shorts it: it passes C·f·(drop), the winding the drop over 8 Ω
        Converter converter = Converter.Create("winding beside a capacitor").Input("vin").Output("vout").Duties(0.25, 0.75)
            .Capacitor("fly", "vout", "x", farads: 2).Inductor("coil", "vin", "vout", ohms: 8)
            .Switch("s1", "x", "vin", on: 1).Switch("s2", "x", "vout", on: 2, ohms: 3).Build();
        ModeAnalysis analysis = ModeAnalysis.Of(converter);
        Assert.Equal(FlowDetermination.ComponentValues, analysis.ChargeFlow.DeterminedBy);
        Assert.Equal(0, analysis.ChargeSharing!.OhmsAtOneHertz);
        Assert.Equal(0, analysis.SlowSwitchingLimit.OhmsAtOneHertz);
        Assert.All(analysis.ChargeFlow.Capacitors["fly"], q => Assert.Equal(0, q.ToDouble()));

        // the fast limit shares by resistance: 8 Ω beside 1/D1 + 3/D2 = 8 Ω
        Assert.Equal(0.5, analysis.Inductors["coil"].Current.ToDouble(), 1e-12);
        Assert.Equal(4, analysis.FastSwitchingLimit.Ohms, 1e-12);
        SplitPhase split = SplitPhase.Of(converter, converter.Modes[0]);
        Assert.True(split.IsSoft);
        Assert.Equal(0, split.OhmsAtOneHertz);
    }

    [Fact]
    public void A_capacitor_between_closed_switches_carries_only_the_fast_flow()
    {
        // the coil's current 1 passes 1 Ω in phase 1, 1/2 Ω in phase 2; beside them a capacitor with 1 Ω takes +i and -i:
        // 1 - 2i = v = 1/2 + 3i/2, i = 1/7
        Converter converter = Converter.Create("capacitor between switches").Input("vin").Output("vout")
            .Switch("high", "vin", "x", on: 1).Switch("low", "x", "gnd", on: 2)
            .Switch("both", "x", "y", on: [1, 2]).Switch("second", "x", "y", on: 2).Capacitor("held", "x", "y", esrOhms: 1)
            .Inductor("coil", "y", "vout").Build();
        ModeAnalysis analysis = ModeAnalysis.Of(converter);
        Assert.Equal(FlowDetermination.Topology, analysis.ChargeFlow.DeterminedBy);
        Assert.All(analysis.ChargeFlow.Capacitors["held"], q => Assert.Equal(Quantity.Zero, q));
        Assert.Equal(3 / 7.0, analysis.ChargeFlow.Switches["both"][1].ToDouble(), 1e-14);
        Assert.Equal(2 / 7.0, analysis.ChargeFlow.Switches["both"][2].ToDouble(), 1e-14);
        Assert.Equal(1 / 49.0, analysis.FastSwitchingLimit.CapacitorCoefficients["held"].ToDouble(), 1e-14);
    }
}
