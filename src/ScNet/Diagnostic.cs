namespace ScNet;

/// <summary>One finding about a netlist or a mode: what is wrong, where, and what to do about it.</summary>
public sealed class Diagnostic
{
    /// <summary>Creates a finding.</summary>
    /// <param name="severity">Whether it stands in the way of a result.</param>
    /// <param name="code">One of <see cref="DiagnosticCodes"/>.</param>
    /// <param name="message">What is wrong and what to do, for a person.</param>
    /// <param name="elements">The names of the elements concerned, in the order of the message.</param>
    /// <param name="phase">The phase number from 1, or null where none applies.</param>
    /// <param name="position">The place in the netlist document, or null where there is none.</param>
    public Diagnostic(
        DiagnosticSeverity severity,
        string code,
        string message,
        IEnumerable<string>? elements = null,
        int? phase = null,
        SourcePosition? position = null)
    {
        ArgumentException.ThrowIfNullOrEmpty(code);
        ArgumentException.ThrowIfNullOrEmpty(message);
        Severity = severity;
        Code = code;
        Message = message;
        Elements = elements is null ? [] : [.. elements];
        Phase = phase;
        Position = position;
    }

    /// <summary>Whether it stands in the way of a result.</summary>
    public DiagnosticSeverity Severity { get; }

    /// <summary>The stable identifier of the kind of finding, one of <see cref="DiagnosticCodes"/>.</summary>
    public string Code { get; }

    /// <summary>What is wrong and what to do, for a person.</summary>
    public string Message { get; }

    /// <summary>The names of the elements concerned.</summary>
    public IReadOnlyList<string> Elements { get; }

    /// <summary>The phase number from 1, or null where none applies.</summary>
    public int? Phase { get; }

    /// <summary>The place in the netlist document, or null where there is none.</summary>
    public SourcePosition? Position { get; }

    /// <summary>Position, severity, code and message on one line.</summary>
    public override string ToString()
    {
        string place = Position is { } position ? $"{position}: " : string.Empty;
        string severity = Severity == DiagnosticSeverity.Error ? "error" : "warning";
        return $"{place}{severity} {Code}: {Message}";
    }
}
