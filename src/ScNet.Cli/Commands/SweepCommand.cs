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
        Command command = new("sweep", "Exact output impedance over frequency beside both limits and the published estimates.");
        NetlistSources netlists = NetlistSources.AddTo(command);
        Option<double[]> frequencies = SharedOptions.Frequencies(string.Empty, required: true);
        Option<string> mode = SharedOptions.Mode();
        Option<string> format = SharedOptions.Format("csv", "json");
        command.Options.Add(frequencies);
        command.Options.Add(mode);
        command.Options.Add(format);
        command.SetAction(parsed =>
        {
            TextWriter output = parsed.InvocationConfiguration.Output, error = parsed.InvocationConfiguration.Error;
            double[] frequenciesHz = parsed.GetRequiredValue(frequencies);
            FileAnalysis[] analyses = [.. netlists.Read(parsed)
                .Select(file => FileAnalysis.Of(file, parsed.GetValue(mode), error))];
            foreach (FileAnalysis analysis in analyses)
            {
                analysis.ReportFailures(error);
            }

            ResultRow<ImpedancePoint>[] rows = [.. analyses.SelectMany(a => Rows(a, frequenciesHz, error))];
            ResultTable table = ResultTable.OfSweep(rows);
            if (parsed.GetValue(format) == "json")
            {
                output.WriteLine(table.ToJson());
            }
            else
            {
                output.Write(table.ToCsv());
            }

            return analyses.All(a => a.IsComplete) && rows.All(r => r.Result is not null) ? Tool.Success : Tool.Failure;
        });
        return command;
    }

    private static IEnumerable<ResultRow<ImpedancePoint>> Rows(FileAnalysis analysis, double[] frequenciesHz, TextWriter error) => analysis.File.Reading.HasResult
        ? analysis.Modes.SelectMany(m => Rows(analysis.File.Path, m, frequenciesHz, error))
        : [ResultRow.Unreadable<ImpedancePoint>(analysis.File.Path, analysis.File.Reading.Diagnostics)];

    private static IEnumerable<ResultRow<ImpedancePoint>> Rows(string path, ModeOutcome mode, double[] frequenciesHz, TextWriter error)
    {
        ResultRow<ImpedancePoint[]> all = FileAnalysis.Row(path, mode, error, found => Array.ConvertAll(frequenciesHz, OutputImpedance.Of(found).At));
        return all.Result is { } points ? points.Select(p => ResultRow.Of(path, mode, p)) : [all.Without<ImpedancePoint>()];
    }
}
