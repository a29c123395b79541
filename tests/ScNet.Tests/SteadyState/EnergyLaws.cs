using System.Runtime.CompilerServices;
using CsCheck;
using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Laws of the periodic steady state on networks drawn at random, at frequencies about their corner.</summary>
[Trait("Kind", "Law")]
[Trait("Against", "Oracle")]
public sealed class EnergyLaws
{
    private const int SamplesPerPhase = 400;

    private static readonly Gen<double> s_decades = Gen.Double[-2, 2];

    [Fact]
    public void Elements_dissipate_what_the_source_gives_and_the_load_does_not_get() => Check(900, steady =>
    {
        double lost = steady.InputPowerWatts - steady.OutputPowerWatts;
        double scale = Math.Max(lost, Math.Max(Math.Abs(steady.InputPowerWatts), 1e-3));
        WorstErrors.OfRun.Require("energy balance", lost, steady.DissipationWatts, scale, 1e-9);
        WorstErrors.OfRun.Require("losses of elements", steady.DissipationWatts, OperatedConverters.ElementDissipationWatts(steady), scale, 1e-9);
    });

    [Fact]
    public void The_mean_of_the_output_waveform_is_ratio_times_input_less_the_drop() => Check(500, steady =>
    {
        double period = 1 / steady.Point.FrequencyHz;
        double ideal = ModeAnalysis.Of(steady.Converter, steady.Mode).Ratio.ToDouble() * steady.Point.InputVoltageVolts;
        double drop = steady.OutputImpedanceOhms * steady.Point.LoadCurrentAmperes;
        Assert.Equal(ideal - drop, steady.AverageOutputVoltageVolts, 1e-10 * (Math.Abs(ideal) + Math.Abs(drop)));
        double mean = 0;
        foreach ((double start, double length) in Phases(steady))
        {
            double[] times = [.. GaussTimes(start, length)];
            double?[] values = steady.SampleNodePotential(steady.Converter.OutputNode, times);
            if (values[0] is null)
            {
                Assert.Null(steady.OutputRippleVolts);
                return;
            }

            mean += values.Select((v, i) => v!.Value * GaussWeight(i, length)).Sum() / period;
        }

        Assert.Equal(ideal - drop, mean, 1e-10 * (Math.Abs(ideal) + Math.Abs(drop)));
    });

    [Fact]
    public void The_input_waveform_has_the_mean_and_the_square_of_its_samples() => Check(500, steady =>
    {
        double mean = 0, square = 0;
        foreach ((double start, double length) in Phases(steady))
        {
            double[] values = steady.SampleInputCurrent([.. GaussTimes(start, length)]);
            mean += steady.Point.FrequencyHz * values.Select((v, i) => v * GaussWeight(i, length)).Sum();
            square += steady.Point.FrequencyHz * values.Select((v, i) => v * v * GaussWeight(i, length)).Sum();
        }

        double scale = Math.Max(1e-6, steady.InputRippleAmperes + Math.Abs(steady.AverageInputCurrentAmperes));
        Assert.Equal(steady.AverageInputCurrentAmperes, mean, 1e-9 * scale);
        Assert.Equal(steady.InputRmsCurrentAmperes, Math.Sqrt(square), 1e-7 * scale);
    });

    [Fact]
    public void Effective_currents_are_those_of_dense_samples() => Check(300, steady =>
    {
        foreach ((Func<double[], double[]> sample, double rms, double peak) in Currents(steady))
        {
            double square = 0;
            foreach ((double start, double length) in Phases(steady))
            {
                double[] values = sample([.. GaussTimes(start, length)]);
                square += steady.Point.FrequencyHz * values.Select((v, i) => v * v * GaussWeight(i, length)).Sum();
            }

            Assert.Equal(Math.Sqrt(square), rms, 1e-7 * Math.Max(1e-6, Math.Abs(peak)));
        }
    });

