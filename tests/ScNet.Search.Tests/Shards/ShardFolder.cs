using ScNet.Search.Shards;

namespace ScNet.Search.Tests.Shards;

/// <summary>A folder with all parts of a small work, that goes with the test.</summary>
internal sealed class ShardFolder : IDisposable
{
    /// <summary>Small enough to be made in no time, with fronts that come from more than one part.</summary>
    public const int Capacitors = 2;

    private readonly string _root = Directory.CreateTempSubdirectory("scnet-shards-").FullName;

    /// <summary>A folder with so many parts; none where zero.</summary>
    public ShardFolder(int count = 0)
    {
        Directory.CreateDirectory(Parts);
        for (int number = 1; number <= count; number++)
        {
            Make(number, count);
        }
    }

    public string Parts => Path.Combine(_root, "parts");

    public string Output => Path.Combine(_root, "whole.atlas");

    public static AtlasShard Shard(int number, int count) => new(Capacitors, number, count);

    public ShardRun Make(int number, int count) => ShardRun.Of(Shard(number, count), Parts, threads: 1);

    public string PathOf(int number, int count) => Path.Combine(Parts, Shard(number, count).FileName);

    public ShardMerge Merge() => ShardMerge.Of(Parts, Output);

    /// <summary>Changes the text of a file and gives it the checksum of its new content.</summary>
    public static void Forge(string path, Func<string[], IEnumerable<string>> change)
    {
        string text = string.Concat(change(File.ReadAllLines(path)[..^1]).Select(l => l + "\n"));
        byte[] hash = System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.ASCII.GetBytes(text));
        File.WriteAllText(path, $"{text}sha256 {Convert.ToHexStringLower(hash)}\n");
    }

    public void Dispose() => Directory.Delete(_root, recursive: true);
}
