namespace ScNet.Derivations.Snapshots;

/// <summary>A mode of a snapshot.</summary>
/// <param name="name">The name.</param>
/// <param name="determinedBy">What decides the capacitors' flow: "topology" or "componentValues"; null without result.</param>
/// <param name="entries">Every value, in the order of the analysis document; none without result.</param>
internal sealed class SnapshotMode(string name, string? determinedBy, IReadOnlyList<SnapshotEntry> entries)
    : IEquatable<SnapshotMode>
{
    public string Name => name;

    public string? DeterminedBy => determinedBy;

    public IReadOnlyList<SnapshotEntry> Entries => entries;

    public bool HasResult => determinedBy is not null;

    public bool Equals(SnapshotMode? other) =>
        other is not null && name == other.Name && determinedBy == other.DeterminedBy && entries.SequenceEqual(other.Entries);

    public override bool Equals(object? obj) => Equals(obj as SnapshotMode);

    public override int GetHashCode() => HashCode.Combine(name, determinedBy, entries.Count);

    /// <summary>The name and what decides the flow.</summary>
    public override string ToString() => HasResult ? $"{name}: flow by {determinedBy}" : $"{name}: no result";
}
