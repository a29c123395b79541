using System.Diagnostics.CodeAnalysis;

namespace ScNet.Derivations.Documents;

/// <summary>What came of reading a derivation document: a derivation, or every mistake in the document. Immutable.</summary>
public sealed class DerivationReading
{
    private readonly string _source;

    internal DerivationReading(Derivation? derivation, IReadOnlyList<Diagnostic> diagnostics, string source)
    {
        Derivation = derivation;
        Diagnostics = [.. diagnostics];
        _source = source;
    }

    /// <summary>What is stated; null where there is an error.</summary>
    public Derivation? Derivation { get; }

    /// <summary>Every error with file, line and column in the order of the document, those of the netlist among them; where there is none, the warnings.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics { get; }

    /// <summary>Whether there is a derivation.</summary>
    [MemberNotNullWhen(true, nameof(Derivation))]
    public bool HasResult => Derivation is not null;

    /// <summary>The derivation.</summary>
    /// <exception cref="ScNetException">The document has errors; the exception carries all of them.</exception>
    public Derivation GetDerivation() => Derivation ?? throw new ScNetException($"{_source} cannot be read:", Diagnostics);

    /// <summary>The derivation, or the errors one per line.</summary>
    public override string ToString() => Derivation?.ToString() ?? string.Join('\n', Diagnostics);
}
