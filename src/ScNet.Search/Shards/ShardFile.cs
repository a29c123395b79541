using System.Text;
using ScNet.Search.Atlases;

namespace ScNet.Search.Shards;

/// <summary>A file of a part whose checksum and heading are right; its networks are read when they are asked for.</summary>
internal sealed class ShardFile
{
    private const string Again = "Delete it and make its part again.";

    private readonly Func<Stream> _open;

    private ShardFile(string path, Func<Stream> open, string checksum, AtlasShard shard, ShardCounts counts)
    {
        _open = open;
        Path = path;
        Checksum = checksum;
        Shard = shard;
        Counts = counts;
    }

    public string Path { get; }

    public string Checksum { get; }

    public AtlasShard Shard { get; }

    public ShardCounts Counts { get; }

    /// <summary>Opens a file; null where the findings say what is wrong with it.</summary>
    public static ShardFile? Open(string path, DiagnosticList findings) =>
        Open(path, () => new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete), findings);

    /// <summary>Opens what stands for a file; null where the findings say what is wrong with it.</summary>
    /// <param name="path">What it is called in messages.</param>
    /// <param name="open">Opens it from its beginning, again each time.</param>
    /// <param name="findings">Takes what is wrong.</param>
    public static ShardFile? Open(string path, Func<Stream> open, DiagnosticList findings)
    {
        try
        {
            using Stream stream = open();
            using StreamReader reader = new(stream, Encoding.ASCII);
            if (ShardText.VersionOf(reader.ReadLine()) is { } version && version != ShardText.Version)
            {
                findings.Error(
                    DiagnosticCodes.ShardMismatch,
                    $"Expected format {ShardText.Version} in {Name(path)}, but it has format {version}. Make all parts with one version of the program.",
                    At(path));
                return null;
            }

            if (!ShardText.TryReadChecksum(stream, out string checksum))
            {
                findings.Error(DiagnosticCodes.ShardDamaged, $"The checksum of {Name(path)} is not that of its content: it was cut short or changed. {Again}", At(path));
                return null;
            }

            stream.Position = 0;
            reader.DiscardBufferedData();
            if (ShardText.TryReadHeading(reader, out AtlasShard shard, out ShardCounts counts))
            {
                return new ShardFile(path, open, checksum, shard, counts);
            }

            findings.Error(DiagnosticCodes.ShardDamaged, $"{Name(path)} does not begin with size, part and counts. {Again}", At(path));
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            findings.Error(DiagnosticCodes.FileUnreadable, $"{Name(path)} cannot be read: {exception.Message}", At(path));
        }

        return null;
    }

    /// <summary>The networks in order, up to the first fault, which becomes a finding.</summary>
    public IEnumerable<(ShardEntry Entry, FrontEntry Network)> Read(DiagnosticList findings)
    {
        using StreamReader reader = new(_open(), Encoding.ASCII);
        bool isSound = ShardText.TryReadHeading(reader, out AtlasShard shard, out _) && shard == Shard;
        ShardEntry last = default;
        for (long i = 0; i < Counts.Entries && isSound; i++)
        {
            FrontEntry? network = null;
            isSound = ShardEntry.TryParse(reader.ReadLine() ?? string.Empty, out ShardEntry entry)
                && (i == 0 || last.CompareTo(entry) < 0)
                && (network = entry.ToNetwork(Shard)) is not null;
            if (network is { } sound)
            {
                last = entry;
                yield return (entry, sound);
            }
        }

        if (!isSound || reader.ReadLine() != ShardText.ClosingOf(Checksum) || reader.ReadLine() is not null)
        {
            findings.Error(
                DiagnosticCodes.ShardDamaged,
                $"Expected {Counts.Entries} networks of {Shard.CapacitorCount} capacitors, in order, in {Name(Path)}, but there are others. {Again}",
                At(Path));
        }
    }

    /// <summary>The name of a file in a message.</summary>
    public static string Name(string path) => Quoted.Name(System.IO.Path.GetFileName(path));

    /// <summary>A file as a whole.</summary>
    public static SourcePosition At(string path) => new(path, 0, 0);
}
