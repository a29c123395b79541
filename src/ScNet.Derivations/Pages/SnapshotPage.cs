using ScNet.Derivations.Snapshots;
using ScNet.Results.Pages;

namespace ScNet.Derivations.Pages;

/// <summary>A snapshot, as a person reads it: every value that it holds.</summary>
public static class SnapshotPage
{
    /// <summary>The page of a snapshot.</summary>
    /// <param name="snapshot">The snapshot.</param>
    public static Page Of(AnalysisSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        return new Page($"{snapshot.Converter}: snapshot", snapshot.Modes.SelectMany(Blocks), snapshot.Modes.All(m => m.HasResult));
    }

    private static IEnumerable<PageBlock> Blocks(SnapshotMode mode) =>
    [
        new PageHeading($"Mode {mode}"),
        .. mode.Entries.Count > 0
            ? [new PageTable(
                string.Empty,
                [new("value of", IsFigure: false), new("value", IsFigure: true)],
                mode.Entries.Select(e => (IEnumerable<PageCell>)[e.Key.Description, new(e.Text, e.Value.IsDetermined ? e.Value.ToDouble() : null)]))]
            : Array.Empty<PageBlock>(),
    ];
}
