using System.CommandLine;
using ScNet.Derivations.Working;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet working</c>: the analysis of a mode step by step.</summary>
internal static class WorkingCommand
{
    public static Command Create()
    {
        Command command = new("working", "The analysis shown step by step, for teaching and reviews: networks, equations, elimination, results.");
        NetlistSources netlists = NetlistSources.AddTo(command);
        Option<string> mode = SharedOptions.Mode();
        Option<string> format = SharedOptions.Format("markdown", "latex");
        foreach (Option option in new Option[] { mode, format })
        {
            command.Options.Add(option);
        }

        command.SetAction(parsed =>
        {
            ToolSession session = ToolSession.Of(parsed);
            TextWriter output = session.Output, error = session.Error;
            List<WorkedSolution> solutions = [];
            bool isComplete = true;
            foreach (NetlistFile file in netlists.Read(parsed))
            {
                FileAnalysis analysis = FileAnalysis.Of(file, parsed.GetValue(mode), error);
                analysis.ReportFailures(error);
                isComplete &= analysis.IsComplete;
                isComplete &= !Refuses(file, error);
                solutions.AddRange(file.Reading.Converter is { Inductors.Count: 0 } ? analysis.Modes.Select(m => WorkedSolution.Of(m.Converter, m.Mode)) : []);
            }

            if (parsed.GetValue(format) == "latex" && solutions.Count > 1)
            {
                string remedy = solutions.Select(s => $"{s.Mode}").Distinct().Count() == 1 ? "Give one file." : $"Name the mode: --mode \"{solutions[0].Mode}\".";
                error.WriteLine(Printable.Of($"scnet: Expected one converter and mode for a document in LaTeX, but got {solutions.Count}. {remedy}"));
                return Tool.Failure;
            }

            for (int i = 0; i < solutions.Count; i++)
            {
                output.Write(i > 0 ? "\n" : string.Empty);
                output.Write(parsed.GetValue(format) == "latex" ? solutions[i].ToLatex() : solutions[i].ToMarkdown());
            }

            return isComplete ? Tool.Success : Tool.Failure;
        });
        return command;
    }

    private static bool Refuses(NetlistFile file, TextWriter error)
    {
        if (file.Reading.Converter is not { Inductors.Count: > 0 })
        {
            return false;
        }

        error.WriteLine(Printable.Of($"{file.Path}: Expected, for a worked solution, a converter of switches and capacitors, but it has inductors."));
        return true;
    }
}
