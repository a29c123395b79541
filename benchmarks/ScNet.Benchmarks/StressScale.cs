using BenchmarkDotNet.Attributes;
using ScNet.Analysis;
using ScNet.Devices;
using ScNet.Stress;
using ScNet.Topologies;

namespace ScNet.Benchmarks;

/// <summary>Stress, ratings and gate drive of ladders of growing size at 0.9 V to 1 V a rung; the last column shows how their time grows.</summary>
[GrowthColumn]
public class StressScale
{
    private static readonly RatingLimits s_limits = new() { Switch = DemoDevices.NType1V2, Capacitor = DemoDevices.Plate3V6 };

    private ConverterAnalysis? _analysis;
    private ConverterRatings? _ratings;

    /// <summary>The number of levels n: 2n - 3 capacitors and 2n switches.</summary>
    [Params(50, 200, 1000)]
    public int Levels { get; set; }

    /// <summary>Analyses and rates the ladder.</summary>
    [GlobalSetup]
    public void Build()
    {
        _analysis = ConverterAnalysis.Of(Ladder.StepDown(Levels));
        _ratings = Ratings();
    }

    /// <summary>What every element withstands.</summary>
    [Benchmark]
    public ConverterStress Stress() => ConverterStress.Of(_analysis!, new Interval<double>(0.9 * Levels, Levels));

    /// <summary>The same against devices.</summary>
    [Benchmark]
    public ConverterRatings Ratings() => ConverterRatings.Of(Stress(), s_limits);

    /// <summary>The gate levels and supplies of every switch, ratings ready.</summary>
    [Benchmark]
    public ConverterGateDrive GateDrive() => ConverterGateDrive.Of(_ratings!);
}
