namespace ScNet;

/// <summary>Refuses what there is for converters of switches and capacitors only.</summary>
internal static class InductorSupport
{
    /// <summary>Throws where a converter has inductors.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="what">What is asked for, as the subject of a sentence.</param>
    /// <exception cref="ScNetException">It has; the code is <see cref="DiagnosticCodes.InductorsUnsupported"/>.</exception>
    public static void Refuse(Converter converter, string what)
    {
        if (converter.Inductors.Count > 0)
        {
            throw new ScNetException($"'{converter.Name}' has inductors:", [new Diagnostic(
                DiagnosticSeverity.Error,
                DiagnosticCodes.InductorsUnsupported,
                $"{what} is there for converters of switches and capacitors only. Leave the inductors out, or read the analysis of the mode.",
                [.. converter.Inductors.Select(l => l.Name)])]);
        }
    }
}
