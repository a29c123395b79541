using System.CommandLine;
using Fractions;
using ScNet.Analysis;
using ScNet.Results;
using ScNet.Results.Pages;
using ScNet.SteadyState;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet sweep</c>: the output impedance over frequency, or operating points over input voltage, load, duty and frequency, for a plot.</summary>
internal static class SweepCommand
{
    // the figures by which rows can be sorted
    private static readonly IReadOnlyList<string> s_impedance = ResultTable.OfSweep([]).Columns, s_operation = ResultTable.OfOperatingSweep([]).Columns;

    public static Command Create()
    {
        Command command = new("sweep", "Exact output impedance over frequency beside both limits and the published estimates, or operating points over input voltage, load and duty.");
        NetlistSources netlists = NetlistSources.AddTo(command);
        Option<double[]> frequencies = SharedOptions.Frequencies(string.Empty, required: true);
        Option<Fraction[]?> inputs = Values("--input-voltage", "V", "positive numbers of volts (V)", "Input voltages: the rows are operating points then", v => v > 0);
        Option<Fraction[]?> loads = Values("--load-current", "A", "numbers of amperes (A)", "Average currents out of the output node, with --input-voltage", _ => true);
        Option<Fraction[]?> duties = Values("--duty", "D", "numbers between 0 and 1", "Duties of the first phase, the others sharing the rest in their proportion, with --input-voltage", d => d > 0 && d < 1);
        Option<string> mode = SharedOptions.Mode();
        foreach (Option option in new Option[] { frequencies, inputs, loads, duties, mode })
        {
            command.Options.Add(option);
        }

        ResultOutput writer = ResultOutput.Sorting(
            command, [.. SweepPage.ImpedanceColumns, .. SweepPage.OperationColumns], [.. s_impedance.Union(s_operation)], "csv", "json", "text");
        command.Validators.Add(result =>
        {
            bool hasInput = result.GetResult(inputs) is not null, hasLoad = result.GetResult(loads) is not null;
            if (hasInput != hasLoad || (result.GetResult(duties) is not null && !hasInput))
            {
                result.AddError("Expected both --input-voltage and --load-current for operating points, also for --duty; or none of them, for the output impedance.");
            }
            else if (writer.SortKey(result) is { } key && s_impedance.Union(s_operation).Contains(key) && !(hasInput ? s_operation : s_impedance).Contains(key))
            {
                result.AddError($"The column {key} is there {(hasInput ? "without" : "with")} --input-voltage only.");
            }
        });
        command.SetAction(parsed =>
        {
            ToolSession session = ToolSession.Of(parsed);
            double[] frequenciesHz = parsed.GetRequiredValue(frequencies);
            FileAnalysis[] analyses = [.. netlists.Read(parsed).Select(file => FileAnalysis.Of(file, parsed.GetValue(mode), session.Error))];
            foreach (FileAnalysis analysis in analyses)
            {
                analysis.ReportFailures(session.Error);
            }

            bool isComplete = analyses.All(a => a.IsComplete);
            if (parsed.GetValue(inputs) is { Length: > 0 } volts && parsed.GetValue(loads) is { } amperes)
            {
                OperatingPoint[] points = [.. volts.SelectMany(v => amperes.SelectMany(a => frequenciesHz.Select(f => new OperatingPoint(v.ToDouble(), a.ToDouble(), f))))];
                ResultRow<SweptMode>[] rows = Followed(
                    session, analyses, (a, m, error) => OperatingSweep.Rows(a.File.Path, m, parsed.GetValue(duties) is { Length: > 0 } given ? given : null, points, error));
                writer.Write(parsed, () => ResultTable.OfOperatingSweep(rows), rows, SweepPage.Of);
                return isComplete && rows.All(r => r.Result is not null) ? Tool.Success : Tool.Failure;
            }

            ResultRow<ImpedancePoint>[] impedances = Followed(session, analyses, (a, m, error) => Rows(a.File.Path, m, frequenciesHz, error));
            writer.Write(parsed, () => ResultTable.OfSweep(impedances), impedances, SweepPage.Of);
            return isComplete && impedances.All(r => r.Result is not null) ? Tool.Success : Tool.Failure;
        });
        return command;
    }

    // the rows of all modes; a line of the terminal says how many modes are done
    private static ResultRow<T>[] Followed<T>(ToolSession session, FileAnalysis[] analyses, Func<FileAnalysis, ModeOutcome, TextWriter, IEnumerable<ResultRow<T>>> rows)
        where T : class => session.Follow("swept", (progress, error) =>
        {
            double done = 0, all = analyses.Sum(a => a.Modes.Count);
            List<ResultRow<T>> found = [];
            foreach (FileAnalysis analysis in analyses)
            {
                found.AddRange(analysis.File.Reading.HasResult ? [] : [ResultRow.Unreadable<T>(analysis.File.Path, analysis.File.Reading.Diagnostics)]);
                foreach (ModeOutcome mode in analysis.Modes)
                {
                    found.AddRange(rows(analysis, mode, error));
                    progress?.Report(++done / all);
                }
            }

            return found.ToArray();
        });

    private static IEnumerable<ResultRow<ImpedancePoint>> Rows(string path, ModeOutcome mode, double[] frequenciesHz, TextWriter error)
    {
        ResultRow<ImpedancePoint[]> all = FileAnalysis.Row(path, mode, error, found => Array.ConvertAll(frequenciesHz, OutputImpedance.Of(found).At));
        return all.Result is { } points ? points.Select(p => ResultRow.Of(path, mode, p)) : [all.Without<ImpedancePoint>()];
    }

    private static Option<Fraction[]?> Values(string name, string unit, string expected, string purpose, Func<Fraction, bool> isAccepted)
    {
        Option<Fraction[]?> option = new(name)
        {
            Description = $"{purpose}; separated by commas, 1..2 stands for {ValueList.UsualPoints} points, 1..2:5 for 5.",
            HelpName = $"{unit},{unit}|{unit}..{unit}[:POINTS]",
        };
        option.CustomParser = result => ValueList.Parse(result.Tokens.Count > 0 ? result.Tokens[^1].Value : string.Empty, $"{expected} after {name}", isAccepted, result.AddError);
        return option;
    }
}
