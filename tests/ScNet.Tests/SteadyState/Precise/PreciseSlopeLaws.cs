using CsCheck;
using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.SteadyState.Exponential;
using ScNet.Tests.Networks;
using ScNet.Tests.Numerics;

namespace ScNet.Tests.SteadyState.Precise;

/// <summary>
/// Derivatives of the two-port of random networks of values over twelve decades against differences of the node equations in
/// 640 binary places, whose steps of 2⁻¹²⁰ leave an error of 2⁻²⁴⁰.
/// </summary>
[Trait("Kind", "Law")]
[Trait("Against", "Oracle")]
public sealed class PreciseSlopeLaws
{
    private const double Tolerance = 1e-8;
    private const int ValuesPerNetwork = 2;
    private const int Count = 4;

    // below this share of the least on-resistance, or of its conductance, a figure is told as nothing
    private const double Dust = 1e-15;

    private static readonly BigReal s_step = BigReal.Scale(BigReal.One, -120);

    [Fact]
    public void Slopes_with_parasitics_are_those_of_differences_in_640_places() => Gen.Select(SpreadConverters.Gen, Gen.Int[0, int.MaxValue - 1]).Holds(
        (sample, seed) =>
        {
            Random random = new(seed);
            Converter converter = PlatedNetworks.WithPlates(sample.Converter, random, r => 0.01 * Math.Pow(10, (6 * r.NextDouble()) - 3));
            if (ModeAnalysis.Try(converter, converter.Modes[0]).Analysis is { FastSwitchingLimit.Ohms: > 0 } analysis)
            {
                double corner = analysis.SlowSwitchingLimit.OhmsAtOneHertz / analysis.FastSwitchingLimit.Ohms, hertz = sample.FrequencyOverCorner * (corner > 0 ? corner : 1);
                Check("with parasitics", converter, hertz, SteadyStateModel.Of(analysis).TwoPortSensitivityAt(hertz), random);
            }
        },
        Count,
        x => x.ToString());

    [Fact]
    public void Slopes_with_inductors_are_those_of_differences_in_640_places() => Gen.Select(SpreadHybrids.Gen, Gen.Int[0, int.MaxValue - 1]).Holds(
        (sample, seed) =>
        {
            Converter converter = OutputNetworks.With(sample.Converter);
            if (HybridSolution.TryFind(converter, sample.FrequencyHz) is not null)
            {
                Check("with inductors", converter, sample.FrequencyHz, ExponentialTwoPort.Of(converter, converter.Modes[0]).SensitivityAt(sample.FrequencyHz), new Random(seed));
            }
        },
        Count,
        x => x.ToString());

    private static void Check(string kind, Converter converter, double hertz, TwoPortSensitivity slopes, Random random)
    {
        PortOracle.Ports own = PrecisePeriod.Ports(converter, converter.Modes[0], hertz);
        double siemens = Math.Max(Math.Abs(own.Siemens), own.Ohms == 0 ? 0 : Math.Abs(own.Voltage * own.Current / own.Ohms));
        double least = Dust * converter.Switches.Min(s => s.Ohms), most = Dust / converter.Switches.Min(s => s.Ohms);
        double[] scales = [Math.Max(1, Math.Abs(own.Voltage)), Math.Max(Math.Abs(own.Ohms), least), Math.Max(1, Math.Abs(own.Current)), Math.Max(siemens, most)];
        string[] figures = ["voltage ratio", "impedance", "current ratio", "input conductance"];
        Value[] values = [.. Values(converter, slopes)];
        random.Shuffle(values);
        foreach (Value value in values.Take(ValuesPerNetwork))
        {
            (BigReal[] above, BigReal[] below) = (At(s_step), At(-s_step));
            double[] actual = [value.Slope.Ratio, value.Slope.Ohms, value.Slope.CurrentRatio, value.Slope.InputSiemens];
            for (int f = 0; f < figures.Length; f++)
            {
                double expected = PrecisePorts.Nearest((above[f] - below[f]) / (s_step + s_step)), found = value.Amount * actual[f];
                WorstErrors.OfRun.Require($"slopes of the {figures[f]} {kind}", expected, found, Math.Max(scales[f], Math.Abs(expected)), Tolerance, $"by {value.Name} at {hertz:R} Hz");
            }

            BigReal[] At(BigReal step)
            {
                PreciseValues moved = PreciseValues.Of(converter);
                value.Move(moved, BigReal.One + step);
                BigReal frequency = hertz;
                return PrecisePeriod.Ports(PreciseNetwork.Of(converter, converter.Modes[0], moved), value.IsFrequency ? frequency * (BigReal.One + step) : frequency).ToArray();
            }
        }
    }

    // every value, its slopes, and how it is moved in proportion to itself; of duties the first grows at the cost of the second
    private static IEnumerable<Value> Values(Converter converter, TwoPortSensitivity slopes)
    {
        for (int i = 0; i < converter.Capacitors.Count; i++)
        {
            int c = i;
            Capacitor own = converter.Capacitors[c];
            yield return new(own.Name, own.Farads, slopes.ByCapacitance[c], (v, factor) => v.Farads[c] *= factor);
            if (own.EsrOhms > 0)
            {
                yield return new($"resistance of {own.Name}", own.EsrOhms, slopes.ByEsr[c]!.Value, (v, factor) => v.EsrOhms[c] *= factor);
            }

            if (own.Plates.BottomFarads > 0)
            {
                yield return new($"bottom of {own.Name}", own.Plates.BottomFarads, slopes.ByBottomPlate[c]!.Value, (v, factor) => v.BottomFarads[c] *= factor);
            }

            if (own.Plates.TopFarads > 0)
            {
                yield return new($"top of {own.Name}", own.Plates.TopFarads, slopes.ByTopPlate[c]!.Value, (v, factor) => v.TopFarads[c] *= factor);
            }
        }

        foreach ((int k, Parasitic own) in converter.Parasitics.Index())
        {
            yield return new(own.Name, own.Farads, slopes.ByParasitic[k], (v, factor) => v.ParasiticFarads[k] *= factor);
        }

        foreach ((int k, Switch own) in converter.Switches.Index())
        {
            yield return new(own.Name, own.Ohms, slopes.ByOnResistance[k], (v, factor) => v.OnOhms[k] *= factor);
        }

        foreach ((int k, Inductor own) in converter.Inductors.Index())
        {
            yield return new(own.Name, own.Henries, slopes.ByInductance[k], (v, factor) => v.Henries[k] *= factor);
            if (own.Ohms > 0)
            {
                yield return new($"winding of {own.Name}", own.Ohms, slopes.ByWindingResistance[k], (v, factor) => v.WindingOhms[k] *= factor);
            }
        }

        yield return new("frequency", slopes.FrequencyHz, slopes.ByFrequency, (_, _) => { }, IsFrequency: true);
        TwoPortSlope one = slopes.ByDuty[1], two = slopes.ByDuty[2];
        TwoPortSlope exchanged = new(one.Ratio - two.Ratio, one.Ohms - two.Ohms, one.CurrentRatio - two.CurrentRatio, one.InputSiemens - two.InputSiemens);
        yield return new("duty", converter.Phases[0].Duty.ToDouble(), exchanged, (v, factor) =>
        {
            BigReal change = v.Duties[0] * (factor - BigReal.One);
            v.Duties[0] += change;
            v.Duties[1] -= change;
        });
    }

    private sealed record Value(string Name, double Amount, TwoPortSlope Slope, Action<PreciseValues, BigReal> Move, bool IsFrequency = false);
}
