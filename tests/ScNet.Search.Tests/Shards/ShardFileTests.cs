using System.Security.Cryptography;
using ScNet.Search.Shards;

namespace ScNet.Search.Tests.Shards;

public sealed class ShardFileTests : IDisposable
{
    // with it work ends as soon as it begins
    private static readonly CancellationToken s_stopped = new(canceled: true);

    private readonly ShardFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_part_is_plain_text_with_its_size_its_counts_its_networks_in_order_and_its_checksum()
    {
        ShardRun run = _folder.Make(2, 3);
        string[] lines = File.ReadAllLines(run.Path);
        Assert.Equal("atlas-2-2-of-3.shard", Path.GetFileName(run.Path));
        Assert.Equal(
            ["scnet atlas shard, format 1", "capacitors 2", "phases 2", "shard 2/3", $"pairs {run.Counts.Pairs}", $"networks {run.Counts.Networks}", $"entries {run.Counts.Entries}"],
            lines[..7]);
        Assert.Equal(run.Counts.Entries, lines.Length - 8);
        Assert.All(lines[7..^1], l => Assert.Matches("^-?[0-9]+(/[0-9]+)? [0-6]{7} [0-6]{7} (lowest-blocking|least-charge)$", l));
        byte[] bytes = File.ReadAllBytes(run.Path);
        Assert.Equal($"sha256 {Convert.ToHexStringLower(SHA256.HashData(bytes.AsSpan(..^72)))}", lines[^1]);
        Assert.Equal((byte)'\n', bytes[^1]);
        double[] ratios = [.. lines[7..^1].Select(l => l.Split(' ')[0].Split('/')).Select(p => double.Parse(p[0], null) / (p.Length > 1 ? double.Parse(p[1], null) : 1))];
        Assert.Equal(ratios.Order(), ratios);
        Assert.True(ratios.Distinct().Count() > 3);
    }

    [Fact]
    public void A_part_made_again_has_the_same_bytes_and_replaces_the_file()
    {
        string path = _folder.Make(1, 2).Path;
        byte[] first = File.ReadAllBytes(path);
        File.WriteAllText(path, "half a file");
        Assert.Equal(first, File.ReadAllBytes(_folder.Make(1, 2).Path));
        Assert.Equal([path], Directory.GetFiles(_folder.Parts));
    }

    [Fact]
    public void A_line_end_of_another_kind_is_not_what_is_written_though_the_checksum_fits()
    {
        byte[] whole = File.ReadAllBytes(_folder.Make(1, 1).Path);
        byte[] body = System.Text.Encoding.ASCII.GetBytes(System.Text.Encoding.ASCII.GetString(whole, 0, whole.Length - 72).Replace("\n", "\r\n", StringComparison.Ordinal));
        byte[] changed = [.. body, .. System.Text.Encoding.ASCII.GetBytes($"sha256 {Convert.ToHexStringLower(SHA256.HashData(body))}\n")];
        DiagnosticList findings = new();
        Assert.NotNull(ShardFile.Open("whole", () => new MemoryStream(whole), findings));
        Assert.Null(ShardFile.Open("changed", () => new MemoryStream(changed), findings));
        Assert.Equal(DiagnosticCodes.ShardDamaged, Assert.Single(findings.Findings()).Code);
    }

    [Fact]
    public void Two_writers_at_once_leave_a_whole_file_and_a_reader_never_sees_another()
    {
        string path = _folder.Make(1, 2).Path;
        byte[] whole = File.ReadAllBytes(path);
        using CancellationTokenSource done = new();
        int seen = 0;
        Thread reader = new(() =>
        {
            do
            {
                using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
                byte[] bytes = new byte[whole.Length + 1];
                int length = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
                seen = whole.AsSpan().SequenceEqual(bytes.AsSpan(0, length)) ? seen + 1 : int.MinValue / 2;
            }
            while (!done.IsCancellationRequested);
        });
        reader.Start();
        Parallel.For(0, 8, new ParallelOptions { MaxDegreeOfParallelism = 2 }, _ => _folder.Make(1, 2));
        done.Cancel();
        reader.Join();
        Assert.True(seen > 0, $"{seen}");
        Assert.Equal([path], Directory.GetFiles(_folder.Parts));
    }

