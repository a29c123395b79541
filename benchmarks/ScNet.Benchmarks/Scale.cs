using BenchmarkDotNet.Attributes;
using ScNet.Analysis;
using ScNet.Topologies;

namespace ScNet.Benchmarks;

/// <summary>One analysis of ladders of growing size; the last column shows how its time grows.</summary>
[GrowthColumn]
public class Scale
{
    private Converter? _converter;

    /// <summary>The number of levels n: 2n - 3 capacitors and 2n switches.</summary>
    [Params(10, 100, 1000)]
    public int Levels { get; set; }

    /// <summary>Builds the ladder.</summary>
    [GlobalSetup]
    public void Build() => _converter = Ladder.StepDown(Levels);

    /// <summary>The library.</summary>
    [Benchmark]
    public ModeAnalysis Exact() => ModeAnalysis.Of(_converter!, _converter!.Modes[0]);
}
