using System.Globalization;
using ScNet.Search.Atlases;
using ScNet.Search.Pairs;

namespace ScNet.Search.Shards;

/// <summary>Files of all parts of one work, each once, whose counts add up.</summary>
internal sealed class ShardSet
{
    private ShardSet(IReadOnlyList<ShardFile> files) => Files = files;

    /// <summary>The files, in the order of their parts.</summary>
    public IReadOnlyList<ShardFile> Files { get; }

    /// <summary>The first part.</summary>
    public AtlasShard Shard => Files[0].Shard;

    /// <summary>Opens the files of a folder; null where the findings say what stands against it.</summary>
    public static ShardSet? Open(string folder, DiagnosticList findings)
    {
        if (!Directory.Exists(folder))
        {
            findings.Error(DiagnosticCodes.FileUnreadable, $"There is no folder {Quoted.Name(folder)}. Correct the path.", ShardFile.At(folder));
            return null;
        }

        string[] paths = [.. Directory.EnumerateFiles(folder, "*" + AtlasShard.Extension).Where(p => !Path.GetFileName(p).StartsWith('.')).Order(StringComparer.Ordinal)];
        List<ShardFile> files = [.. paths.Select(p => ShardFile.Open(p, findings)).OfType<ShardFile>()];
        if (files.Count == 0)
        {
            findings.Error(
                DiagnosticCodes.ShardMissing,
                $"There is no sound file of a part, *{AtlasShard.Extension}, in {Quoted.Name(folder)}. Make the parts into this folder.",
                ShardFile.At(folder));
            return null;
        }

        files = OfTwoPhases(files, findings);
        if (files.Count == 0)
        {
            return null;
        }

        files = OfOneWork(files, findings);
        files = EachOnce(files, findings);
        CheckMissing(files, folder, findings);
        if (!findings.HasErrors)
        {
            CheckCounts(files, folder, findings);
        }

        return findings.HasErrors ? null : new ShardSet(files);
    }

    /// <summary>The entries that no entry of another part beats, in order; one ratio at a time is in memory.</summary>
    public IEnumerable<ShardEntry> Merged(DiagnosticList findings)
    {
        PriorityQueue<IEnumerator<(ShardEntry Entry, FrontEntry Network)>, ShardEntry> next = new();
        foreach (ShardFile file in Files)
        {
            Advance(file.Read(findings).GetEnumerator(), next);
        }

        while (next.TryPeek(out _, out ShardEntry first))
        {
            FrontOfRatio front = new();
            while (next.TryPeek(out IEnumerator<(ShardEntry Entry, FrontEntry Network)>? entries, out ShardEntry entry) && entry.Ratio == first.Ratio)
            {
                if (!front.Beats(entries.Current.Network.Key))
                {
                    front.Add(entries.Current.Network.Key, entries.Current.Network.Place);
                }

                next.Dequeue();
                Advance(entries, next);
            }

            foreach (ShardEntry entry in front.Entries.Select(e => ShardEntry.Of(first.Ratio, e.Place)).Order())
            {
                yield return entry;
            }
        }
    }

    private static void Advance(
        IEnumerator<(ShardEntry Entry, FrontEntry Network)> entries, PriorityQueue<IEnumerator<(ShardEntry Entry, FrontEntry Network)>, ShardEntry> next)
    {
        if (entries.MoveNext())
        {
            next.Enqueue(entries, entries.Current.Entry);
        }
        else
        {
            entries.Dispose();
        }
    }

    private static List<ShardFile> OfTwoPhases(List<ShardFile> files, DiagnosticList findings)
    {
        foreach (ShardFile file in files.Where(f => f.Shard.PhaseCount != 2))
        {
            findings.Error(
                DiagnosticCodes.ShardMismatch,
                $"{ShardFile.Name(file.Path)} holds networks of three phases, which are whole in one file and not put together with others. Move it to a folder of its own.",
                ShardFile.At(file.Path));
        }

        return [.. files.Where(f => f.Shard.PhaseCount == 2)];
    }

    // what most files are parts of is what is meant
    private static List<ShardFile> OfOneWork(List<ShardFile> files, DiagnosticList findings)
    {
        AtlasShard meant = files.GroupBy(f => Work(f.Shard)).OrderByDescending(g => g.Count()).First().Key;
        foreach (ShardFile file in files.Where(f => Work(f.Shard) != meant))
        {
            findings.Error(
                DiagnosticCodes.ShardMismatch,
                $"{ShardFile.Name(file.Path)} is {file.Shard}, but most files here are one of {meant.Count} parts of {meant.CapacitorCount} capacitors. Move it to a folder of its own.",
                ShardFile.At(file.Path));
        }

        return [.. files.Where(f => Work(f.Shard) == meant)];
    }

    private static AtlasShard Work(AtlasShard shard) => new(shard.CapacitorCount, 1, shard.Count);

    private static List<ShardFile> EachOnce(List<ShardFile> files, DiagnosticList findings)
    {
        List<ShardFile> once = [];
        foreach (ShardFile[] same in files.GroupBy(f => f.Shard.Number).OrderBy(g => g.Key).Select(g => g.ToArray()))
        {
            once.Add(same[0]);
            foreach (ShardFile other in same.Where(f => f.Checksum != same[0].Checksum))
            {
                findings.Error(
                    DiagnosticCodes.ShardDoubled,
                    $"{ShardFile.Name(other.Path)} and {ShardFile.Name(same[0].Path)} are both part {other.Shard.Fraction}, but with different contents. Delete both and make the part again.",
                    ShardFile.At(other.Path));
            }
        }

        return once;
    }

    private static void CheckMissing(List<ShardFile> files, string folder, DiagnosticList findings)
    {
        int[] missing = [.. Enumerable.Range(1, files[0].Shard.Count).Except(files.Select(f => f.Shard.Number))];
        if (missing.Length > 0)
        {
            findings.Error(
                DiagnosticCodes.ShardMissing,
                $"{UnitText.Count(missing.Length, "part", "parts")} of {files[0].Shard.Count} {(missing.Length == 1 ? "is" : "are")} missing: {Ranges(missing)}. Make what is missing into this folder.",
                ShardFile.At(folder));
        }
    }

    private static void CheckCounts(List<ShardFile> files, string folder, DiagnosticList findings)
    {
        long decided = files.Sum(f => f.Counts.Pairs), pairs = PairTotal.Of(files[0].Shard.CapacitorCount);
        if (decided != pairs)
        {
            findings.Error(
                DiagnosticCodes.ShardCounts,
                $"Expected {pairs} pairs decided, as many as there are, but the parts decided {decided}. Make all parts again with one version of the program.",
                ShardFile.At(folder));
        }
    }

    // as an array job takes them: 3,7-9
    private static string Ranges(int[] numbers)
    {
        List<(int First, int Last)> ranges = [];
        foreach (int number in numbers)
        {
            if (ranges.Count > 0 && ranges[^1].Last == number - 1)
            {
                ranges[^1] = (ranges[^1].First, number);
            }
            else
            {
                ranges.Add((number, number));
            }
        }

        return string.Join(',', ranges.Select(r => r.First == r.Last ? Text(r.First) : $"{Text(r.First)}-{Text(r.Last)}"));
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
