namespace ScNet.Derivations;

/// <summary>What the check says about one statement. Equality is by statement, verdict and derived value.</summary>
public sealed class Finding : IEquatable<Finding>
{
    private readonly Lazy<Explanation> _explanation;

    internal Finding(Statement statement, Verdict verdict, Quantity derived, IReadOnlyList<Slip> slips, Func<Explanation>? explain)
    {
        Statement = statement;
        Verdict = verdict;
        Derived = derived;
        Slips = [.. slips];
        _explanation = new Lazy<Explanation>(explain ?? (() => new Explanation(null, derived, null)));
    }

    /// <summary>The statement.</summary>
    public Statement Statement { get; }

    /// <summary>The verdict.</summary>
    public Verdict Verdict { get; }

    /// <summary>The value that the circuit has; undetermined where nothing fixes it.</summary>
    public Quantity Derived { get; }

    /// <summary>
    /// For a value that is wrong or not determined: the law that it breaks together with the other statements,
    /// in words and numbers; null where none does. Values in brackets are computed, not stated.
    /// </summary>
    public string? BrokenEquation => _explanation.Value.BrokenEquation;

    /// <summary>
    /// The value that the other statements leave for this one, if they are right: from the broken equation
    /// where every value in it is stated, else from all laws together; undetermined where they leave it open.
    /// </summary>
    public Quantity IfOthersAreRight => _explanation.Value.IfOthersAreRight;

    /// <summary>A smallest set of statements and laws that contradict each other and in which this statement takes part; null where there is none.</summary>
    public Conflict? Conflict => _explanation.Value.Conflict;

    /// <summary>The suspected slips, the likeliest first; several where they would give the same values.</summary>
    public IReadOnlyList<Slip> Slips { get; }

    /// <inheritdoc/>
    public bool Equals(Finding? other) =>
        other is not null && Statement == other.Statement && Verdict == other.Verdict && Derived == other.Derived;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Finding);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Statement, Verdict, Derived);

    /// <summary>The verdict, the statement and the derived value.</summary>
    public override string ToString() => Verdict switch
    {
        Verdict.Right => $"right: {Statement}",
        Verdict.Wrong => $"wrong: {Statement}, derived {Derived}",
        _ => $"not determined: {Statement}",
    };
}
