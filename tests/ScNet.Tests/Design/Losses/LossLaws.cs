using CsCheck;
using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.SteadyState;

namespace ScNet.Tests.Design.Losses;

/// <summary>Laws of the loss budget on random networks.</summary>
[Trait("Kind", "Law")]
[Trait("Against", "Oracle")]
public sealed class LossLaws
{
    private static readonly Gen<Converter> s_any = RandomNetworks.Any.Select(sketch => sketch.Build());

    // Tellegen: what goes in and not out is lost. Ideal converters take the ratio times the load current.
    [Fact]
    public void Without_parasitics_the_losses_are_input_less_output_power_of_the_exact_solution() => s_any.Holds(
        converter => Check(converter, analysis =>
        {
            LossModel model = LossModel.Of(Sized.Bare(converter), analysis);
            SteadyStateModel exact = SteadyStateModel.Of(analysis);
            foreach (OperatingPoint point in Points(analysis))
            {
                LossBudget budget = model.At(point);
                PeriodicSteadyState state = exact.At(point);
                double lost = state.InputPowerWatts - state.OutputPowerWatts;
                WorstErrors.OfRun.Require("loss budget", lost, budget.TotalLossWatts, Math.Abs(state.InputPowerWatts), 1e-9);
                AssertNear(state.AverageOutputVoltageVolts, budget.OutputVolts, Math.Abs(state.IdealOutputVoltageVolts));
                if (budget.Efficiency is { } efficiency)
                {
                    AssertNear(budget.OutputVolts / (analysis.Ratio.ToDouble() * point.InputVoltageVolts), efficiency, 1);
                }
            }
        }),
        400);

    [Fact]
    public void With_devices_the_efficiency_stays_below_output_over_ratio_times_input_voltage() => s_any.Holds(
        converter => Check(converter, analysis =>
        {
            LossModel model = LossModel.Of(Sized.Of(converter), analysis);
            foreach (OperatingPoint point in Points(analysis))
            {
                LossBudget budget = model.At(point);
                Assert.All(Enum.GetValues<LossKind>(), kind => Assert.True(budget.WattsOf(kind) >= 0));
                AssertNear(budget.TotalLossWatts, budget.Losses.Sum(l => l.Watts), budget.TotalLossWatts);
                if (budget.Efficiency is { } efficiency)
                {
                    Assert.True(efficiency < budget.OutputVolts / (analysis.Ratio.ToDouble() * point.InputVoltageVolts), $"{budget}");
                }
            }
        }),
        400);

    [Fact]
    public void Twice_the_area_at_twice_the_load_leaves_the_efficiency() => s_any.Holds(
        converter => Check(converter, analysis =>
        {
            Converter twice = converter.WithValues(
                [.. converter.Capacitors.Select(c => 2 * c.Farads)], [.. converter.Switches.Select(s => s.Ohms / 2)], [.. converter.Capacitors.Select(c => c.EsrOhms / 2)]);
            (LossModel one, LossModel two) = (LossModel.Of(Sized.Of(converter), analysis), LossModel.Of(Sized.Of(twice), analysis));
            Assert.True(Math.Abs((2 * one.Sized.AreaSquareMetres) - two.Sized.AreaSquareMetres) < 1e-12 * two.Sized.AreaSquareMetres);
            foreach (OperatingPoint point in Points(analysis))
            {
                (LossBudget a, LossBudget b) = (one.At(point), two.At(new OperatingPoint(point.InputVoltageVolts, 2 * point.LoadCurrentAmperes, point.FrequencyHz)));
                AssertNear(2 * a.TotalLossWatts, b.TotalLossWatts, b.TotalLossWatts);
                AssertNear(a.Efficiency ?? 0, b.Efficiency ?? 0, 1);
            }
        }),
        300);

    // Without load plates alone lose. The formula lets every plate swing as if it were alone and the capacitors stood still,
    // which the plates' own charge moves by as much as their share of them.
    [Fact]
    public void Plates_by_formula_come_to_plates_in_the_exact_two_port_in_proportion_to_their_share()
    {
        int compared = 0;
        PlatedNetworks.Any.Holds(
            converter => Check(converter, analysis =>
            {
                (Converter some, Converter few) = (PlatedNetworks.Scaled(converter, 1e-3), PlatedNetworks.Scaled(converter, 1e-4));
                (LossModel ofSome, LossModel ofFew) = (Model(some), Model(few));
                if (ofSome.Notes.Count > 0 || PlateWatts(ofSome, 1) < RoundingWatts)
                {
                    return;
                }

                compared++;
                foreach (OperatingPoint point in Points(analysis))
                {
                    double error = RelativeError(ofSome, some, point.FrequencyHz), smaller = RelativeError(ofFew, few, point.FrequencyHz);
                    Assert.True(smaller < 0.2, $"{smaller} at {point.FrequencyHz} Hz");
                    Assert.True(smaller < (0.2 * error) + 1e-6, $"{error} falls to {smaller} only, at {point.FrequencyHz} Hz");
                }
            }),
            800);
        Assert.True(LawCheck.IsOneCase || compared > 35, $"Only {compared} networks were compared.");
    }

    // at 1 V and 1 Hz, of plates of some farads whose voltages move by what rounding leaves of none
    private const double RoundingWatts = 1e-25;

    private static LossModel Model(Converter converter) => LossModel.Of(Sized.Bare(converter), ModeAnalysis.Of(converter));

    private static double PlateWatts(LossModel model, double hertz) => model.At(new OperatingPoint(1, 0, hertz)).WattsOf(LossKind.Plates);

    private static double RelativeError(LossModel model, Converter converter, double hertz)
    {
        double exact = SteadyStateModel.Of(ModeAnalysis.Of(converter)).TwoPort.At(hertz).InputSiemens;
        return Math.Abs(PlateWatts(model, hertz) - exact) / exact;
    }

    private static void Check(Converter converter, Action<ModeAnalysis> law)
    {
        if (ModeAnalysis.Try(converter, converter.Modes[0]).Analysis is { FastSwitchingLimit.Ohms: > 0 and < double.PositiveInfinity } analysis)
        {
            law(analysis);
        }
    }

    // around the corner frequency, a load that takes a tenth of the ideal voltage at the fast limit
    private static IEnumerable<OperatingPoint> Points(ModeAnalysis analysis)
    {
        double corner = analysis.SlowSwitchingLimit.OhmsAtOneHertz / analysis.FastSwitchingLimit.Ohms;
        double amperes = 0.1 * analysis.Ratio.ToDouble() / analysis.FastSwitchingLimit.Ohms;
        return ((double[])[0.1, 1, 10]).Select(times => new OperatingPoint(1, amperes, corner > 0 ? times * corner : 0.01 * times));
    }

    private static void AssertNear(double expected, double actual, double scale) =>
        Assert.True(Math.Abs(expected - actual) <= 1e-9 * scale, $"Expected {expected:R}, but got {actual:R}.");
}
