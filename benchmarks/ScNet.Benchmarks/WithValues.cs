using BenchmarkDotNet.Attributes;
using ScNet.Analysis;
using ScNet.Topologies;

namespace ScNet.Benchmarks;

/// <summary>A second analysis of a 10:1 ladder, with other component values.</summary>
public class WithValues
{
    private readonly ModeAnalysis _first;
    private readonly Converter _other;

    /// <summary>Makes the first analysis and the converter with other values.</summary>
    public WithValues()
    {
        Converter converter = Ladder.StepDown(10);
        _first = ModeAnalysis.Of(converter, converter.Modes[0]);
        _other = converter.WithValues(
            farads: [.. converter.Capacitors.Select((_, i) => 1e-6 * (i + 1))],
            ohms: [.. converter.Switches.Select((_, s) => 0.1 * (s + 1))]);
    }

    /// <summary>With what topology decides taken from the first.</summary>
    [Benchmark(Baseline = true)]
    public ModeAnalysis FromTheFirst() => _first.WithValuesOf(_other);

    /// <summary>From the beginning.</summary>
    [Benchmark]
    public ModeAnalysis Afresh() => ModeAnalysis.Of(_other, _other.Modes[0]);
}