    [Fact]
    public void What_cannot_be_written_is_found_before_the_work_begins()
    {
        string file = Path.Combine(_folder.Parts, "file");
        File.WriteAllText(file, string.Empty);
        Assert.ThrowsAny<IOException>(() => ShardRun.Of(ShardFolder.Shard(1, 1), file, cancellationToken: s_stopped));
    }

    [Fact]
    public void A_folder_that_must_not_be_written_to_is_found_before_the_work_begins()
    {
        // nobody may make a file among the kernel's own; elsewhere a folder without the right to write, which an administrator has nonetheless
        string folder = OperatingSystem.IsLinux() ? "/sys" : ReadOnly();
        Assert.Throws<IOException>(() => ShardRun.Of(ShardFolder.Shard(1, 1), folder, cancellationToken: s_stopped));
    }

    [Fact]
    public void Work_that_is_stopped_leaves_no_file()
    {
        Assert.ThrowsAny<OperationCanceledException>(() => ShardRun.Of(ShardFolder.Shard(1, 1), _folder.Parts, cancellationToken: s_stopped));
        Assert.Empty(Directory.GetFiles(_folder.Parts));
    }

    [Fact]
    public void Three_phases_have_three_codes_a_line_and_the_same_bytes_from_any_number_of_threads()
    {
        AtlasShard shard = new(2, 1, 1, phases: 3);
        string one = File.ReadAllText(ShardRun.Of(shard, _folder.Parts, threads: 1).Path);
        ShardRun many = ShardRun.Of(shard, _folder.Parts, threads: 3);
        Assert.Equal(one, File.ReadAllText(many.Path));
        string[] lines = one.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(["capacitors 2", "phases 3", "shard 1/1", "triples 3375", "networks 598", "entries 34"], lines[1..7]);
        Assert.All(lines[7..^1], line =>
        {
            string[] words = line.Split(' ');
            Assert.Equal((5, "fewest"), (words.Length, words[^1]));
            Assert.True(SearchedNetwork.TryCreate([.. words[1..4].Select(Wiring.Parse)], SwitchLayout.Fewest, out SearchedNetwork? network));
            Assert.Equal(words[0], $"{Quantity.Exact(network.Ratio)}");
        });
        Assert.Throws<ArgumentOutOfRangeException>(() => new AtlasShard(2, 1, 2, phases: 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => new AtlasShard(5, 1, 1, phases: 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => new AtlasShard(2, 1, 1, phases: 4));
    }

    [Theory]
    [InlineData(0, 1, 1)]
    [InlineData(9, 1, 1)]
    [InlineData(2, 0, 1)]
    [InlineData(2, 2, 1)]
    [InlineData(2, 1, 100_001)]
    public void Numbers_outside_their_range_are_refused(int capacitors, int number, int count) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new AtlasShard(capacitors, number, count));

    [Theory]
    [InlineData("12/512", true)]
    [InlineData("512/512", true)]
    [InlineData("513/512", false)]
    [InlineData("0/512", false)]
    [InlineData("1/100001", false)]
    [InlineData("-1/2", false)]
    [InlineData("1/2/3", false)]
    [InlineData("12", false)]
    [InlineData(" 1/2", false)]
    [InlineData(null, false)]
    public void A_part_is_read_as_number_and_count(string? text, bool isOne) => Assert.Equal(isOne, AtlasShard.TryParseFraction(text, out _, out _));

    private string ReadOnly()
    {
        DirectoryInfo folder = Directory.CreateDirectory(Path.Combine(_folder.Parts, "closed"));
        if (!OperatingSystem.IsWindows())
        {
            folder.UnixFileMode = UnixFileMode.UserRead | UnixFileMode.UserExecute;
        }

        return folder.FullName;
    }
}
