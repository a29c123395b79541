namespace ScNet;

/// <summary>
/// Thrown when a result is asked for that a user's netlist does not have. It carries every finding,
/// not only the first. A programming mistake is an <see cref="ArgumentException"/> instead.
/// </summary>
public sealed class ScNetException : Exception
{
    /// <summary>Creates the exception from its findings.</summary>
    /// <param name="summary">What was asked for and cannot be had.</param>
    /// <param name="diagnostics">Every finding, errors and warnings.</param>
    public ScNetException(string summary, IReadOnlyList<Diagnostic> diagnostics)
        : base(string.Join(Environment.NewLine, [summary, .. diagnostics.Select(d => "  " + d)]))
    {
        Diagnostics = [.. diagnostics];
    }

    /// <summary>Every finding, errors and warnings, in the order found.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics { get; }
}
