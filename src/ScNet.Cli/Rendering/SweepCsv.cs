using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Cli.Rendering;

/// <summary>Output impedance over frequency as comma-separated values: one header line, one line per file, mode and frequency.</summary>
internal static class SweepCsv
{
    private static readonly (string Header, Func<ImpedancePoint, double> Value)[] s_columns =
    [
        ("hertz", p => p.FrequencyHz),
        ("ohms", p => p.Ohms),
        ("slowOhms", p => p.SlowOhms),
        ("fastOhms", p => p.FastOhms),
        ("rootSumSquareOhms", p => p.RootSumSquareOhms),
        ("norm254Ohms", p => p.Norm254Ohms),
        ("singlePairOhms", p => p.SinglePairOhms),
    ];

    public static void WriteHeader(TextWriter output) =>
        CsvText.WriteLine(output, ["file", "converter", "mode", .. s_columns.Select(c => c.Header)]);

    public static void Write(TextWriter output, string path, ModeAnalysis mode, double[] frequenciesHz)
    {
        OutputImpedance impedance = OutputImpedance.Of(mode);
        foreach (ImpedancePoint point in frequenciesHz.Select(impedance.At))
        {
            CsvText.WriteLine(output, [path, mode.Converter.Name, mode.Mode.Name, .. s_columns.Select(c => CsvText.Number(c.Value(point)))]);
        }
    }
}
