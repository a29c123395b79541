namespace ScNet.Derivations;

/// <summary>The outcome of checking a derivation: a comparable value that reads well in a failed assertion.</summary>
public sealed class DerivationReport : IEquatable<DerivationReport>
{
    internal DerivationReport(string title, IReadOnlyList<Finding> findings, IReadOnlyList<FormFinding> forms, IReadOnlyList<Slip> slips, IReadOnlyList<Diagnostic> diagnostics)
    {
        Title = title;
        Findings = [.. findings];
        Forms = [.. forms];
        Slips = [.. slips];
        Diagnostics = [.. diagnostics];
    }

    /// <summary>The name of the converter, and of the mode where there are several.</summary>
    public string Title { get; }

    /// <summary>Whether something is stated and every statement is right.</summary>
    public bool IsRight => HasResult && Findings.Count + Forms.Count > 0
        && Findings.All(f => f.Verdict == Verdict.Right) && Forms.All(f => f.Verdict == Verdict.Right);

    /// <summary>Whether the mode has a result to compare with; where not, every statement is not determined.</summary>
    public bool HasResult => Diagnostics.Count == 0;

    /// <summary>One finding per statement, in the order in which they were stated.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>One finding per stated closed form, in the order in which they were stated.</summary>
    public IReadOnlyList<FormFinding> Forms { get; }

    /// <summary>The findings about wrong statements.</summary>
    public IEnumerable<Finding> Wrong => Findings.Where(f => f.Verdict == Verdict.Wrong);

    /// <summary>The findings about values that nothing fixes.</summary>
    public IEnumerable<Finding> Undetermined => Findings.Where(f => f.Verdict == Verdict.Undetermined);

    /// <summary>The suspected slips, the one that explains the most statements first.</summary>
    public IReadOnlyList<Slip> Slips { get; }

    /// <summary>Why the mode has no result; empty where it has one.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics { get; }

    /// <inheritdoc/>
    public bool Equals(DerivationReport? other) => other is not null && Title == other.Title
        && Findings.SequenceEqual(other.Findings) && Forms.SequenceEqual(other.Forms) && Slips.SequenceEqual(other.Slips)
        && Diagnostics.Select(d => d.ToString()).SequenceEqual(other.Diagnostics.Select(d => d.ToString()));

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as DerivationReport);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Title, Findings.Count, Forms.Count, Findings.Count > 0 ? Findings[0] : null);

    /// <summary>The verdict, the slips, then each statement that is not right with what it breaks.</summary>
    public override string ToString() => ReportText.Of(this);
}
