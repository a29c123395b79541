using BenchmarkDotNet.Attributes;
using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Benchmarks;

/// <summary>An operating point and all sensitivities of ladders of growing size; the last column shows how the time grows.</summary>
[GrowthColumn]
public class SteadyStateScale
{
    private ModeAnalysis? _analysis;
    private double _frequencyHz;

    /// <summary>The number of levels n: 2n - 3 capacitors and 2n switches.</summary>
    [Params(10, 30, 100)]
    public int Levels { get; set; }

    /// <summary>Analyses the ladder.</summary>
    [GlobalSetup]
    public void Build()
    {
        Converter converter = Ladder.StepDown(Levels);
        _analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
        _frequencyHz = OutputImpedance.Of(_analysis).CornerFrequencyHz;
    }

    /// <summary>Output, powers and dissipation.</summary>
    [Benchmark]
    public double Dissipation() => Point().DissipationWatts;

    /// <summary>Every figure of every element.</summary>
    [Benchmark]
    public int Elements()
    {
        PeriodicSteadyState steady = Point();
        return steady.Switches.Count + steady.Capacitors.Count;
    }

    /// <summary>Every derivative of the impedance.</summary>
    [Benchmark]
    public ImpedanceSensitivity Sensitivities() => ImpedanceSensitivity.Of(_analysis!, _frequencyHz);

    private PeriodicSteadyState Point() => PeriodicSteadyState.Of(_analysis!, new OperatingPoint(10, 0.01, _frequencyHz));
}
