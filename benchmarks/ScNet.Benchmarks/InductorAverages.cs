using BenchmarkDotNet.Attributes;
using Fractions;
using ScNet.Analysis;
using ScNet.Topologies;

namespace ScNet.Benchmarks;

/// <summary>Averages of an eleven-level stage with its inductor, beside a ladder of about as many elements.</summary>
public class InductorAverages
{
    private readonly Converter _ladder = Ladder.StepDown(10, farads: 1e-6, ohms: 0.1);
    private readonly Converter _stage = Stage(11);

    /// <summary>A ladder of 17 capacitors and 20 switches in two phases.</summary>
    [Benchmark(Baseline = true)]
    public ModeAnalysis LadderOfTen() => ModeAnalysis.Of(_ladder, _ladder.Modes[0]);

    /// <summary>Nine flying capacitors, 20 switches and 20 phases, balanced as far as ripple does.</summary>
    [Benchmark]
    public ModeAnalysis ElevenLevels() => ModeAnalysis.Of(_stage, _stage.Modes[0]);

    private static Converter Stage(int levels)
    {
        int pairs = levels - 1;
        Fraction on = new(1, 2 * pairs);
        ConverterBuilder builder = Converter.Create("levels").Input("vin").Output("vout").Duties([.. Enumerable.Repeat(on, 2 * pairs)]);
        for (int k = 1; k <= pairs; k++)
        {
            int own = (2 * k) - 1;
            builder.Switch($"u{k}", k == 1 ? "vin" : $"t{k - 1}", k == pairs ? "x" : $"t{k}", on: own);
            builder.Switch($"d{k}", k == 1 ? "gnd" : $"b{k - 1}", k == pairs ? "x" : $"b{k}", on: [.. Enumerable.Range(1, 2 * pairs).Where(j => j != own)]);
            if (k < pairs)
            {
                builder.Capacitor($"fly{k}", $"t{k}", $"b{k}");
            }
        }

        return builder.Inductor("coil", "x", "vout").Build();
    }
}
