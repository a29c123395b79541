namespace ScNet.Results.Pages;

/// <summary>Single figures, one to a line: what it is, then the value.</summary>
/// <param name="figures">The figures in their order.</param>
public sealed class PageFigures(IEnumerable<PageFigure> figures) : PageBlock
{
    /// <summary>The figures in their order.</summary>
    public IReadOnlyList<PageFigure> Figures { get; } = [.. figures];
}

/// <summary>A figure with its name.</summary>
/// <param name="Name">What it is: "Ideal ratio".</param>
/// <param name="Value">The value with its unit.</param>
/// <param name="Key">The path of the same figure in JSON and CSV; null where there is none.</param>
public sealed record PageFigure(string Name, string Value, string? Key = null);
