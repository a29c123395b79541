using System.Diagnostics.CodeAnalysis;

namespace ScNet.Design.Requirements;

/// <summary>What came of reading a requirement document: a requirement, or every mistake in the document. Immutable.</summary>
public sealed class RequirementReading
{
    private readonly string _source;

    internal RequirementReading(Requirement? requirement, IReadOnlyList<Diagnostic> diagnostics, string source)
    {
        Requirement = requirement;
        Diagnostics = [.. diagnostics];
        _source = source;
    }

    /// <summary>The requirement; null where there is an error.</summary>
    public Requirement? Requirement { get; }

    /// <summary>Every error with file, line and column in the order of the document; where there is none, the warnings.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics { get; }

    /// <summary>Whether there is a requirement.</summary>
    [MemberNotNullWhen(true, nameof(Requirement))]
    public bool HasResult => Requirement is not null;

    /// <summary>The requirement.</summary>
    /// <exception cref="ScNetException">The document has errors; the exception carries all of them.</exception>
    public Requirement GetRequirement() => Requirement ?? throw new ScNetException($"{_source} cannot be read:", Diagnostics);

    /// <summary>The requirement, or the errors one per line.</summary>
    public override string ToString() => Requirement?.ToString() ?? string.Join('\n', Diagnostics);
}
