namespace ScNet.Design.Choice;

/// <summary>A candidate that cannot do what is required.</summary>
public sealed class RejectedCandidate
{
    private readonly CandidateDesign _design;

    internal RejectedCandidate(CandidateDesign design)
    {
        _design = design;
        Reasons = [.. design.Rejections];
    }

    /// <summary>The candidate.</summary>
    public Candidate Candidate => _design.Candidate;

    /// <summary>Why, in words with figures; at least one reason.</summary>
    public IReadOnlyList<string> Reasons { get; }

    /// <summary>Whether another area, load or process might admit it.</summary>
    internal bool IsOpen => _design.IsOpen;

    /// <summary>The name and the reasons.</summary>
    public override string ToString() => $"{Candidate}: {string.Join("; ", Reasons)}";
}
