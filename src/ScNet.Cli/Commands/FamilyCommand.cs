using System.CommandLine;
using ScNet.Netlists;
using ScNet.Results.Pages;
using ScNet.Topologies;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet family</c>: the netlist document of a standard family, or the list of them.</summary>
internal static class FamilyCommand
{
    public static Command Create()
    {
        Argument<string[]> words = new("NAME")
        {
            Description = "The family and its sizes, such as: ladder 4. The list of families where left out.",
            HelpName = "NAME SIZE",
            Arity = ArgumentArity.ZeroOrMore,
        };
        words.CompletionSources.Add([.. FamilyCatalogue.All.Select(f => f.Name).Distinct()]);
        Option<bool> stepUp = new(FamilyRequest.StepUp) { Description = "The same network run the other way: the reciprocal ratio." };
        Option<double> farads = SharedOptions.Number("--farads", "F", "farads (F)", "Capacitance of every capacitor", 1);
        Option<double> ohms = SharedOptions.Number("--ohms", "OHMS", "ohms (Ω)", "On-resistance of every switch", 1);
        Option<double> henries = SharedOptions.Number("--henries", "H", "henries (H)", "Inductance of every inductor", 1);
        Command command = new("family", "The netlist document of a standard family, or the list of families.")
        {
            words, stepUp, farads, ohms, henries,
        };
        command.Validators.Add(result =>
        {
            string[] given = result.GetValue(words) ?? [];
            string? message = given.Length > 0 ? FamilyRequest.Read(Words(given, result.GetValue(stepUp)), out _)
                : new Option[] { stepUp, farads, ohms, henries }.FirstOrDefault(o => result.GetResult(o) is { Implicit: false }) is { } option
                    ? $"Expected the name of a family with {option.Name}."
                : null;
            if (message is not null)
            {
                result.AddError(message);
            }
        });
        command.SetAction(parsed =>
        {
            TextWriter output = parsed.InvocationConfiguration.Output;
            string[] given = parsed.GetValue(words) ?? [];
            if (given.Length == 0)
            {
                ToolSession.Of(parsed).Write(FamilyPage.OfCatalogue());
                output.WriteLine();
                output.WriteLine("For the netlist document of one, run for example: scnet family ladder 4 > ladder-4.toml");
            }
            else if (FamilyRequest.Read(Words(given, parsed.GetValue(stepUp)), out FamilyRequest? request) is null)
            {
                output.Write(NetlistWriter.ToToml(request!.Build(parsed.GetValue(farads), parsed.GetValue(ohms), parsed.GetValue(henries))));
            }

            return Tool.Success;
        });
        return command;
    }

    private static string[] Words(string[] words, bool isStepUp) => isStepUp ? [.. words, FamilyRequest.StepUp] : words;
}
