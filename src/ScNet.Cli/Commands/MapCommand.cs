using System.CommandLine;
using System.Globalization;
using ScNet.Design.Choice;
using ScNet.Design.Maps;
using ScNet.Design.Requirements;
using ScNet.Results;
using ScNet.Results.Pages;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet map</c>: the best mode of one sized candidate over input, output and load.</summary>
internal static class MapCommand
{
    private const int UsualPoints = 15;

    public static Command Create()
    {
        Argument<string> file = SharedOptions.Document("REQUIREMENT", "A requirement document");
        Option<string?> candidate = new("--candidate") { Description = "The candidate; the winner where it is not given.", HelpName = "NAME" };
        Option<int> points = Points();
        Command command = new("map", "The best mode of a sized candidate over input, output and load, with its losses and what is missing.") { file, candidate, points };
        ResultOutput writer = ResultOutput.Sorting(command, MapPage.Columns, ResultTable.MapColumns);
        command.SetAction(parsed =>
        {
            ToolSession session = ToolSession.Of(parsed);
            string path = parsed.GetRequiredValue(file);
            if (RequirementFile.Read(path, session) is not { } requirement)
            {
                return Tool.Failure;
            }

            Candidates known = Candidates.Of(requirement, Path.GetDirectoryName(path) is { Length: > 0 } folder ? folder : ".");
            RequirementFile.Report(known.Diagnostics, path, session.Error);
            if (Chosen(requirement, known, parsed.GetValue(candidate), session) is not { } chosen)
            {
                return Tool.Failure;
            }

            OperatingMap map = session.Follow("mapped", progress => Map(requirement, chosen, parsed.GetValue(points), progress));
            writer.Write(parsed, () => ResultTable.OfMap(map), order => [MapPage.Of(chosen.Candidate.Name, map, LifeEstimate.Of(chosen.Modes, requirement), order)]);

            return Tool.Success;
        });
        return command;
    }

    private static RankedCandidate? Chosen(Requirement requirement, Candidates known, string? name, ToolSession session)
    {
        Candidate[] asked = [.. known.All.Where(c => name is null || c.Name == name)];
        if (asked.Length == 0)
        {
            session.Error.WriteLine(Printable.Of($"There is no candidate '{name}'. The candidates: {string.Join("; ", known.All.Select(c => c.Name))}."));
            return null;
        }

        RankedChoice choice = session.Follow("worked out", progress => RankedChoice.Of(requirement, asked, progress));
        if (choice.Winner is null)
        {
            foreach (RejectedCandidate rejected in choice.Rejected)
            {
                session.Error.WriteLine(Printable.Of($"{rejected.Candidate.Name}: {string.Join("; ", rejected.Reasons)}"));
            }
        }

        return choice.Winner;
    }

    // evenly over the input range, at every output voltage and load of the requirement
    private static OperatingMap Map(Requirement requirement, RankedCandidate chosen, int points, IProgress<double>? progress)
    {
        (double low, double high) = (requirement.InputVolts.Minimum!.Value, requirement.InputVolts.Maximum!.Value);
        double[] inputs = low == high ? [low] : [.. Enumerable.Range(0, points).Select(k => low + ((high - low) * k / (points - 1)))];
        return OperatingMap.Of(
            chosen.Modes,
            inputs,
            [.. requirement.OutputVolts.Concat(requirement.Loads.Select(l => l.OutputVolts).OfType<double>()).Distinct().Order()],
            [.. requirement.Loads.Select(l => l.Amperes).Distinct().Order()],
            progress: progress);
    }

    private static Option<int> Points()
    {
        Option<int> points = new("--points") { Description = $"How many input voltages, both ends of the range among them; {UsualPoints} where it is not given.", HelpName = "N", DefaultValueFactory = _ => UsualPoints };
        points.CustomParser = result =>
        {
            string text = result.Tokens.Count > 0 ? result.Tokens[^1].Value : string.Empty;
            if (!int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int count) || count is < 2 or > 10_000)
            {
                result.AddError($"Expected a whole number from 2 to 10000 after --points, but got '{text}'.");
            }

            return count;
        };
        return points;
    }
}
