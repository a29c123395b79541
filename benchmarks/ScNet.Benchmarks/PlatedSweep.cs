using BenchmarkDotNet.Attributes;
using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.Tests.SteadyState;

namespace ScNet.Benchmarks;

/// <summary>
/// The whole two-port of a 10:1 ladder whose 19 capacitors all have bottom plates (20 switches, a load current),
/// against matrix exponentials of the nodal equations, two for every frequency.
/// </summary>
public class PlatedSweep
{
    private const int Levels = 10;
    private const double Tolerance = 1e-8;

    private readonly ModeAnalysis _analysis = Analyse();
    private readonly double[] _frequenciesHz = new double[100];
    private PreparedMode? _prepared;
    private PortOracle? _dense;

    /// <summary>Prepares both ways and makes sure that they give the same numbers.</summary>
    [GlobalSetup]
    public void RequireAgreement()
    {
        _prepared = (PreparedMode)SetUp();
        _dense = new PortOracle(_analysis.Converter, _analysis.Mode);

        // three decades about the corner
        double corner = _analysis.SlowSwitchingLimit.OhmsAtOneHertz / _analysis.FastSwitchingLimit.Ohms;
        for (int k = 0; k < _frequenciesHz.Length; k++)
        {
            _frequenciesHz[k] = corner * Math.Pow(10, (3.0 * k / (_frequenciesHz.Length - 1)) - 1.5);
        }

        foreach (double hertz in _frequenciesHz)
        {
            PortRatios ratios = _prepared.Ratios(1 / hertz);
            PortOracle.Ports ports = _dense.ByExponential(hertz);
            double off = Math.Max(
                Math.Abs(ports.Ohms - _prepared.Ohms(1 / hertz)) / ports.Ohms,
                Math.Max(Math.Abs(ports.Voltage - ratios.Voltage), Math.Abs(ports.Siemens - ratios.InputSiemens) / ports.Siemens));

            // written so that a number that is not one fails too
            if (!(off <= Tolerance))
            {
                throw new InvalidOperationException($"Expected {ports} at {hertz:R} Hz within {Tolerance}, but got {_prepared.Ohms(1 / hertz):R} Ω and {ratios}.");
            }
        }
    }

    /// <summary>What is done once for all frequencies and values: the loops and directions with plates.</summary>
    [Benchmark]
    public object Topology() => FullTopology.Solve(_analysis.Converter, _analysis.Topology);

    /// <summary>What is done once for all frequencies, the topology at hand.</summary>
    [Benchmark]
    public object SetUp() => PreparedMode.Of(_analysis.Converter, _analysis.Topology).WithImpedance();

    /// <summary>All four figures at one further frequency.</summary>
    [Benchmark(Baseline = true)]
    public double Point() => _prepared!.Ohms(1 / _frequenciesHz[50]) + _prepared.Ratios(1 / _frequenciesHz[50]).InputSiemens;

    /// <summary>The same by dense exponentials; the nodal equations are ready.</summary>
    [Benchmark]
    public double MatrixExponentials() => _dense!.ByExponential(_frequenciesHz[50]).Siemens;

    // As Ladder.StepDown builds it, with a dc capacitor on the top rung and one on the output.
    private static ModeAnalysis Analyse()
    {
        static string Rung(int k) => k == 0 ? Converter.ReferenceNode : k == 1 ? "vout" : k == Levels ? "vin" : $"r{k}";
        ConverterBuilder builder = Converter.Create("10:1 ladder").Input("vin").Output("vout", LoadKind.Current);
        CapacitorPlates plates = new(BottomFarads: 3e-8);
        for (int k = 1; k < Levels; k++)
        {
            builder.Capacitor($"fly{k}", $"m{k + 1}", $"m{k}", 1e-6, plates: plates);
        }

        for (int k = 1; k <= Levels; k++)
        {
            builder.Capacitor($"dc{k}", Rung(k), Rung(k - 1), 1e-6, plates: Rung(k - 1) == Converter.ReferenceNode ? null : plates)
                .Switch($"down{k}", $"m{k}", Rung(k - 1), on: 2, 0.1).Switch($"up{k}", Rung(k), $"m{k}", on: 1, 0.1);
        }

        Converter converter = builder.Build();
        return ModeAnalysis.Of(converter, converter.Modes[0]);
    }
}