    [Fact]
    public void Peaks_ripples_and_blocking_ranges_enclose_dense_samples_closely() => Check(200, steady =>
    {
        double[] times = [.. Phases(steady).SelectMany(p => Enumerable.Range(0, SamplesPerPhase).Select(i => p.Start + (p.Length * Math.Pow((double)i / SamplesPerPhase, 3))))];
        foreach ((Func<double[], double[]> sample, _, double peak) in Currents(steady))
        {
            AssertEncloses(-Math.Abs(peak), Math.Abs(peak), sample(times), both: false);
        }

        for (int i = 0; i < steady.Capacitors.Count; i++)
        {
            CapacitorOperation capacitor = steady.Capacitors[i];
            if (capacitor.AverageVoltageVolts is not null)
            {
                double[] values = steady.CapacitorVoltage(capacitor.Capacitor.Name, times);
                AssertEncloses(values.Min(), values.Min() + capacitor.RippleVolts, values, both: true);
            }
        }

        foreach (SwitchOperation s in steady.Switches)
        {
            double?[] first = steady.SampleNodePotential(s.Switch.FirstNode, times), second = steady.SampleNodePotential(s.Switch.SecondNode, times);
            PhaseSet closed = steady.Mode.ClosedPhases[steady.Converter.Switches.PositionOf(s.Switch.Name)];
            double?[] open = [.. first.Zip(second, (a, b) => a - b).Where((_, i) => !closed.Contains((i / SamplesPerPhase) + 1))];
            if (s.BlockingVolts is { IsDetermined: true } range && open.All(v => v is not null))
            {
                AssertEncloses(range.Minimum!.Value, range.Maximum!.Value, [.. open.OfType<double>()], both: true);
            }
            else if (!s.BlockingVolts.IsDetermined && open.Length > 0)
            {
                Assert.Contains(null, open);
            }
        }
    });

    private static void AssertEncloses(double least, double greatest, double[] values, bool both)
    {
        double slack = 1e-9 * Math.Max(1, values.Max(Math.Abs)), closeness = slack + (0.05 * (greatest - least));
        double low = values.Min(), high = values.Max();
        Assert.True(low >= least - slack && high <= greatest + slack, $"{low:R} to {high:R} is not within {least:R} to {greatest:R}.");
        Assert.True(
            both ? low <= least + closeness && high >= greatest - closeness : Math.Max(-low, high) >= greatest - closeness,
            $"{low:R} to {high:R} is far from {least:R} to {greatest:R}.");
    }

    private static IEnumerable<(Func<double[], double[]> Sample, double Rms, double Peak)> Currents(PeriodicSteadyState steady) =>
    [
        .. steady.Switches.Select(s => ((Func<double[], double[]>)(t => steady.SampleSwitchCurrent(s.Switch.Name, t)), s.RmsCurrentAmperes, s.PeakCurrentAmperes)),
        .. steady.Capacitors.Select(c => ((Func<double[], double[]>)(t => steady.SampleCapacitorCurrent(c.Capacitor.Name, t)), c.RmsCurrentAmperes, c.PeakCurrentAmperes)),
    ];

    private static IEnumerable<(double Start, double Length)> Phases(PeriodicSteadyState steady)
    {
        double start = 0;
        foreach (Phase phase in steady.Converter.Phases)
        {
            double length = phase.Duty.ToDouble() / steady.Point.FrequencyHz;
            yield return (start, length);
            start += length;
        }
    }

    // Five Gauss points on each of intervals that grow from the start of a phase, where exponentials are steep.
    private static readonly double[] s_edges = [0, .. Enumerable.Range(0, 60).Select(i => Math.Pow(0.75, 59 - i))];
    private static readonly double[] s_points = [-0.9061798459386640, -0.5384693101056831, 0, 0.5384693101056831, 0.9061798459386640];
    private static readonly double[] s_weights = [0.2369268850561891, 0.4786286704993665, 0.5688888888888889, 0.4786286704993665, 0.2369268850561891];

    private static IEnumerable<double> GaussTimes(double start, double length) => Enumerable.Range(1, s_edges.Length - 1).SelectMany(k =>
        s_points.Select(p => start + (length * 0.5 * (s_edges[k] + s_edges[k - 1] + (p * (s_edges[k] - s_edges[k - 1]))))));

    private static double GaussWeight(int index, double length)
    {
        int k = 1 + (index / s_points.Length);
        return 0.5 * length * (s_edges[k] - s_edges[k - 1]) * s_weights[index % s_points.Length];
    }

    private static void Check(long iterations, Action<PeriodicSteadyState> law, [CallerMemberName] string name = "")
    {
        int checkedCount = 0;
        Gen.Select(RandomNetworks.Any, s_decades).Holds(
            (sketch, decades) =>
            {
                if (LawSample.Try(sketch).Analysis is { FastSwitchingLimit.Ohms: > 0 } analysis)
                {
                    Interlocked.Increment(ref checkedCount);
                    double corner = analysis.SlowSwitchingLimit.OhmsAtOneHertz / analysis.FastSwitchingLimit.Ohms;
                    law(PeriodicSteadyState.Of(analysis, new OperatingPoint(2, 0.3, Math.Max(corner, 0.01) * Math.Pow(10, decades))));
                }
            },
            count: iterations,
            print: x => x.ToString(),
            name: name);
        Assert.True(LawCheck.IsOneCase || checkedCount >= iterations / 5, $"Only {checkedCount} of {iterations} networks had a result.");
    }
}
