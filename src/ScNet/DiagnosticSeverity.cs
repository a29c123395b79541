namespace ScNet;

/// <summary>Whether a finding stands in the way of a result.</summary>
public enum DiagnosticSeverity
{
    /// <summary>A harmless oddity: the results stand.</summary>
    Warning,

    /// <summary>There is no meaningful result.</summary>
    Error,
}
