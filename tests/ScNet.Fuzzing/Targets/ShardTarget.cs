using System.Security.Cryptography;
using System.Text;
using ScNet.Search.Shards;

namespace ScNet.Fuzzing.Targets;

/// <summary>
/// Files of parts of an atlas: the bytes, and the checksum that belongs to them. A file whose networks are all
/// accepted is to the byte what is written of them.
/// </summary>
internal static class ShardTarget
{
    private const string Path = "fuzz.shard";

    public static void Try(byte[] bytes)
    {
        byte[] whole = [.. bytes, .. Encoding.ASCII.GetBytes($"sha256 {Convert.ToHexStringLower(SHA256.HashData(bytes))}\n")];
        DiagnosticList findings = new(Path);
        if (ShardFile.Open(Path, () => new MemoryStream(whole), findings) is not { } file)
        {
            Property.Holds(findings.HasErrors, "an error where there is no file");
            return;
        }

        ShardEntry[] entries = [.. file.Read(findings).Select(e => e.Entry)];
        if (!findings.HasErrors)
        {
            using MemoryStream written = new();
            ShardText.Write(written, file.Shard, file.Counts, entries);
            Property.Holds(written.ToArray().AsSpan().SequenceEqual(whole), "to write the bytes that were read");
        }
    }
}
