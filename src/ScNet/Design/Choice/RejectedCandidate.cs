namespace ScNet.Design.Choice;

/// <summary>A candidate that cannot do what is required.</summary>
public sealed class RejectedCandidate
{
    internal RejectedCandidate(Candidate candidate, IReadOnlyList<string> reasons)
    {
        Candidate = candidate;
        Reasons = [.. reasons];
    }

    /// <summary>The candidate.</summary>
    public Candidate Candidate { get; }

    /// <summary>Why, in words with figures; at least one reason.</summary>
    public IReadOnlyList<string> Reasons { get; }

    /// <summary>The name and the reasons.</summary>
    public override string ToString() => $"{Candidate}: {string.Join("; ", Reasons)}";
}
