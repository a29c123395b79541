using System.Runtime.CompilerServices;
using CsCheck;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Values many orders apart: time constants from far below to far above every phase.</summary>
[Trait("Kind", "Law")]
public sealed class SpreadLaws
{
    private const double InputVolts = 2;

    private static readonly Gen<double[]> s_decades = Gen.Double[-6, 6].Array[40];

    [Fact]
    public void Elements_dissipate_what_the_source_gives_and_the_load_does_not_get() => Check(800, steady =>
    {
        double expected = steady.OutputImpedanceOhms * steady.Point.LoadCurrentAmperes * steady.Point.LoadCurrentAmperes;
        double elements = OperatedConverters.ElementDissipationWatts(steady);
        Assert.True(Math.Abs(expected - elements) <= 1e-9 * expected, $"Expected {expected:R} W, but got {elements:R} W.");
    });

    [Fact]
    public void Currents_of_closed_switches_follow_from_the_potentials_of_their_nodes() => Check(800, steady =>
    {
        // the charge of one period, as voltage of the smallest capacitor, is rounded too, and so is a current that is small against the load's
        double swing = steady.Point.LoadCurrentAmperes / steady.Point.FrequencyHz
            / steady.Converter.Capacitors.Select(c => c.Farads).DefaultIfEmpty(double.PositiveInfinity).Min();
        double start = 0;
        foreach (Phase phase in steady.Converter.Phases)
        {
            double length = phase.Duty.ToDouble() / steady.Point.FrequencyHz;
            double[] times = [.. new[] { 0, 1e-6, 0.01, 0.3, 0.7, 0.99 }.Select(t => start + (t * length))];
            for (int s = 0; s < steady.Switches.Count; s++)
            {
                Switch element = steady.Converter.Switches[s];
                double?[] first = steady.SampleNodePotential(element.FirstNode, times), second = steady.SampleNodePotential(element.SecondNode, times);
                double[] current = steady.SampleSwitchCurrent(element.Name, times);
                for (int t = 0; t < times.Length && steady.Mode.ClosedPhases[s].Contains(phase.Number); t++)
                {
                    double drop = current[t] * element.Ohms;
                    double scale = Math.Max(InputVolts, Math.Max(Math.Abs(first[t] ?? 0), Math.Abs(second[t] ?? 0))) + (1e-6 * swing)
                        + (1e-3 * element.Ohms * steady.Point.LoadCurrentAmperes);
                    Assert.True(
                        !(Math.Abs((first[t] - second[t] ?? drop) - drop) > 1e-8 * Math.Max(scale, Math.Abs(drop))),
                        $"{element.Name} in phase {phase}, sample {t}: expected {drop:R} V, but got {first[t] - second[t]:R} V.");
                }
            }

            start += length;
        }
    });

    private static void Check(long iterations, Action<PeriodicSteadyState> law, [CallerMemberName] string name = "")
    {
        int checkedCount = 0;
        Gen.Select(Gen.Select(RandomNetworks.Any, s_decades, Spread), Gen.Double[-2, 2]).Holds(
            (sketch, decade) =>
            {
                if (LawSample.Try(sketch).Analysis is { FastSwitchingLimit.Ohms: > 0 } analysis)
                {
                    Interlocked.Increment(ref checkedCount);
                    double corner = analysis.SlowSwitchingLimit.OhmsAtOneHertz / analysis.FastSwitchingLimit.Ohms;
                    double frequencyHz = Math.Max(corner, 1e-6) * Math.Pow(10, decade);
                    double amperes = 0.2 * InputVolts / OutputImpedance.Of(analysis).Ohms(frequencyHz);
                    law(PeriodicSteadyState.Of(analysis, new OperatingPoint(InputVolts, amperes, frequencyHz)));
                }
            },
            count: iterations,
            print: x => x.ToString(),
            name: name);
        Assert.True(LawCheck.IsOneCase || checkedCount >= iterations / 5, $"Only {checkedCount} of {iterations} networks had a result.");
    }

    internal static NetworkSketch Spread(NetworkSketch sketch, double[] decades) => sketch with
    {
        Capacitors = [.. sketch.Capacitors.Select((c, i) => c with { Farads = c.Farads * Power(decades, i) })],
        Switches = [.. sketch.Switches.Select((s, i) => s with { Ohms = s.Ohms * Power(decades, i + 17) })],
    };

    private static double Power(double[] decades, int index) => Math.Pow(10, decades[index % decades.Length]);
}
