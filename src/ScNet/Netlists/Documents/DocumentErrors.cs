using Tomlyn.Syntax;

namespace ScNet.Netlists.Documents;

/// <summary>The mistakes found in one document, with their places.</summary>
internal sealed class DocumentErrors(string? file)
{
    /// <summary>The most errors that are kept; a document with more is not a netlist.</summary>
    public const int MaximumCount = 1000;

    private readonly List<Diagnostic> _errors = [];

    public string? File => file;

    /// <summary>How many mistakes there are, kept or not.</summary>
    public int Count { get; private set; }

    /// <summary>The place of a node of the syntax tree, counted from 1.</summary>
    public SourcePosition PositionOf(SyntaxNodeBase node)
    {
        TextPosition start = node.Span.Start;
        return new SourcePosition(file, start.Line + 1, start.Column + 1);
    }

    public void Add(string code, FormattableString message, SourcePosition position, string[]? elements = null)
    {
        Count++;
        if (_errors.Count < MaximumCount)
        {
            _errors.Add(new Diagnostic(DiagnosticSeverity.Error, code, FormattableString.Invariant(message), elements, position: position));
        }
    }

    /// <summary>These and the other errors in the order of the document, with a closing line where some had to be left out.</summary>
    public Diagnostic[] With(IReadOnlyList<Diagnostic> others)
    {
        Diagnostic[] otherErrors = [.. others.Where(o => o.Severity == DiagnosticSeverity.Error)];
        Diagnostic[] all = [.. _errors
            .Concat(otherErrors)
            .OrderBy(d => d.Position?.Line).ThenBy(d => d.Position?.Column)
            .Take(MaximumCount)];
        int more = Count + otherErrors.Length - all.Length;
        return more <= 0 ? all : [.. all, new Diagnostic(
            DiagnosticSeverity.Error,
            all[^1].Code,
            FormattableString.Invariant($"{more} more errors are not shown. Correct the first ones."),
            position: all[^1].Position)];
    }
}
