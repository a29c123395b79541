using BenchmarkDotNet.Attributes;
using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Benchmarks;

/// <summary>The exact output impedance of ladders of growing size; the last column shows how its time grows.</summary>
[GrowthColumn]
public class ImpedanceScale
{
    private ModeAnalysis? _analysis;
    private OutputImpedance? _impedance;
    private double _frequencyHz;

    /// <summary>The number of levels n: 2n - 3 capacitors and 2n switches.</summary>
    [Params(10, 50, 200)]
    public int Levels { get; set; }

    /// <summary>Analyses the ladder.</summary>
    [GlobalSetup]
    public void Build()
    {
        Converter converter = Ladder.StepDown(Levels);
        _analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
        _impedance = SetUp();
        _frequencyHz = _impedance.CornerFrequencyHz;
    }

    /// <summary>What is done once for all frequencies.</summary>
    [Benchmark]
    public OutputImpedance SetUp() => OutputImpedance.Of(_analysis!);

    /// <summary>One further frequency.</summary>
    [Benchmark]
    public double Point() => _impedance!.Ohms(_frequencyHz);
}
