using ScNet.Derivations.Expressions;

namespace ScNet.Derivations;

/// <summary>What the check says about one stated closed form. Equality is by statement, verdict and derived form.</summary>
public sealed class FormFinding : IEquatable<FormFinding>
{
    internal FormFinding(FormStatement statement, Verdict verdict, ClosedForm? derived, IReadOnlyList<FormDifference> differences, IReadOnlyList<Slip> slips)
    {
        Statement = statement;
        Verdict = verdict;
        Derived = derived;
        TermDifferences = [.. differences];
        Slips = [.. slips];
    }

    /// <summary>The statement.</summary>
    public FormStatement Statement { get; }

    /// <summary>The verdict; not determined where component values decide and no closed form exists.</summary>
    public Verdict Verdict { get; }

    /// <summary>
    /// The form that the circuit has, for equal components where the statement is; or why there is none.
    /// Null where the mode has no result.
    /// </summary>
    public ClosedForm? Derived { get; }

    /// <summary>The terms that are wrong, missing or too many, as in "missing 1/(9·C_fly2·f)"; none where the statement is not wrong.</summary>
    public IReadOnlyList<string> Differences => [.. TermDifferences.Select(d => d.ToString())];

    /// <summary>The same as terms.</summary>
    internal IReadOnlyList<FormDifference> TermDifferences { get; }

    /// <summary>The suspected slips, the likeliest first; several where they would give the same expression.</summary>
    public IReadOnlyList<Slip> Slips { get; }

    /// <inheritdoc/>
    public bool Equals(FormFinding? other) =>
        other is not null && Statement == other.Statement && Verdict == other.Verdict && Equals(Derived, other.Derived);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as FormFinding);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Statement, Verdict, Derived);

    /// <summary>The verdict, the statement and the derived expression.</summary>
    public override string ToString() => Verdict switch
    {
        Verdict.Right => $"right: {Statement}",
        Verdict.Wrong => $"wrong: {Statement}, derived {Derived!.Expression}",
        _ => $"not determined: {Statement}",
    };
}
