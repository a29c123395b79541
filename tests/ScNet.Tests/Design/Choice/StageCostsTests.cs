using ScNet.Analysis;
using ScNet.Design.Choice;
using ScNet.Design.Losses;
using ScNet.Devices;

namespace ScNet.Tests.Design.Choice;

/// <summary>What the elements of a step-down stage at the duty 1/4 lose per siemens, by hand: a switch of 1 S is as wide in µm as its Ω µm.</summary>
public sealed class StageCostsTests
{
    // the ripple V D (1 − D)/(f L) rises and falls around its average: its square over twelve counts for the share of the period
    private const double Duty = 0.25, RippleSquaredOverTwelve = 0.1875 * 0.1875 / 12 / 1e-12;

    private static readonly Process s_wired = LossyStages.Process with { WiringOhms = 3 };

    [Theory]
    [InlineData(0, 1000)]
    [InlineData(1, 500)]
    public void A_switch_costs_conduction_gate_junction_and_leakage_of_its_kind(int option, double micrometres)
    {
        StageCosts costs = Of(s_wired);
        double[] shares = [Duty, 1 - Duty];
        for (int s = 0; s < 2; s++)
        {
            LossPolynomial conducted = costs.Conduction(s, option), rest = costs.Rest(s, option);
            Near(shares[s], conducted.Current2);
            Near(shares[s] * RippleSquaredOverTwelve, conducted.Volts2PerHertz2);
            Near(micrometres * 2.2e-15 * 1.5 / 0.8, rest.Hertz);

            // from nothing to the input and back: the charge at the rated voltage, over it, times half of two squares
            Near(micrometres * 1.5e-15 / 5, rest.HertzVolts2);
            Near(micrometres * 1e-9 * (1 - shares[s]), rest.Volts);
            Assert.Equal(0, rest.Current2);
        }
    }

    [Fact]
    public void Wiring_is_no_part_of_what_a_switch_conducts()
    {
        StageCosts plain = Of(LossyStages.Process), wired = Of(s_wired);
        Near(plain.Conduction(0, 0).Current2, wired.Conduction(0, 0).Current2);
        Near(plain.Rest(0, 0).Hertz, wired.Rest(0, 0).Hertz);
    }

    [Fact]
    public void Coil_control_and_body_diodes_belong_to_no_element()
    {
        StageCosts costs = Of(s_wired);
        Near(0.1, costs.Others.Current2);
        Near(0.1 * RippleSquaredOverTwelve, costs.Others.Volts2PerHertz2);
        Near(1e-11, costs.Others.HertzVolts);
        Near(1e-5, costs.Others.Constant);

        // twice a period the load current takes the diode of the low switch
        Near(2 * 2e-9 * 0.7, costs.DiodeVoltSeconds);
        Near(0.1875 / 1e-6, Assert.Single(costs.Cores).RipplePerVoltSecond);
    }

    // the flying capacitor takes the current for D and gives it for D, with what its ESR has at one farad: 5e-10 Ω m² on 500 m²
    [Fact]
    public void A_capacitor_costs_what_its_resistance_conducts_and_its_leakage_and_plates()
    {
        Candidate three = LossyStages.ThreeLevel;
        StageCosts costs = StageCosts.Of(three.Duties.AnalysisAt(60), s_wired, LossyStages.Options(three, s_wired), s_wired.Inductors);
        Near(2 * Duty * 5e-10 / 500, costs.Conduction(0, 0).Current2);

        // 1 A/m² at 5 V on 500 m², at half of the input
        Near(500.0 / 5 / 4, costs.Rest(0, 0).Volts2);
        Assert.True(costs.Rest(0, 0).HertzVolts2 > 0);
        Assert.Equal(0, costs.Rest(0, 0).Current2);
    }

    // charge moves by the current of the load while the high switch of its cell alone is closed: a quarter in, a quarter out
    [Fact]
    public void A_flying_capacitor_takes_and_gives_a_quarter_of_the_charge_at_a_quarter_of_the_period()
    {
        ModeAnalysis analysis = LossyStages.ThreeLevel.Duties.AnalysisAt(60);
        Near(Duty, StageCurrents.ChargeOf(analysis, 0));

        // a quarter of the input over a quarter of the period, and down again: half of 1/16 over the inductance
        (double average, double rise) = StageCurrents.Of(analysis, 0, LossyStages.Coil);
        Near(1, average);
        Near(1.0 / 16 / 2e-6, rise);
    }

    // unlike phases: half of the input drives it up for an eighth less than what takes it down
    [Fact]
    public void The_largest_rise_of_unlike_phases_counts()
    {
        // at the duty 3/8 of three levels the coil sees 1/8 of the input for 3/8 of the period and 3/8 of it for 1/8: the same area twice
        (double _, double rise) = StageCurrents.Of(LossyStages.ThreeLevel.Duties.AnalysisAt(90), 0, LossyStages.Coil);
        Near(3.0 / 64 / 2e-6, rise);
    }

    // a capacitor that is twice as good a conductor beside the other
    [Fact]
    public void More_kinds_of_capacitors_than_of_switches_change_no_switch()
    {
        Process one = LossyStages.Process with { Switches = [LossyStages.Switch] };
        Process two = one with { Capacitors = [LossyStages.Capacitor, LossyStages.Capacitor with { Name = "better", EsrOhmSquareMetres = LossyStages.Capacitor.EsrOhmSquareMetres / 2 }] };
        StageCosts plain = Three(one), more = Three(two);
        Near(plain.Conduction(1, 0).Current2, more.Conduction(1, 0).Current2);
        Near(plain.Conduction(0, 0).Current2, more.Conduction(0, 0).Current2);
        Near(plain.Conduction(0, 0).Current2 / 2, more.Conduction(0, 1).Current2);

        static StageCosts Three(Process process) => StageCosts.Of(
            LossyStages.ThreeLevel.Duties.AnalysisAt(60), process, LossyStages.Options(LossyStages.ThreeLevel, process), process.Inductors);
    }

    // four levels shifted by a third of the period at the duty 1/2: a cell alone is closed for a third, in which the one after the next opens
    [Fact]
    public void The_charge_of_a_capacitor_adds_up_over_its_phases()
    {
        ModeAnalysis four = StageCandidates.FlyingCapacitor(4).Duties.AnalysisAt(120);
        Assert.True(four.ChargeFlow.Capacitors[0].Count(q => q.ToDouble() > 0) > 1);
        Near(1.0 / 3, StageCurrents.ChargeOf(four, 0));
        Near(1.0 / 3, StageCurrents.ChargeOf(four, 1));
    }

    private static StageCosts Of(Process process) =>
        StageCosts.Of(LossyStages.StepDown.Duties.AnalysisAt(60), process, LossyStages.Options(LossyStages.StepDown, process), process.Inductors);

    private static void Near(double expected, double actual) => Assert.Equal(1, actual / expected, 1e-12);
}
