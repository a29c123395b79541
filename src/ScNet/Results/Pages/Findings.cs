namespace ScNet.Results.Pages;

/// <summary>Findings on a page.</summary>
internal static class Findings
{
    /// <summary>The findings as a caution; nothing where there are none.</summary>
    public static IEnumerable<PageBlock> Of(IEnumerable<Diagnostic> diagnostics)
    {
        string[] lines = [.. diagnostics.Select(d => d.ToString())];
        return lines.Length == 0 ? [] : [new PageRemarks(lines, isCaution: true)];
    }
}
