using BenchmarkDotNet.Attributes;
using Fractions;
using ScNet.Analysis;
using ScNet.Benchmarks.Baselines;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Benchmarks;

/// <summary>
/// The exact two-port of a four-level stage with its inductor (six intervals), against matrix exponentials of its
/// equations as one writes them down by hand.
/// </summary>
public class InductiveTwoPort
{
    private const double Farads = 10e-6;
    private const double Henries = 1e-6;
    private const double SwitchOhms = 0.01;
    private const double WindingOhms = 0.02;
    private const double FrequencyHz = 1e6;
    private const double Tolerance = 1e-8;

    private readonly ModeAnalysis _analysis = Analyse();
    private readonly FourLevelByHand _byHand = new(0.2, Farads, Henries, (3 * SwitchOhms) + WindingOhms);
    private TwoPort? _twoPort;

    /// <summary>Prepares both ways and makes sure that they give the same numbers.</summary>
    [GlobalSetup]
    public void RequireAgreement()
    {
        _twoPort = SetUp();
        foreach (double f in (double[])[1e4, 1e5, FrequencyHz])
        {
            (double ratio, double ohms) = _byHand.At(f);
            TwoPortPoint point = _twoPort.At(f);

            // written so that a number that is not one fails too
            if (!(Math.Abs(point.Ratio - ratio) <= Tolerance * ratio && Math.Abs(point.Ohms - ohms) <= Tolerance * ohms))
            {
                throw new InvalidOperationException($"Expected {ratio:R} and {ohms:R} at {f:R} Hz, but got {point.Ratio:R} and {point.Ohms:R}.");
            }
        }
    }

    /// <summary>What is done once for all frequencies.</summary>
    [Benchmark]
    public TwoPort SetUp() => SteadyStateModel.Of(_analysis).TwoPort;

    /// <summary>One further frequency.</summary>
    [Benchmark(Baseline = true)]
    public TwoPortPoint Point() => _twoPort!.At(FrequencyHz);

    /// <summary>One frequency with the slowest decay and the capacitor voltages.</summary>
    [Benchmark]
    public double PointWithDecay() => _twoPort!.At(FrequencyHz).DecayPerPeriod;

    /// <summary>One frequency by dense exponentials; the equations are ready.</summary>
    [Benchmark]
    public double MatrixExponentials() => _byHand.At(FrequencyHz).Ohms;

    private static ModeAnalysis Analyse()
    {
        Converter converter = FlyingCapacitorStage.Of(4, new Fraction(1, 5), Farads, Henries, SwitchOhms, WindingOhms);
        return ModeAnalysis.Of(converter, converter.Modes[0]);
    }
}
