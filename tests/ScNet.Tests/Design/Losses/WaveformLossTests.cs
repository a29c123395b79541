using Fractions;
using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.SteadyState;
using ScNet.Tests.SteadyState.Conduction;

namespace ScNet.Tests.Design.Losses;

/// <summary>Losses read off waveforms: of discontinuous conduction by hand, of continuous conduction against the polynomials.</summary>
public sealed class WaveformLossTests
{
    private const double Volts = 4, Hertz = 1e6, Ohms = 0.02, Amperes = 0.15, Duty = 0.25;

    // R. W. Erickson and D. Maksimovic, chapter 5 (from memory): triangles of current with a rest, ratio 2/(1 + √(1 + 4K/D²)),
    // K = 2 L f/R; the lines are straight but for the resistances' volts
    [Fact]
    public void A_step_down_stage_in_discontinuous_conduction_by_hand()
    {
        Converter stage = Stages.StepDown(new Fraction(1, 4), Ohms);
        SizedConverter sized = Sized.Of(stage, control: new() { FixedWatts = 1e-5, CoulombsPerCycle = 1e-12 }, railEfficiency: 0.8);
        LossBudget budget = LossBudget.OfWaveforms(sized, stage.Modes[0], new OperatingPoint(Volts, Amperes, Hertz));

        // from the output current: I = i_peak (D + D₂)/2, D₂ = D (V − V_out)/V_out, i_peak = (V − V_out) D/(f L)
        double output = Solve(v => ((Volts - v) * Duty / Hertz / Stages.Henries * Duty * Volts / v / 2) - Amperes);
        double peak = (Volts - output) * Duty / Hertz / Stages.Henries, second = Duty * (Volts - output) / output;
        Assert.InRange(second, 0.1, 1 - Duty);
        LossModelTests.Near(output, budget.OutputVolts, 0.01);
        LossModelTests.Near(Ohms * peak * peak * (Duty + second) / 3, budget.WattsOf(LossKind.Windings), 0.02);
        LossModelTests.Near(peak * peak / 3 * ((Duty * Ohms) + (second * 2 * Ohms)), budget.WattsOf(LossKind.Conduction), 0.02);

        // widths of 1 kΩ·µm over the resistances
        double width = (1000 / Ohms) + (1000 / (2 * Ohms));
        LossModelTests.Near(Hertz * width * 2e-15 * 1.5 / 0.8, budget.WattsOf(LossKind.GateDrive));

        // the coil's node goes from the output voltage, where it rests, to the input, to the reference and back
        double squares = (Volts * Volts) + (output * output) + ((Volts - output) * (Volts - output));
        LossModelTests.Near(Hertz * (width * 1e-15 / 2) * squares / 2, budget.WattsOf(LossKind.Junctions), 0.01);
        LossModelTests.Near(1e-5 + (1e-12 * Hertz * Volts), budget.WattsOf(LossKind.Control));
        LossModelTests.Near(budget.OutputWatts / (budget.OutputWatts + budget.TotalLossWatts), budget.Efficiency!.Value);
        LossModelTests.Near(budget.TotalLossWatts, budget.Losses.Sum(l => l.Watts));
    }

    // the low diode takes the falling current after the peak; at the end of the triangle there is none left
    [Fact]
    public void In_a_dead_time_the_diode_takes_the_peak_alone()
    {
        const double Dead = 1e-9;
        Converter stage = Stages.StepDown(new Fraction(1, 4), Ohms);
        OperatingPoint point = new(Volts, Amperes, Hertz);
        LossBudget budget = LossBudget.OfWaveforms(Sized.Of(stage, deadSeconds: Dead), stage.Modes[0], point);
        double peak = ConductionPeak(stage, point);
        LossModelTests.Near(Hertz * Dead * 0.7 * peak, budget.WattsOf(LossKind.BodyDiodes), 1e-6);
        Assert.Equal("low", Assert.Single(budget.Losses, l => l.Kind == LossKind.BodyDiodes).Element);
    }

    // a second way to the same figures where both hold: small ripple of capacitors, continuous current
    [Theory]
    [InlineData("step-down", 0.01)]
    [InlineData("four levels", 0.01)]
    [InlineData("half", 0.01)]
    public void In_continuous_conduction_waveforms_and_polynomials_agree(string name, double amperes)
    {
        Converter converter = name switch
        {
            "step-down" => InductiveStages.StepDown(new Fraction(2, 5)).Build(),
            "four levels" => InductiveStages.MultiLevel(4, new Fraction(1, 5)).Build(),
            _ => Converter.Create("Half").Input("vin").Output("vout").Capacitor("fly", "p", "n", 1)
                .Switch("s1", "vin", "p", 1, 1).Switch("s2", "n", "vout", 1, 1).Switch("s3", "p", "vout", 2, 1).Switch("s4", "n", "gnd", 2, 1).Build(),
        };
        SizedConverter sized = Sized.Of(converter, deadSeconds: 1e-5);
        OperatingPoint point = new(1, amperes, 200);
        LossBudget expected = LossModel.Of(sized, ModeAnalysis.Of(converter)).At(point), actual = LossBudget.OfWaveforms(sized, converter.Modes[0], point);
        LossModelTests.Near(expected.OutputVolts, actual.OutputVolts, 1e-9);
        LossModelTests.Near(
            expected.WattsOf(LossKind.Conduction) + expected.WattsOf(LossKind.ChargeSharing), actual.WattsOf(LossKind.Conduction), 2e-3);
        foreach (LossKind kind in (LossKind[])[LossKind.GateDrive, LossKind.Junctions, LossKind.Plates, LossKind.Leakage, LossKind.BodyDiodes, LossKind.Windings, LossKind.Control])
        {
            // junctions and plates from levels without load on one side, with what the load drops on the other
            LossModelTests.Near(expected.WattsOf(kind), actual.WattsOf(kind), kind is LossKind.Junctions or LossKind.Plates or LossKind.Leakage ? 0.1 : 2e-3);
        }
    }

    private static double ConductionPeak(Converter stage, OperatingPoint point) =>
        ScNet.SteadyState.Conduction.ConductionModel.Of(stage).At(point).Steady.Inductors["coil"].PeakCurrentAmperes;

    private static double Solve(Func<double, double> zero) => MathNet.Numerics.RootFinding.Brent.FindRoot(zero, 0.01 * Volts, 0.99 * Volts, 1e-12);
}
