using Fractions;
using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.Laws;

/// <summary>
/// A switch that joins input and output directly. Derived by hand: in the fast-switching limit its
/// current is the same whenever it is closed, so its charge and that of both ports share by duration.
/// </summary>
public sealed class DirectPathTests
{
    public static TheoryData<int, bool> Cases => new() { { 1, false }, { 3, false }, { 6, false }, { 1, true }, { 3, true }, { 6, true } };

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_path_that_is_always_closed_shares_its_charge_by_duration(int sevenths, bool withCapacitor)
    {
        Fraction[] duties = [new(sevenths, 7), new(7 - sevenths, 7)];
        ScNet.ConverterBuilder builder = Converter.Create("Pass device")
            .Input("vin").Output("vout").Duties(duties)
            .Switch("pass", "vin", "vout", on: [1, 2], ohms: 3);
        if (withCapacitor)
        {
            // Without a voltage across it in any phase it carries nothing.
            builder.Capacitor("idle", "vin", "vout");
        }

        Converter converter = builder.Build();
        ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
        for (int j = 0; j < 2; j++)
        {
            LawSample.AssertNear(duties[j].ToDouble(), analysis.ChargeFlow.Switches[0][j + 1].ToDouble(), "switch");
            LawSample.AssertNear(duties[j].ToDouble(), analysis.ChargeFlow.Input[j + 1].ToDouble(), "input");
            LawSample.AssertNear(duties[j].ToDouble(), analysis.ChargeFlow.Output[j + 1].ToDouble(), "output");
        }

        LawSample.AssertNear(3, analysis.FastSwitchingLimit.Ohms, "fast limit");
        LawSample.AssertNear(0, analysis.SlowSwitchingLimit.OhmsAtOneHertz, "slow limit");
    }

    /// <summary>
    /// One capacitor joins in only to be in the way of the exact flow: the pass device can take all charge, so in
    /// the slow limit it does, and nothing is left to round. The impedance stays finite as the period grows.
    /// </summary>
    [Fact]
    public void Where_charge_can_bypass_all_capacitors_the_slow_limit_is_nothing_at_all()
    {
        Converter converter = Converter.Create("Bypassed")
            .Input("vin").Output("vout").Phases(5)
            .Capacitor("c4", "gnd", "n0", 0.219, 0.25)
            .Switch("s0", "n0", "vout", on: [1, 3, 4], ohms: 0.7).Switch("s1", "vin", "n0", on: 3, ohms: 0.3)
            .Build();
        ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
        Assert.Equal(0, analysis.SlowSwitchingLimit.OhmsAtOneHertz);
        Assert.All(Enumerable.Range(1, 5), j => Assert.Equal(Quantity.Zero, analysis.ChargeFlow.Capacitors[0][j]));
        OutputImpedance impedance = OutputImpedance.Of(analysis);
        Assert.Equal(0, impedance.CornerFrequencyHz);

        // all charge in phase 3 alone, a fifth of the period, through both switches (by hand)
        Assert.Equal(5, impedance.Ohms(1e-30), 1e-9 * 5);
    }
}
