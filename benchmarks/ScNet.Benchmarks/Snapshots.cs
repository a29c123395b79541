using BenchmarkDotNet.Attributes;
using ScNet.Analysis;
using ScNet.Derivations;
using ScNet.Topologies;

namespace ScNet.Benchmarks;

/// <summary>A snapshot of a 10:1 ladder beside the analysis that it is taken from.</summary>
public class Snapshots
{
    private readonly Converter _converter = Ladder.StepDown(10);
    private readonly ConverterAnalysis _analysis = ConverterAnalysis.Of(Ladder.StepDown(10));

    /// <summary>The analysis alone.</summary>
    [Benchmark(Baseline = true)]
    public ConverterAnalysis Analysis() => ConverterAnalysis.Of(_converter);

    /// <summary>The snapshot of an analysis that is there.</summary>
    [Benchmark]
    public AnalysisSnapshot Taken() => AnalysisSnapshot.Of(_analysis);

    /// <summary>The same snapshot written as a document and read again.</summary>
    [Benchmark]
    public AnalysisSnapshot WrittenAndRead() => AnalysisSnapshot.Parse(AnalysisSnapshot.Of(_analysis).ToJson());
}
