using ScNet.Search.Shards;

namespace ScNet.Search.Tests.Shards;

public sealed class ShardMergeTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    public void Parts_together_are_to_the_byte_what_one_process_writes(int count)
    {
        using ShardFolder one = new(1), parts = new(count);
        ShardMerge merge = parts.Merge();
        Assert.Empty(merge.Diagnostics);
        Assert.Equal((true, ShardFolder.Shard(1, 1)), (merge.HasResult, merge.Whole));
        Assert.Equal(File.ReadAllBytes(one.PathOf(1, 1)), File.ReadAllBytes(parts.Output));
    }

    [Fact]
    public void More_parts_than_work_are_no_harm()
    {
        using ShardFolder folder = new();
        foreach (int number in Enumerable.Range(1, 300))
        {
            ShardRun.Of(new AtlasShard(1, number, 300), folder.Parts);
        }

        string one = ShardRun.Of(new AtlasShard(1, 1, 1), Path.GetDirectoryName(folder.Parts)!).Path;
        Assert.True(folder.Merge().HasResult);
        Assert.Equal(File.ReadAllBytes(one), File.ReadAllBytes(folder.Output));
    }

    [Fact]
    public void The_order_in_which_parts_are_made_and_named_does_not_matter()
    {
        using ShardFolder ordered = new(4), mixed = new();
        string[] names = ["b", "d", "a", "c"];
        foreach (int number in new[] { 3, 1, 4, 2 })
        {
            mixed.Make(number, 4);
            File.Move(mixed.PathOf(number, 4), Path.Combine(mixed.Parts, names[number - 1] + AtlasShard.Extension));
        }

        Assert.True(ordered.Merge().HasResult);
        Assert.True(mixed.Merge().HasResult);
        Assert.Equal(File.ReadAllBytes(ordered.Output), File.ReadAllBytes(mixed.Output));
    }

    [Fact]
    public void Any_changed_byte_is_found()
    {
        using ShardFolder folder = new(2);
        string path = folder.PathOf(1, 2);
        byte[] whole = File.ReadAllBytes(path);
        for (int i = 0; i < whole.Length; i += 61)
        {
            byte[] changed = [.. whole];
            changed[i] ^= 0x01;
            File.WriteAllBytes(path, changed);
            Refuses(folder, i == "scnet atlas shard, format ".Length ? DiagnosticCodes.ShardMismatch : DiagnosticCodes.ShardDamaged, "'atlas-2-1-of-2.shard'");
        }

        File.WriteAllBytes(path, whole);
        Assert.True(folder.Merge().HasResult);
    }

    [Fact]
    public void A_file_cut_short_anywhere_is_found()
    {
        using ShardFolder folder = new(2);
        string path = folder.PathOf(1, 2);
        byte[] whole = File.ReadAllBytes(path);
        foreach (int length in new[] { 0, 1, 30, 71, 72, 73, whole.Length - 73, whole.Length - 72, whole.Length - 1 })
        {
            File.WriteAllBytes(path, whole[..length]);
            Refuses(folder, DiagnosticCodes.ShardDamaged, "'atlas-2-1-of-2.shard'");
        }
    }

    [Fact]
    public void What_is_added_to_a_file_is_found()
    {
        using ShardFolder folder = new(2);
        File.AppendAllText(folder.PathOf(1, 2), "\n");
        Refuses(folder, DiagnosticCodes.ShardDamaged, "make its part again");
    }

    [Fact]
    public void Missing_parts_are_named_as_an_array_job_takes_them()
    {
        using ShardFolder folder = new(7);
        foreach (int number in new[] { 2, 4, 5, 6 })
        {
            File.Delete(folder.PathOf(number, 7));
        }

        Refuses(folder, DiagnosticCodes.ShardMissing, "4 parts of 7 are missing: 2,4-6.");
    }

    [Fact]
    public void A_folder_without_parts_and_no_folder_are_told()
    {
        using ShardFolder folder = new();
        Refuses(folder, DiagnosticCodes.ShardMissing, "no sound file");
        Directory.Delete(folder.Parts);
        Refuses(folder, DiagnosticCodes.FileUnreadable, "There is no folder");
    }

    [Fact]
    public void A_part_that_is_there_twice_with_the_same_content_counts_once()
    {
        using ShardFolder folder = new(2);
        File.Copy(folder.PathOf(1, 2), Path.Combine(folder.Parts, "copy.shard"));
        Assert.True(folder.Merge().HasResult);
    }

    [Fact]
    public void A_part_that_is_there_twice_with_different_contents_is_refused()
    {
        using ShardFolder folder = new(2);
        string copy = Path.Combine(folder.Parts, "copy.shard");
        File.Copy(folder.PathOf(1, 2), copy);
        ShardFolder.Forge(copy, lines => lines.Select(l => l.StartsWith("networks ", StringComparison.Ordinal) ? "networks 1" : l));
        Refuses(folder, DiagnosticCodes.ShardDoubled, "'copy.shard' and 'atlas-2-1-of-2.shard' are both part 1/2");
    }

    [Fact]
    public void Counts_that_do_not_add_up_are_refused()
    {
        using ShardFolder folder = new(2);
        ShardFolder.Forge(folder.PathOf(2, 2), lines => lines.Select(l => l.StartsWith("pairs ", StringComparison.Ordinal) ? "pairs 12345678" : l));
        Refuses(folder, DiagnosticCodes.ShardCounts, "Make all parts again");
    }

    [Fact]
    public void Another_format_is_refused()
    {
        using ShardFolder folder = new(2);
        ShardFolder.Forge(folder.PathOf(2, 2), lines => lines.Select((l, i) => i == 0 ? "scnet atlas shard, format 2" : l));
        Refuses(folder, DiagnosticCodes.ShardMismatch, "Expected format 1 in 'atlas-2-2-of-2.shard', but it has format 2.");
    }

    [Fact]
    public void Another_size_or_division_is_refused()
    {
        using ShardFolder folder = new(2);
        ShardRun.Of(new AtlasShard(1, 1, 2), folder.Parts);
        Refuses(folder, DiagnosticCodes.ShardMismatch, "'atlas-1-1-of-2.shard' is part 1/2 of the networks of 1 capacitor,");
        File.Delete(Path.Combine(folder.Parts, "atlas-1-1-of-2.shard"));
        folder.Make(3, 3);
        Refuses(folder, DiagnosticCodes.ShardMismatch, "'atlas-2-3-of-3.shard' is part 3/3");
    }

    [Fact]
    public void Three_phases_are_not_put_together_with_anything()
    {
        using ShardFolder folder = new(2);
        ShardRun three = ShardRun.Of(new AtlasShard(2, 1, 1, phases: 3), folder.Parts);
        Refuses(folder, DiagnosticCodes.ShardMismatch, "'atlas-2-3-phases-1-of-1.shard' holds networks of three phases");
        File.Delete(folder.PathOf(1, 2));
        File.Delete(folder.PathOf(2, 2));
        Refuses(folder, DiagnosticCodes.ShardMismatch, "'atlas-2-3-phases-1-of-1.shard' holds networks of three phases");
        ShardFolder.Forge(three.Path, lines => lines.Select((l, i) => i == 3 ? "shard 1/2" : l));
        Refuses(folder, DiagnosticCodes.ShardDamaged, "does not begin with");
    }

    public static TheoryData<string, Func<string[], IEnumerable<string>>> Forgeries => new()
    {
        { "a line too few", lines => lines[..^1] },
        { "a line too many", lines => [.. lines, lines[^1]] },
        { "out of order", lines => [.. lines[..7], lines[8], lines[7], .. lines[9..]] },
        { "another ratio", lines => [.. lines[..7], "-100" + lines[7][lines[7].IndexOf(' ', StringComparison.Ordinal)..], .. lines[8..]] },
        { "not reduced", lines => [.. lines[..7], "-2/2" + lines[7][lines[7].IndexOf(' ', StringComparison.Ordinal)..], .. lines[8..]] },
        { "no network", lines => [.. lines[..7], "-100 0123456 0123456 lowest-blocking", .. lines[8..]] },
        { "no wiring", lines => [.. lines[..7], "-100 0123456 9 lowest-blocking", .. lines[8..]] },
        { "a ratio by zero", lines => [.. lines[..7], "1/0 0123456 0123456 lowest-blocking", .. lines[8..]] },
        { "no line", lines => [.. lines[..7], string.Empty, .. lines[8..]] },
        { "another layout", lines => [.. lines[..7], lines[7] + "s", .. lines[8..]] },
    };

    [Theory]
    [MemberData(nameof(Forgeries))]
    public void Networks_that_are_not_as_they_say_are_found_though_the_checksum_is_right(string what, Func<string[], IEnumerable<string>> change)
    {
        Assert.NotEmpty(what);
        using ShardFolder folder = new(2);
        ShardFolder.Forge(folder.PathOf(1, 2), change);
        Refuses(folder, DiagnosticCodes.ShardDamaged, "'atlas-2-1-of-2.shard'");
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void A_heading_that_is_none_is_found(int line)
    {
        using ShardFolder folder = new(2);
        ShardFolder.Forge(folder.PathOf(1, 2), lines => lines.Select((l, i) => i == line ? l + "x" : l));
        Refuses(folder, DiagnosticCodes.ShardDamaged, "does not begin with");
    }

    [Fact]
    public void Forging_without_a_change_is_none()
    {
        using ShardFolder folder = new(2);
        ShardFolder.Forge(folder.PathOf(1, 2), lines => lines);
        Assert.True(folder.Merge().HasResult);
    }

    [Fact]
    public void All_faults_are_told_at_once()
    {
        using ShardFolder folder = new(5);
        File.Delete(folder.PathOf(1, 5));
        File.WriteAllText(folder.PathOf(3, 5), string.Empty);
        ShardRun.Of(new AtlasShard(1, 1, 1), folder.Parts);
        Assert.Equal(
            [DiagnosticCodes.ShardDamaged, DiagnosticCodes.ShardMismatch, DiagnosticCodes.ShardMissing],
            folder.Merge().Diagnostics.Select(d => d.Code).Order(StringComparer.Ordinal));
    }

    // nothing is written, every finding of the code names place and remedy, and one says what is expected
    private static void Refuses(ShardFolder folder, string code, string text)
    {
        ShardMerge merge = folder.Merge();
        Assert.False(merge.HasResult);
        Assert.Null(merge.Counts);
        Assert.False(File.Exists(folder.Output));
        Assert.Contains(merge.Diagnostics, d => d.Code == code && d.Message.Contains(text, StringComparison.Ordinal));
        Assert.All(merge.Diagnostics, d => Assert.NotNull(d.Position?.File));
        Assert.All(merge.Diagnostics, d => Assert.Matches(@"\. (Make|Delete|Move|Correct) ", d.Message));
    }
}
