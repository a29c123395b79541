using BenchmarkDotNet.Attributes;
using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Benchmarks;

/// <summary>Different cells side by side on a stiff output, half of them a phase later; the last column shows how the time grows.</summary>
[GrowthColumn]
public class SteadyStateOfCells
{
    private ModeAnalysis? _analysis;

    /// <summary>The number of cells, each of one capacitor and four switches.</summary>
    [Params(20, 200, 2000)]
    public int Cells { get; set; }

    /// <summary>Analyses the converter.</summary>
    [GlobalSetup]
    public void Build()
    {
        ConverterBuilder builder = Converter.Create("Cells").Input("vin").Output("vout");
        for (int k = 0; k < Cells; k++)
        {
            int charge = 1 + (k % 2), discharge = 3 - charge;
            double ohms = 1 + (0.1 * (k % 7));
            builder.Capacitor($"fly{k}", $"p{k}", $"n{k}", farads: 1e-9 * (1 + (0.1 * (k % 5))))
                .Switch($"a{k}", "vin", $"p{k}", charge, ohms).Switch($"b{k}", $"n{k}", "vout", charge, ohms)
                .Switch($"c{k}", $"p{k}", "vout", discharge, ohms).Switch($"d{k}", $"n{k}", "gnd", discharge, ohms);
        }

        Converter converter = builder.Build();
        _analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
    }

    /// <summary>The impedance at one frequency, everything prepared anew.</summary>
    [Benchmark]
    public double Impedance() => OutputImpedance.Of(_analysis!).Ohms(1e8);

    /// <summary>Every figure of every element.</summary>
    [Benchmark]
    public int Elements()
    {
        PeriodicSteadyState steady = PeriodicSteadyState.Of(_analysis!, new OperatingPoint(2, 0.01, 1e8));
        return steady.Switches.Count + steady.Capacitors.Count;
    }

    /// <summary>Every derivative of the impedance.</summary>
    [Benchmark]
    public ImpedanceSensitivity Sensitivities() => ImpedanceSensitivity.Of(_analysis!, 1e8);
}
