namespace ScNet.Results.Pages;

/// <summary>Remarks, findings or explanations, a line each.</summary>
/// <param name="lines">The lines.</param>
/// <param name="isCaution">Whether they warn of something.</param>
public sealed class PageRemarks(IEnumerable<string> lines, bool isCaution = false) : PageBlock
{
    /// <summary>The lines.</summary>
    public IReadOnlyList<string> Lines { get; } = [.. lines];

    /// <summary>Whether they warn of something.</summary>
    public bool IsCaution { get; } = isCaution;
}
