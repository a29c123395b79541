namespace ScNet.Netlists;

/// <summary>Collects findings; numbers in messages are written the same under every culture.</summary>
internal sealed class DiagnosticList
{
    private readonly List<Diagnostic> _errors = [];
    private readonly List<Diagnostic> _warnings = [];

    public bool HasErrors => _errors.Count > 0;

    public IReadOnlyList<Diagnostic> Warnings => _warnings;

    /// <summary>Every error, or the warnings where there is none.</summary>
    public IReadOnlyList<Diagnostic> Findings => HasErrors ? _errors : _warnings;

    public void Error(string code, FormattableString message, SourcePosition? position, string[]? elements = null, int? phase = null) =>
        _errors.Add(new Diagnostic(DiagnosticSeverity.Error, code, FormattableString.Invariant(message), elements, phase, position));

    public void Warning(string code, FormattableString message, SourcePosition? position, string[]? elements = null) =>
        _warnings.Add(new Diagnostic(DiagnosticSeverity.Warning, code, FormattableString.Invariant(message), elements, position: position));
}
