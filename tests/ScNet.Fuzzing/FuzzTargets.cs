using ScNet.Fuzzing.Targets;

namespace ScNet.Fuzzing;

/// <summary>The targets: everything of the libraries and the tool that reads text.</summary>
internal static class FuzzTargets
{
    /// <summary>All of them, in the order in which a campaign runs them.</summary>
    public static IReadOnlyList<FuzzTarget> All { get; } =
    [
        new("netlist", 2000, 7, NetlistTarget.Try),
        new("analysis", 1500, 3, AnalysisTarget.Try),
        new("requirement", 3000, 5, RequirementTarget.Try),
        new("derivation", 1500, 7, DerivationTarget.Try),
        new("snapshot", 3000, 10, SnapshotTarget.Try),
        new("expression", 400, 16, ExpressionTarget.Try),
        new("frequencies", 100, 20, FrequencyTarget.Try),
        new("options", 100, 20, OptionTarget.Try),
        new("shard", 600, 12, ShardTarget.Try),
    ];

    /// <summary>The target of a name.</summary>
    /// <exception cref="ArgumentException">There is none.</exception>
    public static FuzzTarget Named(string name) => All.FirstOrDefault(t => t.Name == name)
        ?? throw new ArgumentException($"There is no target '{name}'. There are {string.Join(", ", All.Select(t => t.Name))}.", nameof(name));
}
