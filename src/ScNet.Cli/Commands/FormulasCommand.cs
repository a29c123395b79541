using System.CommandLine;
using ScNet.Derivations.Pages;
using ScNet.Results;

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
        const string latex = "latex", mathml = "mathml";
        foreach (Option option in new Option[] { equal, duties, mode })
        {
            command.Options.Add(option);
        }

        ResultOutput writer = ResultOutput.AddTo(command, "text", latex, mathml, "json", "csv");
        command.SetAction(parsed =>
        {
            ToolSession session = ToolSession.Of(parsed);
            TextWriter error = session.Error;
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

            bool isWritten = writer.Write(
                parsed,
                () => DerivationTables.OfFormulas(rows),
                rows.Where(r => r.Result is not null).Select(r => FormulaPage.Of(r.File, r.Outcome!.Converter, r.Outcome.Mode, r.Result!)));
            if (!isWritten && writer.Form(parsed) == latex)
            {
                WriteLatex(session.Output, rows);
            }
            else if (!isWritten)
            {
                WriteMathML(session.Output, rows);
            }

            return isComplete && rows.All(r => r.Result is not null) ? Tool.Success : Tool.Failure;
        });
        return command;
    }

    private static void WriteMathML(TextWriter output, IEnumerable<ResultRow<FormulaList>> rows)
    {
        foreach (Formula formula in rows.SelectMany(r => r.Result is { } list ? list.Formulas.Concat(list.OfDuties) : []).Where(f => f.Text is not null))
        {
            output.WriteLine(formula.MathML);
        }
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
