using System.CommandLine;
using ScNet.Netlists;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet schema</c>: the JSON schema of the netlist document, for editors.</summary>
internal static class SchemaCommand
{
    public static Command Create()
    {
        Command command = new("schema", "The JSON schema of the netlist document, for an editor that completes and checks TOML.");
        command.SetAction(parsed =>
        {
            parsed.InvocationConfiguration.Output.WriteLine(NetlistReader.JsonSchema.TrimEnd());
            return Tool.Success;
        });
        return command;
    }
}
