namespace ScNet.Derivations;

/// <summary>A suspected slip: one mistake that gives exactly the wrong values, or the wrong expression, that was stated.</summary>
public sealed class Slip : IEquatable<Slip>
{
    internal Slip(SlipKind kind, string description, IEnumerable<Statement> explains)
    {
        Kind = kind;
        Description = description;
        Explains = [.. explains];
    }

    /// <summary>The slip in words: "terminals of fly1 reversed".</summary>
    public string Description { get; }

    /// <summary>The wrong statements that it explains; none for a slip in a closed form.</summary>
    public IReadOnlyList<Statement> Explains { get; }

    internal SlipKind Kind { get; }

    /// <inheritdoc/>
    public bool Equals(Slip? other) => other is not null && Kind == other.Kind
        && Description == other.Description && Explains.SequenceEqual(other.Explains);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Slip);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Kind, Description, Explains.Count);

    /// <summary>The slip in words.</summary>
    public override string ToString() => Description;
}
