using System.CommandLine;
using ScNet.Derivations.Pages;
using ScNet.Results;
using ScNet.Results.Pages;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet formulas</c>: results as expressions in the names of the elements.</summary>
internal static class FormulasCommand
{
    public static Command Create()
    {
        Command command = new("formulas", "Ratio, both limits, losses and voltages as closed forms in the names of the elements.");
        NetlistSources netlists = NetlistSources.AddTo(command);
        Option<bool> equal = new("--equal") { Description = "Counts all capacitors as equal, and all switches, and collects like terms." };
        Option<bool> duties = new("--duties") { Description = "Adds ratio, capacitor voltages and inductor currents as functions of the duties of the phases." };
        Option<string> mode = SharedOptions.Mode();
        Option<string> format = SharedOptions.Format("text", "latex", "mathml", "json", "csv");
        foreach (Option option in new Option[] { equal, duties, mode, format })
        {
            command.Options.Add(option);
        }

        command.SetAction(parsed =>
        {
            ToolSession session = ToolSession.Of(parsed);
            TextWriter output = session.Output, error = session.Error;
            List<ResultRow<FormulaList>> rows = [];
            bool isComplete = true;
            foreach (NetlistFile file in netlists.Read(parsed))
            {
                FileAnalysis analysis = FileAnalysis.Of(file, parsed.GetValue(mode), error);
                analysis.ReportFailures(error);
                isComplete &= analysis.IsKnown;
                rows.AddRange(file.Reading.HasResult
                    ? analysis.Modes.Select(m => FileAnalysis.Row(file.Path, m, error, found => new FormulaList(
                        Formula.Of(found, parsed.GetValue(equal)), parsed.GetValue(duties) ? Formula.OfDuties(found) : [])))
                    : [ResultRow.Unreadable<FormulaList>(file.Path, file.Reading.Diagnostics)]);
            }

            switch (parsed.GetValue(format))
            {
                case "json":
                    output.WriteLine(DerivationTables.OfFormulas(rows).ToJson());
                    break;
                case "csv":
                    output.Write(DerivationTables.OfFormulas(rows).ToCsv());
                    break;
                case "latex":
                    WriteLatex(output, rows);
                    break;
                case "mathml":
                    foreach (Formula formula in rows.SelectMany(r => r.Result is { } list ? list.Formulas.Concat(list.OfDuties) : []).Where(f => f.Text is not null))
                    {
                        output.WriteLine(formula.MathML);
                    }

                    break;
                default:
                    foreach (Page page in rows.Where(r => r.Result is not null)
                        .Select(r => FormulaPage.Of(r.File, r.Outcome!.Converter, r.Outcome.Mode, r.Result!)))
                    {
                        session.Write(page);
                    }
                    break;
            }

            return isComplete && rows.All(r => r.Result is not null) ? Tool.Success : Tool.Failure;
        });
        return command;
    }

    // a display of amsmath for each mode, so that a document can input the file
    private static void WriteLatex(TextWriter output, IEnumerable<ResultRow<FormulaList>> rows)
    {
        foreach (ResultRow<FormulaList> row in rows.Where(r => r.Result is not null))
        {
            output.WriteLine(Printable.Of($"% {row.Outcome!.Converter.Name} ({row.File}), mode {row.Outcome.Mode}"));
            output.WriteLine("\\begin{gather*}");
            output.WriteLine("  " + string.Join(" \\\\\n  ", row.Result!.Formulas.Concat(row.Result.OfDuties).Where(f => f.Text is not null).Select(f => f.Latex)));
            output.WriteLine("\\end{gather*}");
        }
    }
}
