using Fractions;
using ScNet.Analysis;

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
}
