using BenchmarkDotNet.Attributes;
using ScNet.Analysis;
using ScNet.Stress;
using ScNet.Topologies;

namespace ScNet.Benchmarks;

/// <summary>Stress of a binary converter of n capacitors in all its 2ⁿ - 1 modes, one change, and all changes; the last column shows how their time grows with the modes.</summary>
[GrowthColumn]
public class StressOfModes
{
    private ConverterAnalysis? _analysis;

    /// <summary>The number of modes, 2ⁿ - 1.</summary>
    [Params(7, 15, 31)]
    public int Modes { get; set; }

    /// <summary>Analyses the converter.</summary>
    [GlobalSetup]
    public void Build() => _analysis = ConverterAnalysis.Of(BinaryConverter.Reconfigurable((int)Math.Log2(Modes + 1)));

    /// <summary>The stress in every mode.</summary>
    [Benchmark]
    public ConverterStress InModes() => ConverterStress.Of(_analysis!, new Interval<double>(1, 1));

    /// <summary>The same, and one change.</summary>
    [Benchmark]
    public ModeChange OneChange() => InModes().Changes[0];

    /// <summary>The same, and every change.</summary>
    [Benchmark]
    public IReadOnlyList<SwitchStress> AllChanges() => InModes().SwitchesAtChanges;
}
