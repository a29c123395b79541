using ScNet.Topologies;

namespace ScNet.Results.Pages;

/// <summary>The standard families as a page.</summary>
public static class FamilyPage
{
    /// <summary>The page of all families: their parameters, ratios and what they are.</summary>
    public static Page OfCatalogue() => new("Standard families", [new PageTable(
        string.Empty,
        [new("family", false), new("ratio", false), new("--step-up", false), new("sizes", false), new("what it is", false)],
        FamilyCatalogue.All.Select(f => (IEnumerable<PageCell>)[f.Usage, f.Ratio, f.StepUpRatio ?? "-", f.Ranges, f.Description]))]);
}
