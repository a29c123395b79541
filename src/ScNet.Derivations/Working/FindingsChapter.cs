namespace ScNet.Derivations.Working;

/// <summary>Where the mode fails, and what is odd about it.</summary>
internal static class FindingsChapter
{
    public static IEnumerable<Block> Write(WorkedMode mode)
    {
        Diagnostic[] errors = [.. mode.Outcome.Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error)];
        Diagnostic[] warnings = [.. mode.Outcome.Diagnostics.Except(errors), .. mode.Converter.Warnings];
        if (errors.Length > 0)
        {
            yield return new Heading(2, "Where it fails");
            yield return new Paragraph("The mode has no result:");
            yield return new Bullets([.. errors.Select(d => (Line)d.Message)]);
        }

        if (warnings.Length > 0)
        {
            yield return new Heading(2, "Remarks");
            yield return new Bullets([.. warnings.Select(d => (Line)d.Message)]);
        }
    }
}
