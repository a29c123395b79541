using System.CommandLine;
using ScNet.Derivations.Documents;
using ScNet.Design.Requirements;
using ScNet.Netlists;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet schema</c>: the JSON schema of a kind of document, for editors.</summary>
internal static class SchemaCommand
{
    private const string Netlist = "netlist", Requirement = "requirement", Derivation = "derivation";

    public static Command Create()
    {
        Argument<string> document = new("DOCUMENT")
        {
            Description = $"The kind of document: {Netlist}, {Requirement} or {Derivation}.",
            DefaultValueFactory = _ => Netlist,
        };
        document.CompletionSources.Add(Netlist, Requirement, Derivation);
        document.Validators.Add(result =>
        {
            foreach (string kind in result.Tokens.Select(t => t.Value).Where(k => k is not (Netlist or Requirement or Derivation)))
            {
                result.AddError($"Expected {Netlist}, {Requirement} or {Derivation}, but got '{kind}'.");
            }
        });
        Command command = new("schema", "The JSON schema of the netlist, requirement or derivation document, for an editor that completes and checks TOML.") { document };
        command.SetAction(parsed =>
        {
            string schema = parsed.GetRequiredValue(document) switch
            {
                Requirement => RequirementReader.JsonSchema,
                Derivation => DerivationReader.JsonSchema,
                _ => NetlistReader.JsonSchema,
            };
            parsed.InvocationConfiguration.Output.WriteLine(schema.TrimEnd());
            return Tool.Success;
        });
        return command;
    }
}
