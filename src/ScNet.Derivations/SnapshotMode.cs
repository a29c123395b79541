namespace ScNet.Derivations;

/// <summary>A mode of a snapshot.</summary>
/// <param name="Name">The name.</param>
/// <param name="HasResult">Whether it has values.</param>
/// <param name="DeterminedBy">What decides the capacitors' flow: "topology" or "componentValues"; null without result.</param>
public sealed record SnapshotMode(string Name, bool HasResult, string? DeterminedBy)
{
    /// <summary>The name and what decides the flow.</summary>
    public override string ToString() => HasResult ? $"{Name}: flow by {DeterminedBy}" : $"{Name}: no result";
}
