using System.Globalization;
using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Sizing;
using ScNet.Devices;
using ScNet.Stress;
using ScNet.Results.Pages;

namespace ScNet.Cli;

/// <summary>The devices that a process offers for the values of a netlist.</summary>
internal static class FileSizes
{
    // stacks look at every change between two modes: the square of them in time and memory
    private const int MaximumModes = 128;

    /// <summary>The netlist's values as devices, or null where no kinds serve or nothing has a result; the reason goes to <paramref name="error"/>.</summary>
    public static SizedConverter? Of(string path, FileAnalysis analysis, double inputVolts, Process process, TextWriter error)
    {
        if (analysis.Converter is not { } converter || !analysis.Modes.Any(m => m.HasResult))
        {
            return null;
        }

        if (converter.Modes.Count > MaximumModes)
        {
            error.WriteLine(Printable.Of(string.Create(
                CultureInfo.InvariantCulture, $"{path}: Expected at most {MaximumModes} modes for --requirement, but '{converter.Name}' has {converter.Modes.Count}. Leave the option out, or some modes.")));
            return null;
        }

        ConverterAnalysis whole = ConverterAnalysis.Of(analysis.Modes[0].Converter);
        return Of(path, ConverterStress.Of(whole, new Interval<double>(inputVolts, inputVolts)), process, error);
    }

    /// <summary>The netlist's values as devices, or null where no kinds serve; the reason goes to <paramref name="error"/>.</summary>
    public static SizedConverter? Of(string path, ConverterStress stress, Process process, TextWriter error)
    {
        try
        {
            return NetlistSizes.Of(stress, process);
        }
        catch (ScNetException refusal)
        {
            foreach (Diagnostic diagnostic in refusal.Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error))
            {
                error.WriteLine(Printable.Of($"{path}: error {diagnostic.Code}: {diagnostic.Message}"));
            }

            return null;
        }
    }
}
