using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace ScNet.Search.Shards;

/// <summary>
/// The text of a part: a heading of fixed lines, a line per network in order, and the SHA-256 of every byte before it.
/// Nothing in it depends on the machine, the time or the order of the work.
/// </summary>
internal static class ShardText
{
    /// <summary>The version of the form and of what it holds: to be raised whenever a part would come out with other bytes.</summary>
    public const int Version = 1;

    private const string Title = "scnet atlas shard, format ";
    private const string ChecksumWord = "sha256 ";

    // the last line: word, 64 digits, end
    private static readonly int s_closingLength = ChecksumWord.Length + (2 * SHA256.HashSizeInBytes) + 1;

    /// <summary>Writes a part.</summary>
    public static void Write(Stream stream, AtlasShard shard, ShardCounts counts, IEnumerable<ShardEntry> entries)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (string line in Heading(shard, counts).Concat(entries.Select(e => e.Line)))
        {
            byte[] bytes = Encoding.ASCII.GetBytes(line + "\n");
            hash.AppendData(bytes);
            stream.Write(bytes);
        }

        stream.Write(Closing(hash));
    }

    /// <summary>Whether a file ends with the checksum of what is before it, and that; the stream is left anywhere.</summary>
    public static bool TryReadChecksum(Stream stream, out string checksum)
    {
        checksum = string.Empty;
        long left = stream.Length - s_closingLength;
        if (left < 0)
        {
            return false;
        }

        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        byte[] buffer = new byte[1 << 16];
        stream.Position = 0;
        while (left > 0)
        {
            int read = stream.Read(buffer, 0, (int)Math.Min(left, buffer.Length));
            // a line end of another kind would be read as one, but is none that is written
            if (read == 0 || buffer.AsSpan(0, read).Contains((byte)'\r'))
            {
                return false;
            }

            hash.AppendData(buffer, 0, read);
            left -= read;
        }

        byte[] closing = new byte[s_closingLength];
        byte[] expected = Closing(hash);
        checksum = Encoding.ASCII.GetString(expected, ChecksumWord.Length, 2 * SHA256.HashSizeInBytes);
        return stream.ReadAtLeast(closing, closing.Length, throwOnEndOfStream: false) == closing.Length && closing.AsSpan().SequenceEqual(expected);
    }

    /// <summary>The last line of a part, without its end.</summary>
    public static string ClosingOf(string checksum) => ChecksumWord + checksum;

    /// <summary>The version in the first line; null where it is not the first line of a part.</summary>
    public static int? VersionOf(string? firstLine) =>
        firstLine?.StartsWith(Title, StringComparison.Ordinal) == true
        && int.TryParse(firstLine.AsSpan(Title.Length), NumberStyles.None, CultureInfo.InvariantCulture, out int version) ? version : null;

    /// <summary>Reads the heading; false where it is none that <see cref="Write"/> would write.</summary>
    public static bool TryReadHeading(TextReader reader, out AtlasShard shard, out ShardCounts counts)
    {
        (shard, counts) = (null!, null!);
        string[] lines = [.. Enumerable.Range(0, 7).Select(_ => reader.ReadLine() ?? string.Empty)];
        long[] numbers = [.. lines.Select(l => long.TryParse(l[(l.LastIndexOf(' ') + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out long value) ? value : 0)];
        if (!AtlasShard.TryParseFraction(lines[3][(lines[3].LastIndexOf(' ') + 1)..], out int number, out int count) || numbers[2] is not (2 or 3)
            || numbers[1] < 1 || numbers[1] > AtlasShard.MostCapacitors((int)numbers[2]) || (numbers[2] == 3 && count > 1))
        {
            return false;
        }

        shard = new AtlasShard((int)numbers[1], number, count, (int)numbers[2]);
        counts = new ShardCounts(numbers[4], numbers[5], numbers[6]);
        return lines.SequenceEqual(Heading(shard, counts));
    }

    private static string[] Heading(AtlasShard shard, ShardCounts counts) =>
    [
        string.Create(CultureInfo.InvariantCulture, $"{Title}{Version}"),
        string.Create(CultureInfo.InvariantCulture, $"capacitors {shard.CapacitorCount}"),
        string.Create(CultureInfo.InvariantCulture, $"phases {shard.PhaseCount}"),
        $"shard {shard.Fraction}",
        string.Create(CultureInfo.InvariantCulture, $"{(shard.PhaseCount == 2 ? "pairs" : "triples")} {counts.Pairs}"),
        string.Create(CultureInfo.InvariantCulture, $"networks {counts.Networks}"),
        string.Create(CultureInfo.InvariantCulture, $"entries {counts.Entries}"),
    ];

    private static byte[] Closing(IncrementalHash hash) => Encoding.ASCII.GetBytes(ClosingOf(Convert.ToHexStringLower(hash.GetHashAndReset())) + "\n");
}
