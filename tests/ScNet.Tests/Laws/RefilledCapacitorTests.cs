using ScNet.Analysis;

namespace ScNet.Tests.Laws;

/// <summary>
/// Capacitors that the same sources fill in several phases: each refill makes good what was taken since
/// the one before. Derived by hand: at the end of a filling phase the voltage is the sources', so the
/// charge of the next filling phase is what the phases between have taken.
/// </summary>
public sealed class RefilledCapacitorTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void A_current_load_takes_from_the_capacitor_what_the_next_filling_phase_returns(int turn)
    {
        // Filled in the first and third of four equal phases, whichever of them the count begins with.
        int Turned(int phase) => ((phase - 1 + turn) % 4) + 1;
        Converter converter = Converter.Create("Refilled")
            .Input("vin").Output("vout", LoadKind.Current).Phases(4)
            .Capacitor("out", "vout", "gnd")
            .Switch("pass", "vin", "vout", on: [Turned(1), Turned(3)])
            .Build();
        ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
        PhaseValues charges = analysis.ChargeFlow.Capacitors[0];
        foreach ((int phase, double expected) in new[] { (1, 0.25), (2, -0.25), (3, 0.25), (4, -0.25) })
        {
            LawSample.AssertNear(expected, charges[Turned(phase)].ToDouble(), $"phase {phase}");
        }

        LawSample.AssertNear(0.125, analysis.SlowSwitchingLimit.OhmsAtOneHertz, "slow limit");
    }

    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    public void A_stiff_output_is_filled_from_the_phase_right_after_the_discharge(int phases)
    {
        // Doubler: filled in phases 1 and 3, emptied in phase 2. Phase 1 finds the capacitor full.
        Converter converter = Converter.Create("Doubler")
            .Input("vin").Output("vout").Phases(phases)
            .Capacitor("fly", "t", "b")
            .Switch("s1", "vin", "t", on: [1, 3]).Switch("s2", "b", "gnd", on: [1, 3])
            .Switch("s3", "vin", "b", on: 2).Switch("s4", "t", "vout", on: 2)
            .Build();
        ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
        PhaseValues charges = analysis.ChargeFlow.Capacitors[0];
        LawSample.AssertNear(0, charges[1].ToDouble(), "phase 1");
        LawSample.AssertNear(-1, charges[2].ToDouble(), "phase 2");
        LawSample.AssertNear(1, charges[3].ToDouble(), "phase 3");
        LawSample.AssertNear(1, analysis.SlowSwitchingLimit.OhmsAtOneHertz, "slow limit");
    }
}
