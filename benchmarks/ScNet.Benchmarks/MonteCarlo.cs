using BenchmarkDotNet.Attributes;
using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Benchmarks;

/// <summary>Tolerances of a 3:1 ladder: the exact impedance of ten thousand samples at one frequency, on all cores.</summary>
public class MonteCarlo
{
    private const int SampleCount = 10_000;

    private readonly ModeAnalysis _analysis;
    private readonly double _frequencyHz;
    private readonly ComponentTolerances _tolerances = new(capacitance: 0.2, onResistance: 0.3);

    /// <summary>Analyses the ladder once.</summary>
    public MonteCarlo()
    {
        Converter ladder = Ladder.StepDown(3, farads: 1e-9);
        _analysis = ModeAnalysis.Of(ladder, ladder.Modes[0]);
        _frequencyHz = OutputImpedance.Of(_analysis).CornerFrequencyHz;
    }

    /// <summary>All samples.</summary>
    [Benchmark(Baseline = true)]
    public ImpedanceDistribution TenThousandSamples() =>
        ImpedanceTolerance.MonteCarlo(_analysis, _frequencyHz, _tolerances, SampleCount, seed: 1);

    /// <summary>One analysis of the sensitivities instead.</summary>
    [Benchmark]
    public ImpedanceSensitivity Sensitivities() => ImpedanceSensitivity.Of(_analysis, _frequencyHz);
}
