using System.CommandLine;
using ScNet.Design.Choice;
using ScNet.Results;
using ScNet.Results.Pages;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet design</c>: from a requirement to the converter that wastes least, all candidates ranked with reasons.</summary>
internal static class DesignCommand
{
    public static Command Create()
    {
        Argument<string> file = SharedOptions.Document("REQUIREMENT", "A requirement document");
        Option<bool> sensitivity = new("--sensitivity")
        {
            Description = "Adds which input assumption would change the winner, and from which factor on. Takes some ten times as long.",
        };
        Option<string?> netlist = SharedOptions.Named(new Option<string?>("--netlist") { Description = "Writes the netlist of the winner with its sizes to this file.", HelpName = "FILE" });
        Option<string?> candidate = new("--candidate") { Description = "With --netlist: of this candidate instead of the winner.", HelpName = "NAME" };
        Option<int> threads = NumberOptions.Threads();
        Command command = new("design", "Sizes all candidates of a requirement and ranks them by life or loss, with reasons.")
        {
            file, sensitivity, netlist, candidate, threads,
        };
        ResultOutput writer = ResultOutput.Sorting(command, ChoicePage.Columns, ResultTable.ChoiceColumns);
        command.Validators.Add(result =>
        {
            if (result.GetValue(candidate) is not null && result.GetValue(netlist) is null)
            {
                result.AddError("--candidate says whose netlist --netlist writes. Add --netlist FILE.");
            }
        });
        command.SetAction(parsed =>
        {
            ToolSession session = ToolSession.Of(parsed);
            TextWriter error = session.Error;
            string path = parsed.GetRequiredValue(file);
            if (RequirementFile.Read(path, session) is not { } requirement)
            {
                return Tool.Failure;
            }

            if (parsed.GetValue(netlist) is { } written)
            {
                AtomicFile.Try(written);
            }

            using Interruption interruption = new(session.CancellationToken);
            Candidates candidates = Candidates.Of(requirement, Path.GetDirectoryName(path) is { Length: > 0 } folder ? folder : ".");
            RequirementFile.Report(candidates.Diagnostics, path, error);
            int most = parsed.GetValue(threads);
            RankedChoice choice = session.Follow("worked out", p => RankedChoice.Of(requirement, candidates.All, p, most, interruption.Token));
            ChoiceSensitivity? changes = parsed.GetValue(sensitivity)
                ? session.Follow("worked out", p => ChoiceSensitivity.Of(choice, p, most, interruption.Token))
                : null;
            ResultTable Table() => ResultTable.OfChoice(choice, changes);

            // the ranked ones are the first rows of the table
            writer.Write(parsed, Table, order => [ChoicePage.Of(choice, changes, order is null ? null : [.. order.Where(i => i < choice.Ranked.Count)])]);

            bool isWritten = parsed.GetValue(netlist) is not { } target || WriteNetlist(choice, parsed.GetValue(candidate), target, error);
            return isWritten && choice is { IsComplete: true, Winner: not null } && candidates.Diagnostics.Count == 0 ? Tool.Success : Tool.Failure;
        });
        return command;
    }

    private static bool WriteNetlist(RankedChoice choice, string? name, string target, TextWriter error)
    {
        RankedCandidate? chosen = name is null ? choice.Winner : choice.Ranked.FirstOrDefault(r => r.Candidate.Name == name);
        if (chosen?.ToToml() is not { } text)
        {
            error.WriteLine(Printable.Of(chosen is null
                ? name is null ? "There is no winner, so no netlist is written." : $"There is no ranked candidate '{name}'. The candidates: {string.Join("; ", choice.Ranked.Select(r => r.Candidate.Name))}."
                : $"'{chosen.Candidate.Name}' has no netlist."));
            return false;
        }

        AtomicFile.Write(target, text);
        return true;
    }
}
