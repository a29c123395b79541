namespace ScNet.Design.Requirements;

/// <summary>A candidate, or a range of them, that a requirement asks for.</summary>
public sealed record CandidateRequest
{
    /// <summary>The netlist file; null for a family.</summary>
    public string? File { get; init; }

    /// <summary>The families whose gears are laid over each other, or the one family, such as "ladder"; empty for a file.</summary>
    public IReadOnlyList<string> Families { get; init => field = [.. value]; } = [];

    /// <summary>The smallest and the largest size of the family.</summary>
    public Interval<int> Sizes { get; init; }

    /// <summary>Whether all sizes make one converter with a gear each instead of a candidate each.</summary>
    public bool AreGears { get; init; }

    /// <summary>The file or the families.</summary>
    public override string ToString() => File ?? $"{string.Join(" + ", Families)} {Sizes.Minimum} to {Sizes.Maximum}";
}
