using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.Analysis;

/// <summary>
/// Where closed switches tie a stiff output to the input in one phase, the output is at the input's voltage in
/// all of them: no capacitor's voltage ever changes, and the slow limit is exactly zero.
/// </summary>
public sealed class TiedOutputTests
{
    private readonly Converter _converter = Converter.Create("Pump bypass").Input("vin").Output("vout").Phases(5)
        .Capacitor("c4", "gnd", "n0", farads: 0.219, esrOhms: 0.25)
        .Switch("s0", "n0", "vout", on: [1, 3, 4])
        .Switch("s1", "vin", "n0", on: [3])
        .Build();

    [Fact]
    public void No_capacitor_carries_charge_between_equilibria()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(_converter, _converter.Modes[0]);
        Assert.All(analysis.ChargeFlow.Capacitors[0], q => Assert.Equal(Quantity.Zero, q));
        Assert.Equal(Quantity.Zero, analysis.SlowSwitchingLimit.Coefficients[0]);
        Assert.Equal(0, analysis.SlowSwitchingLimit.OhmsAtOneHertz);
        Assert.Equal(0, OutputImpedance.Of(analysis).CornerFrequencyHz);
        Assert.Equal(FlowDetermination.Topology, analysis.ChargeFlow.DeterminedBy);
    }

    [Fact]
    public void The_fast_limit_is_that_of_the_flow_of_least_dissipation()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(_converter, _converter.Modes[0]);
        ValueDecidedFlowLaws.CheckFast(analysis);
        ValueDecidedFlowLaws.CheckSlow(analysis);
    }
}
