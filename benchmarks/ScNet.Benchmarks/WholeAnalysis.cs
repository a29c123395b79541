using BenchmarkDotNet.Attributes;
using ScNet.Analysis;
using ScNet.Benchmarks.Baselines;
using ScNet.Topologies;

namespace ScNet.Benchmarks;

/// <summary>
/// One analysis of a 10:1 ladder (17 capacitors, 20 switches) against the same equations written
/// densely: by null space, and by the quickest dense solution.
/// </summary>
public class WholeAnalysis
{
    private const double Tolerance = 1e-9;

    private readonly Converter _converter = Ladder.StepDown(10, farads: 1e-6, ohms: 0.1);
    private DenseNetwork? _network;

    /// <summary>Prepares the dense network and makes sure that all three give the same numbers.</summary>
    [GlobalSetup]
    public void RequireAgreement()
    {
        _network = DenseNetwork.Of(_converter, _converter.Modes[0]);
        ModeAnalysis expected = Exact();
        Agreement.Require(expected, DenseNullSpace(), Tolerance);
        Agreement.Require(expected, DenseSolution(), Tolerance);
    }

    /// <summary>The library; the ratios say how many times as long the others take.</summary>
    [Benchmark(Baseline = true)]
    public ModeAnalysis Exact() => ModeAnalysis.Of(_converter, _converter.Modes[0]);

    /// <summary>The charge flow as the null space of a dense matrix, by singular values.</summary>
    [Benchmark]
    public DenseAnalysis DenseNullSpace() => DenseAnalysis.ByNullSpace(_network!);

    /// <summary>The charge flow as the solution of a dense system that fixes the output charge.</summary>
    [Benchmark]
    public DenseAnalysis DenseSolution() => DenseAnalysis.BySolution(_network!);
}
