namespace ScNet;

/// <summary>Collects findings; numbers in messages are written the same under every culture.</summary>
/// <param name="file">The document that is read, or null where there is none.</param>
internal sealed class DiagnosticList(string? file = null)
{
    /// <summary>The most errors that are kept; a description with more is not a netlist.</summary>
    public const int MaximumCount = 1000;

    private readonly List<Diagnostic> _errors = [];
    private readonly List<Diagnostic> _warnings = [];
    private int _errorCount;

    public string? File => file;

    public bool HasErrors => _errorCount > 0;

    public IReadOnlyList<Diagnostic> Warnings => [.. _warnings];

    public void Error(string code, FormattableString message, SourcePosition? position, string[]? elements = null, int? phase = null)
    {
        _errorCount++;
        if (_errors.Count < MaximumCount)
        {
            _errors.Add(new Diagnostic(DiagnosticSeverity.Error, code, FormattableString.Invariant(message), elements, phase, position));
        }
    }

    public void Warning(string code, FormattableString message, SourcePosition? position, string[]? elements = null) =>
        _warnings.Add(new Diagnostic(DiagnosticSeverity.Warning, code, FormattableString.Invariant(message), elements, position: position));

    /// <summary>Every error in the order of the document, with a closing line where some had to be left out; the warnings where there is none.</summary>
    public IReadOnlyList<Diagnostic> Findings()
    {
        if (!HasErrors)
        {
            return Warnings;
        }

        Diagnostic[] shown = [.. _errors.OrderBy(d => d.Position?.Line).ThenBy(d => d.Position?.Column)];
        int more = _errorCount - shown.Length;
        return more == 0 ? [.. shown] : [.. shown, new Diagnostic(
            DiagnosticSeverity.Error,
            shown[^1].Code,
            FormattableString.Invariant($"{more} more errors are not shown. Correct the first ones."),
            position: shown[^1].Position)];
    }
}
