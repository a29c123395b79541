using System.CommandLine;
using ScNet.Search.Shards;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet atlas merge</c>: all parts of a folder into one file, the one that a single process would have written.</summary>
internal static class AtlasMergeCommand
{
    public static Command Create()
    {
        Argument<string> folder = SharedOptions.Folder("DIR", $"The folder of the parts, *{AtlasShard.Extension}.");
        Option<string> output = SharedOptions.Named(new Option<string>("--output") { Description = "The file to write.", HelpName = "FILE", Required = true });
        Command command = new("merge", "Puts all parts together, and says which are missing, damaged, there twice or of another size.") { folder, output };
        command.SetAction(parsed =>
        {
            ToolSession session = ToolSession.Of(parsed);
            string file = parsed.GetRequiredValue(output);
            ShardMerge merge = ShardMerge.Of(parsed.GetRequiredValue(folder), file);
            foreach (Diagnostic diagnostic in merge.Diagnostics)
            {
                session.Error.WriteLine(Printable.Of(diagnostic.ToString()));
            }

            if (merge.HasResult)
            {
                session.Output.WriteLine(FormattableString.Invariant(
                    $"{file}: {merge.Counts.Pairs} pairs decided, {merge.Counts.Networks} networks, {merge.Counts.Entries} of them unbeaten"));
            }

            return merge.HasResult ? Tool.Success : Tool.Failure;
        });
        return command;
    }
}
