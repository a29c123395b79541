using BenchmarkDotNet.Attributes;
using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.Tests.SteadyState;

namespace ScNet.Benchmarks;

/// <summary>
/// The exact output impedance of a 10:1 ladder (19 capacitors, 20 switches, a load current) at a thousand
/// frequencies, against matrix exponentials of the nodal equations, two for every frequency.
/// </summary>
public class ImpedanceSweep
{
    private const int Levels = 10;
    private const double Tolerance = 1e-8;

    private readonly ModeAnalysis _analysis = Analyse();
    private readonly double[] _frequenciesHz = new double[1000];
    private readonly double[] _ohms = new double[1000];
    private OutputImpedance? _impedance;
    private PeriodicOracle? _dense;

    /// <summary>Prepares both ways and makes sure that they give the same numbers.</summary>
    [GlobalSetup]
    public void RequireAgreement()
    {
        _impedance = OutputImpedance.Of(_analysis);
        _dense = PeriodicOracle.Of(_analysis);

        // three decades about the corner
        for (int k = 0; k < _frequenciesHz.Length; k++)
        {
            _frequenciesHz[k] = _impedance.CornerFrequencyHz * Math.Pow(10, (3.0 * k / (_frequenciesHz.Length - 1)) - 1.5);
        }

        double[] exact = [.. Sweep()], dense = [.. MatrixExponentials()];
        for (int k = 0; k < exact.Length; k++)
        {
            // written so that a number that is not one fails too
            if (!(Math.Abs(dense[k] - exact[k]) <= Tolerance * exact[k]))
            {
                throw new InvalidOperationException($"Expected {exact[k]:R} at {_frequenciesHz[k]:R} Hz within {Tolerance}, but got {dense[k]:R}.");
            }
        }
    }

    /// <summary>What is done once for all frequencies.</summary>
    [Benchmark]
    public OutputImpedance SetUp() => OutputImpedance.Of(_analysis);

    /// <summary>One further frequency.</summary>
    [Benchmark]
    public double Point() => _impedance!.Ohms(_frequenciesHz[500]);

    /// <summary>Set-up and a thousand frequencies.</summary>
    [Benchmark(Baseline = true)]
    public double[] Sweep()
    {
        OutputImpedance.Of(_analysis).Sweep(_frequenciesHz, _ohms);
        return _ohms;
    }

    /// <summary>The same thousand frequencies by dense exponentials; the nodal equations are ready.</summary>
    [Benchmark]
    public double[] MatrixExponentials()
    {
        for (int k = 0; k < _frequenciesHz.Length; k++)
        {
            _ohms[k] = _dense!.ByExponential(_frequenciesHz[k]);
        }

        return _ohms;
    }

    // As Ladder.StepDown builds it, with a dc capacitor on the top rung and one on the output.
    private static ModeAnalysis Analyse()
    {
        static string Rung(int k) => k == 0 ? Converter.ReferenceNode : k == 1 ? "vout" : k == Levels ? "vin" : $"r{k}";
        ConverterBuilder builder = Converter.Create("10:1 ladder").Input("vin").Output("vout", LoadKind.Current);
        for (int k = 1; k < Levels; k++)
        {
            builder.Capacitor($"fly{k}", $"m{k + 1}", $"m{k}", 1e-6);
        }

        for (int k = 1; k <= Levels; k++)
        {
            builder.Capacitor($"dc{k}", Rung(k), Rung(k - 1), 1e-6)
                .Switch($"down{k}", $"m{k}", Rung(k - 1), on: 2, 0.1).Switch($"up{k}", Rung(k), $"m{k}", on: 1, 0.1);
        }

        Converter converter = builder.Build();
        return ModeAnalysis.Of(converter, converter.Modes[0]);
    }
}
