using System.Diagnostics.CodeAnalysis;

namespace ScNet.Netlists;

/// <summary>What came of reading a netlist document: a converter, or every mistake in the document. Immutable.</summary>
public sealed class NetlistReading
{
    private readonly string _source;

    internal NetlistReading(Converter? converter, IReadOnlyList<Diagnostic> diagnostics, string source)
    {
        Converter = converter;
        Diagnostics = [.. diagnostics];
        _source = source;
    }

    /// <summary>The converter; null where there is an error.</summary>
    public Converter? Converter { get; }

    /// <summary>Every error with file, line and column in the order of the document; where there is none, the warnings.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics { get; }

    /// <summary>Whether there is a converter.</summary>
    [MemberNotNullWhen(true, nameof(Converter))]
    public bool HasResult => Converter is not null;

    /// <summary>The converter.</summary>
    /// <exception cref="ScNetException">The document has errors; the exception carries all of them.</exception>
    public Converter GetConverter() => Converter ?? throw new ScNetException($"{_source} cannot be read:", Diagnostics);

    /// <summary>The converter, or the errors one per line.</summary>
    public override string ToString() => Converter?.ToString() ?? string.Join('\n', Diagnostics);
}
