namespace ScNet.Derivations;

/// <summary>
/// Statements and laws of the circuit that cannot all hold, none of which can be left out: without any one
/// of them the others agree.
/// </summary>
public sealed class Conflict : IEquatable<Conflict>
{
    internal Conflict(IEnumerable<Statement> statements, IEnumerable<string> equations, IEnumerable<Equation>? laws = null)
    {
        Statements = [.. statements];
        Equations = [.. equations];
        Laws = laws is null ? [] : [.. laws];
    }

    /// <summary>The laws themselves, where they are linear.</summary>
    internal IReadOnlyList<Equation> Laws { get; }

    /// <summary>The statements; at least one.</summary>
    public IReadOnlyList<Statement> Statements { get; }

    /// <summary>The laws in words: "balance of fly1", "KCL at p1+vin in phase 1".</summary>
    public IReadOnlyList<string> Equations { get; }

    /// <inheritdoc/>
    public bool Equals(Conflict? other) =>
        other is not null && Statements.SequenceEqual(other.Statements) && Equations.SequenceEqual(other.Equations);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Conflict);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Statements.Count, Statements[0], Equations.Count);

    /// <summary>The statements, then the laws.</summary>
    public override string ToString() => Equations.Count == 0
        ? string.Join("; ", Statements)
        : $"{string.Join("; ", Statements)}; against {string.Join("; ", Equations)}";
}
