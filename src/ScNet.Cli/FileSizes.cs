using System.Globalization;
using ScNet.Analysis;
using ScNet.Design;
using ScNet.Design.Losses;
using ScNet.Design.Sizing;
using ScNet.Devices;
using ScNet.SteadyState;
using ScNet.Stress;

namespace ScNet.Cli;

/// <summary>The devices that a process offers for the values of a netlist.</summary>
internal static class FileSizes
{
    // stacks look at every change between two modes: the square of them in time and memory
    private const int MaximumModes = 128;

    /// <summary>The netlist's values as the devices that lose least at an operating point, or null where no kinds serve or nothing has a result; the reason goes to <paramref name="error"/>.</summary>
    public static SizedConverter? Of(string path, FileAnalysis analysis, OperatingPoint point, Process process, TextWriter error) => Find(path, analysis, error, whole =>
    {
        // dead times leave everything floating: what the elements withstand is that of the netlist
        SizedConverter sized = NetlistSizes.Of(
            ConverterStress.Of(whole, new Interval<double>(point.InputVoltageVolts, point.InputVoltageVolts)), process, point);
        return ReferenceEquals(analysis.Modes[0].Converter, whole.Converter) ? sized : sized.Of(analysis.Modes[0].Converter);
    });

    /// <summary>The netlist's values as devices of the least area, or null where no kinds serve; the reason goes to <paramref name="error"/>.</summary>
    public static SizedConverter? Of(string path, ConverterStress stress, Process process, TextWriter error) =>
        Guarded(path, error, () => NetlistSizes.Of(stress, process));

    /// <summary>The same for the values at the totals of a comparison.</summary>
    public static SizedConverter? AtTotals(string path, FileAnalysis analysis, ComparisonConditions conditions, double loadAmperes, Process process, TextWriter error) =>
        Find(path, analysis, error, whole => NetlistSizes.AtTotals(whole, conditions, loadAmperes, process));

    private static SizedConverter? Find(string path, FileAnalysis analysis, TextWriter error, Func<ConverterAnalysis, SizedConverter> find)
    {
        if (analysis.Converter is not { } converter || analysis.Modes.Count == 0)
        {
            return null;
        }

        if (converter.Modes.Count > MaximumModes)
        {
            error.WriteLine(Printable.Of(string.Create(
                CultureInfo.InvariantCulture, $"{path}: Expected at most {MaximumModes} modes for --requirement, but '{converter.Name}' has {converter.Modes.Count}. Leave the option out, or some modes.")));
            return null;
        }

        ConverterAnalysis whole = ConverterAnalysis.Of(converter);
        if (!whole.Results.Any())
        {
            error.WriteLine(Printable.Of($"{path}: Expected a mode with a result, from whose voltages devices follow, for --requirement. Give dead times by --dead-time instead of as phases."));
            return null;
        }

        return Guarded(path, error, () => find(whole));
    }

    private static SizedConverter? Guarded(string path, TextWriter error, Func<SizedConverter> find)
    {
        try
        {
            return find();
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
