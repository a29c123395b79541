using BenchmarkDotNet.Attributes;
using ScNet.Analysis;
using ScNet.Kernel;
using ScNet.Topologies;

namespace ScNet.Benchmarks;

/// <summary>
/// One candidate of a search, built and solved for ratio and the charges of all branches in both phases:
/// series-parallel 5:1 with four capacitors, input and output, thirteen switches and eleven nodes.
/// </summary>
public class CandidateNetworks
{
    private readonly Converter _converter = SeriesParallel.StepDown(5);
    private readonly CandidateNetwork _network = new();
    private readonly CandidateSolver _solver = new();
    private readonly NodePair[] _capacitors;
    private readonly NodePair[] _switches;
    private readonly NetworkPort[] _ports;
    private readonly bool[] _closed;
    private readonly int[] _weights = [1, 1];
    private readonly long[] _charges = new long[12];

    /// <summary>Takes nodes and closed switches from the converter.</summary>
    public CandidateNetworks()
    {
        SwitchedNetwork network = _converter.Network;
        _capacitors = [.. Enumerable.Range(0, network.CapacitorCount).Select(c => new NodePair(network.BranchFirst[c], network.BranchSecond[c]))];
        _switches = [.. Enumerable.Range(0, network.SwitchCount).Select(s => new NodePair(network.SwitchFirst[s], network.SwitchSecond[s]))];
        _ports = ConverterPorts.Of(network.Input, network.Output, LoadKind.Stiff);
        _closed = network.Closed[0];
        if (BuildAndSolve() == 0 || _solver.Voltage(4, 5) is not (1, 5))
        {
            throw new InvalidOperationException($"Expected the ratio 1/5, but got {_solver.Voltage(4, 5)}.");
        }
    }

    /// <summary>The kernel: built from nodes, contracted, loops, elimination, ratio and charges.</summary>
    [Benchmark(Baseline = true)]
    public long BuildAndSolve()
    {
        _network.Wire(_converter.Network.NodeCount, _capacitors, _ports, _switches);
        NetworkStatus status = _solver.Solve(_network, _closed, _weights);
        return status == NetworkStatus.Solved ? _solver.Charges(4, _charges) : 0;
    }

    /// <summary>The loops and the elimination alone, on the network as it is.</summary>
    [Benchmark]
    public bool SolveOnly() => _solver.Solve(_converter.Network, _closed, _weights) == NetworkStatus.Solved;

    /// <summary>The whole analysis of the same network, ready beforehand.</summary>
    [Benchmark]
    public ModeAnalysis Analysis() => ModeAnalysis.Of(_converter, _converter.Modes[0]);
}
