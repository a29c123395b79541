namespace ScNet.Cli.Tests.Commands;

public sealed class AtlasCommandTests : IDisposable
{
    private readonly NetlistFolder _folder = new();

    private string Parts => _folder.PathOf("parts");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_part_is_written_and_its_counts_are_printed()
    {
        ToolRun run = ToolRun.Of("atlas", "--capacitors", "1", "--shard", "2/3", "--output", Parts);
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.Matches(@"^@/parts/atlas-1-2-of-3\.shard: [0-9]+ pairs? decided, [0-9]+ networks?, [0-9]+ of them unbeaten\n$", _folder.Relative(run.Output));
        Assert.Contains("shard 2/3", File.ReadAllLines(Path.Combine(Parts, "atlas-1-2-of-3.shard")));
    }

    [Fact]
    public void Parts_are_merged_to_what_one_process_writes()
    {
        foreach (string part in new[] { "3/3", "1/3", "2/3" })
        {
            Assert.Equal(0, ToolRun.Of("atlas", "--capacitors", "1", "--shard", part, "--output", Parts).Code);
        }

        Assert.Equal(0, ToolRun.Of("atlas", "--capacitors", "1", "--output", _folder.PathOf("one")).Code);
        ToolRun run = ToolRun.Of("atlas", "merge", Parts, "--output", _folder.PathOf("all.atlas"));
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.StartsWith("@/all.atlas: ", _folder.Relative(run.Output), StringComparison.Ordinal);
        Assert.Equal(File.ReadAllBytes(Path.Combine(_folder.PathOf("one"), "atlas-1-1-of-1.shard")), File.ReadAllBytes(_folder.PathOf("all.atlas")));
    }

    [Fact]
    public void What_stands_against_a_merge_is_told_line_by_line()
    {
        ToolRun.Of("atlas", "--capacitors", "1", "--shard", "2/4", "--output", Parts);
        _folder.Write("parts/atlas-1-1-of-4.shard", "scnet atlas shard, format 1\n");
        ToolRun run = ToolRun.Of("atlas", "merge", Parts, "--output", _folder.PathOf("all.atlas"));
        Assert.Equal((1, string.Empty), (run.Code, run.Output));
        Assert.Equal(
            [
                "@/parts/atlas-1-1-of-4.shard: error shard-damaged: The checksum of 'atlas-1-1-of-4.shard' is not that of its content: it was cut short or changed. Delete it and make its part again.",
                "@/parts: error shard-missing: 3 parts of 4 are missing: 1,3-4. Make what is missing into this folder.",
            ],
            run.ErrorLines.Select(_folder.Relative));
        Assert.False(File.Exists(_folder.PathOf("all.atlas")));
    }

    [Fact]
    public void Three_phases_are_written_whole_and_parts_of_them_are_refused()
    {
        ToolRun run = ToolRun.Of("atlas", "--capacitors", "2", "--phases", "3", "--output", Parts);
        Assert.Equal((0, "@/parts/atlas-2-3-phases-1-of-1.shard: 3375 triples decided, 598 networks, 34 of them unbeaten\n"), (run.Code, _folder.Relative(run.Output)));
        ToolRun part = ToolRun.Of("atlas", "--capacitors", "2", "--phases", "3", "--shard", "1/2", "--output", Parts);
        Assert.NotEqual(0, part.Code);
        Assert.Contains("Expected no --shard with --phases 3", part.Error, StringComparison.Ordinal);
        ToolRun large = ToolRun.Of("atlas", "--capacitors", "5", "--phases", "3", "--output", Parts);
        Assert.NotEqual(0, large.Code);
        Assert.Contains("Expected at most 4 after --capacitors with --phases 3, but got 5.", large.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_that_cannot_be_written_fails()
    {
        ToolRun run = ToolRun.Of("atlas", "--capacitors", "1", "--output", _folder.Write("file", string.Empty));
        Assert.Equal((1, string.Empty), (run.Code, run.Output));
        Assert.StartsWith("scnet: the output cannot be written: ", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public void Work_that_is_stopped_writes_nothing_and_fails()
    {
        ToolRun run = ToolRun.Of(new ToolSession { CancellationToken = new CancellationToken(canceled: true) }, "atlas", "--capacitors", "1", "--output", Parts);
        Assert.Equal((1, string.Empty, "Stopped: no file was written.\n"), (run.Code, run.Output, run.Error));
        Assert.Empty(Directory.GetFiles(Parts));
    }

    [Fact]
    public void Progress_goes_to_a_terminal_and_is_wiped()
    {
        ToolRun run = ToolRun.Of(new ToolSession { ShowsProgress = true }, "atlas", "--capacitors", "1", "--output", Parts);
        Assert.Matches("\r100 % searched *\r *\r$", run.Error);
    }
}
