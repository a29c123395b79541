using System.CommandLine;
using ScNet.Search;
using ScNet.Search.Shards;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet atlas</c>: every network of a size, or a part of them, into a file.</summary>
internal static class AtlasCommand
{
    private const int DefaultCapacitors = 3;

    public static Command Create()
    {
        Option<int> capacitors = NumberOptions.Whole("--capacitors", "The number of flying capacitors", 1, Atlas.MaximumCapacitorCount, DefaultCapacitors);
        Option<(int Number, int Count)> shard = Shard();
        Option<int> threads = NumberOptions.Threads();
        Option<string> output = SharedOptions.Named(new Option<string>("--output") { Description = "The folder that the file goes to; it is made where there is none.", HelpName = "DIR", Required = true });
        Command command = new("atlas", "Finds every network of so many flying capacitors, or one part of them of many that other processes find.")
        {
            capacitors, shard, threads, output,
        };
        Option<int> phases = PhaseOptions.AddTo(
            command, capacitors, $"The number of phases: 2, or 3 with up to {ThreePhaseAtlas.MaximumCapacitorCount} capacitors and all in one part");
        command.Validators.Add(result =>
        {
            if (PhaseOptions.AreThree(result, phases) && result.GetResult(shard) is { Implicit: false })
            {
                result.AddError("Expected no --shard with --phases 3: three phases take seconds and are found in one part. Leave --shard out.");
            }
        });
        command.Subcommands.Add(AtlasMergeCommand.Create());
        command.SetAction(parsed =>
        {
            ToolSession session = ToolSession.Of(parsed);
            (int number, int count) = parsed.GetValue(shard);
            AtlasShard part = new(parsed.GetValue(capacitors), number, count, parsed.GetValue(phases));
            if (Run(part, parsed.GetRequiredValue(output), parsed.GetValue(threads), session) is not { } run)
            {
                session.Error.WriteLine("Stopped: no file was written.");
                return Tool.Failure;
            }

            session.Output.WriteLine(run);
            return Tool.Success;
        });
        return command;
    }

    private static ShardRun? Run(AtlasShard part, string folder, int threads, ToolSession session)
    {
        using Interruption interruption = new(session.CancellationToken);
        try
        {
            return session.Follow("searched", progress => ShardRun.Of(part, folder, threads, progress, interruption.Token));
        }
        catch (OperationCanceledException)
        {
            return null;
        }
    }

    private static Option<(int Number, int Count)> Shard()
    {
        Option<(int Number, int Count)> shard = new("--shard")
        {
            Description = "Which part of how many, such as 12/512. Parts are found in any order, on any machine, and put together with scnet atlas merge.",
            HelpName = "PART/PARTS",
            DefaultValueFactory = _ => (1, 1),
        };
        shard.CustomParser = result =>
        {
            string text = result.Tokens.Count > 0 ? result.Tokens[^1].Value : string.Empty;
            if (!AtlasShard.TryParseFraction(text, out int number, out int count))
            {
                result.AddError(FormattableString.Invariant($"Expected a part and a number of parts to {AtlasShard.MaximumCount} after --shard, such as 1/512 or 512/512, but got '{text}'."));
            }

            return (number, count);
        };
        return shard;
    }
}
