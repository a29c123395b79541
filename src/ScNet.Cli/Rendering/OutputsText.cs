using System.Globalization;
using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.Results.Pages;

namespace ScNet.Cli.Rendering;

/// <summary>The outputs of a mode for people, where there are several.</summary>
internal static class OutputsText
{
    private const double ExampleFrequencyHz = 1e6;

    /// <summary>Writes ratios and both limits; nothing where there is one output.</summary>
    public static void Write(TextWriter output, ModeAnalysis mode)
    {
        if (mode.Converter.FurtherOutputs.Count == 0)
        {
            return;
        }

        OutputMatrices outputs = mode.Outputs;
        string[] names = [.. outputs.Outputs.Select(o => o.Name)];
        output.WriteLine();
        output.WriteLine("  Outputs: ratio in V per V of input; fall of each per ampere drawn at each, slowly (charge sharing at 1 MHz, rising as 1/f below) and fast");
        TextTable table = new TextTable(indent: "  ")
            .Words("name").Words("node").Words("back at").Figures("ratio").Figures(names.Select(n => $"slow {n}")).Figures(names.Select(n => $"fast {n}"));
        for (int i = 0; i < names.Length; i++)
        {
            FurtherOutput? further = i == 0 ? null : mode.Converter.FurtherOutputs[i - 1];
            int row = i;
            table.Row([
                names[i],
                further?.Node ?? mode.Converter.OutputNode,
                further?.ReturnNode ?? Converter.ReferenceNode,
                QuantityText.WithDecimal(outputs.Outputs[i].Ratio),
                .. names.Select((_, k) => Ohms(outputs.ChargeSharing[row, k] / ExampleFrequencyHz)),
                .. names.Select((_, k) => Ohms(outputs.FastSwitchingLimit[row, k])),
            ]);
        }

        table.Write(output);
        foreach (Diagnostic diagnostic in outputs.Diagnostics)
        {
            output.WriteLine(Printable.Of($"  {diagnostic}"));
        }
    }

    /// <summary>Writes the exact figures at some frequencies.</summary>
    public static void Write(TextWriter output, MultiPort ports, double[] frequenciesHz)
    {
        string[] names = [.. ports.Converter.FurtherOutputs.Select(o => o.Name).Prepend(ports.Converter.OutputNode)];
        output.WriteLine();
        output.WriteLine("  Outputs, exact averages: ratio in V per V of input without load, fall of each per ampere drawn at each");
        TextTable table = new TextTable(indent: "  ").Figures("frequency").Words("output").Figures("ratio").Figures("current ratio").Figures(names);
        foreach (MultiPortPoint point in frequenciesHz.Select(ports.At))
        {
            for (int i = 0; i < names.Length; i++)
            {
                int row = i;
                table.Row([
                    EngineeringNumber.Of(point.FrequencyHz, "Hz"),
                    names[i],
                    Plain(point.Ratios[i]),
                    Plain(point.CurrentRatios[i]),
                    .. names.Select((_, k) => Ohms(point.Ohms[row, k])),
                ]);
            }
        }

        table.Write(output);
        foreach (Diagnostic diagnostic in ports.Diagnostics)
        {
            output.WriteLine(Printable.Of($"  {diagnostic}"));
        }
    }

    private static string Ohms(double? ohms) => ohms is { } value ? EngineeringNumber.Of(value, "Ω") : "?";

    private static string Plain(double? value) => value?.ToString("G5", CultureInfo.InvariantCulture) ?? "?";
}
