using BenchmarkDotNet.Attributes;
using ScNet.Analysis;
using ScNet.Kernel;
using ScNet.Reconfiguration;

namespace ScNet.Benchmarks;

/// <summary>All gate patterns of nine switches and two capacitors in two phases: 4^9 = 262,144.</summary>
public class GatePatterns
{
    private const int SampleSize = 4096;

    private readonly Converter _converter = Gears();
    private readonly Converter[] _sample;
    private readonly LoopSet[] _sampleLoops;

    /// <summary>Draws a sample of patterns for the one-by-one baseline.</summary>
    public GatePatterns()
    {
        Random random = new(1);
        _sample = [.. Enumerable.Range(0, SampleSize).Select(_ => _converter.WithModes(
            ("pattern", [.. _converter.Switches.Select(_ => (PhaseSet)(random.Next(4) switch { 0 => [], 1 => [1], 2 => [2], _ => [1, 2] }))])))];
        _sampleLoops = [.. _sample.Select(c => LoopSet.Of(
            c.Network, [PhaseForest.Of(c.Network, c.Network.ClosedIn(0, 0)), PhaseForest.Of(c.Network, c.Network.ClosedIn(0, 1))]))];
    }

    /// <summary>The search by classes, every pattern accounted for.</summary>
    [Benchmark(Baseline = true)]
    public ReachableRatios ByClasses() => ReachableRatios.Of(_converter);

    /// <summary>A sixty-fourth of the patterns analysed one by one on one core: multiply by 64 for all of them.</summary>
    [Benchmark]
    public int OneByOneOneSixtyFourth() => _sample.Count(c => ModeAnalysis.Try(c, c.Modes[0]).HasResult);

    /// <summary>Only the eliminations of these patterns, on loops found beforehand: the least that one by one could cost.</summary>
    [Benchmark]
    public int EliminationsOneSixtyFourth()
    {
        int converters = 0;
        for (int i = 0; i < _sample.Length; i++)
        {
            converters += LoopSolution<long>.Of(_sample[i].Network, _sampleLoops[i]).IsOutputFixed ? 1 : 0;
        }

        return converters;
    }

    // Two capacitors that nine switches put in series, in parallel or one above the other.
    private static Converter Gears()
    {
        (string First, string Second)[] places =
        [
            ("vin", "p"), ("p", "vout"), ("n", "vout"), ("n", "gnd"), ("n", "q"), ("vin", "q"), ("q", "vout"), ("m", "vout"), ("m", "gnd"),
        ];
        ConverterBuilder builder = Converter.Create("Gears").Input("vin").Output("vout").Capacitor("fly1", "p", "n").Capacitor("fly2", "q", "m");
        for (int s = 0; s < places.Length; s++)
        {
            builder.Switch($"s{s + 1}", places[s].First, places[s].Second);
        }

        return builder.Build();
    }
}
