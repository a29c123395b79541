using System.Diagnostics.CodeAnalysis;

namespace ScNet.Search.Shards;

/// <summary>What came of putting the parts of a folder together: a file as one process would have written it, or everything that stands against it.</summary>
public sealed class ShardMerge
{
    private ShardMerge(AtlasShard? whole, ShardCounts? counts, IReadOnlyList<Diagnostic> diagnostics)
    {
        Whole = whole;
        Counts = counts;
        Diagnostics = [.. diagnostics];
    }

    /// <summary>The work as one part; null where there are findings.</summary>
    public AtlasShard? Whole { get; }

    /// <summary>The counts of all parts, with the entries that none of another part beats; null where there are findings.</summary>
    public ShardCounts? Counts { get; }

    /// <summary>Every file that is damaged, of another size or of three phases, or there twice, the parts that are missing, and counts that do not add up, each with what to do.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics { get; }

    /// <summary>Whether the file was written.</summary>
    [MemberNotNullWhen(true, nameof(Whole), nameof(Counts))]
    public bool HasResult => Whole is not null;

    /// <summary>Puts the parts together; in which order they were made or are listed does not matter.</summary>
    /// <param name="folder">The folder whose files end with <see cref="AtlasShard.Extension"/>.</param>
    /// <param name="output">The file to write, whole or not at all.</param>
    /// <remarks>Reads every file twice, once to check and once to merge, and keeps the entries of the outcome in memory.</remarks>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public static ShardMerge Of(string folder, string output)
    {
        ArgumentException.ThrowIfNullOrEmpty(folder);
        ArgumentException.ThrowIfNullOrEmpty(output);
        DiagnosticList findings = new(folder);
        if (ShardSet.Open(folder, findings) is { } parts)
        {
            ShardEntry[] entries = [.. parts.Merged(findings)];
            if (!findings.HasErrors)
            {
                AtlasShard whole = new(parts.Shard.CapacitorCount, 1, 1);
                ShardCounts counts = new(parts.Files.Sum(f => f.Counts.Pairs), parts.Files.Sum(f => f.Counts.Networks), entries.Length);
                AtomicFile.Write(output, stream => ShardText.Write(stream, whole, counts, entries));
                return new ShardMerge(whole, counts, []);
            }
        }

        return new ShardMerge(null, null, findings.Findings());
    }
}
