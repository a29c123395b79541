using System.CommandLine;
using ScNet.Analysis;
using ScNet.Results;
using ScNet.SteadyState;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet sweep</c>: the output impedance over frequency for a plot.</summary>
internal static class SweepCommand
{
    public static Command Create()
    {
        Argument<string[]> files = SharedOptions.Files();
        Option<double[]> frequencies = SharedOptions.Frequencies(string.Empty, required: true);
        Option<string> mode = SharedOptions.Mode();
        Option<string> format = SharedOptions.Format("csv", "json");
        Command command = new("sweep", "Exact output impedance over frequency beside both limits and the published estimates.")
        {
            files, frequencies, mode, format,
        };
        command.SetAction(parsed =>
        {
            TextWriter output = parsed.InvocationConfiguration.Output, error = parsed.InvocationConfiguration.Error;
            double[] frequenciesHz = parsed.GetRequiredValue(frequencies);
            FileAnalysis[] analyses = [.. parsed.GetRequiredValue(files)
                .Select(path => FileAnalysis.Of(NetlistFile.Read(path, error), parsed.GetValue(mode), error))];
            foreach (FileAnalysis analysis in analyses)
            {
                analysis.ReportFailures(error);
            }

            ResultTable table = SweepTable.Of(analyses.SelectMany(a => Rows(a, frequenciesHz)));
            if (parsed.GetValue(format) == "json")
            {
                output.WriteLine(table.ToJson());
            }
            else
            {
                output.Write(table.ToCsv());
            }

            return analyses.All(a => a.IsComplete) ? Tool.Success : Tool.Failure;
        });
        return command;
    }

    private static IEnumerable<ResultRow<ImpedancePoint>> Rows(FileAnalysis analysis, double[] frequenciesHz) => analysis.File.Reading.HasResult
        ? analysis.Modes.SelectMany(m => Rows(analysis.File.Path, m, frequenciesHz))
        : [ResultRow.Unreadable<ImpedancePoint>(analysis.File.Path, analysis.File.Reading.Diagnostics)];

    private static IEnumerable<ResultRow<ImpedancePoint>> Rows(string path, ModeOutcome mode, double[] frequenciesHz)
    {
        if (mode.Analysis is not { } found)
        {
            return [ResultRow.Of<ImpedancePoint>(path, mode, null)];
        }

        OutputImpedance impedance = OutputImpedance.Of(found);
        return frequenciesHz.Select(f => ResultRow.Of(path, mode, impedance.At(f)));
    }
}
