using System.CommandLine;
using ScNet.Design.Requirements;
using ScNet.Netlists;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet schema</c>: the JSON schema of a kind of document, for editors.</summary>
internal static class SchemaCommand
{
    private const string Netlist = "netlist", Requirement = "requirement";

    public static Command Create()
    {
        Argument<string> document = new("DOCUMENT")
        {
            Description = $"The kind of document: {Netlist} or {Requirement}.",
            DefaultValueFactory = _ => Netlist,
        };
        document.Validators.Add(result =>
        {
            foreach (string kind in result.Tokens.Select(t => t.Value).Where(k => k is not (Netlist or Requirement)))
            {
                result.AddError($"Expected {Netlist} or {Requirement}, but got '{kind}'.");
            }
        });
        Command command = new("schema", "The JSON schema of the netlist or requirement document, for an editor that completes and checks TOML.") { document };
        command.SetAction(parsed =>
        {
            string schema = parsed.GetRequiredValue(document) == Requirement ? RequirementReader.JsonSchema : NetlistReader.JsonSchema;
            parsed.InvocationConfiguration.Output.WriteLine(schema.TrimEnd());
            return Tool.Success;
        });
        return command;
    }
}
