using ScNet.Analysis;
using ScNet.Devices;

namespace ScNet.Design.Sizing;

/// <summary>Efficiency against power density: the best sizes at a row of areas, for the same points.</summary>
/// <remarks>
/// Twice the area at twice the load has the same efficiency but for control, so that the curve speaks of every load: only power
/// per area counts. A larger area allows all that a smaller one does, so efficiency does not rise with density. docs/theory/sizing.md, "Scaling".
/// </remarks>
public sealed class TradeOffCurve
{
    private TradeOffCurve(IReadOnlyList<TradeOffPoint> points) => Points = points;

    /// <summary>The points by rising area, hence by falling density.</summary>
    public IReadOnlyList<TradeOffPoint> Points { get; }

    /// <summary>Sizes a converter at several areas.</summary>
    /// <param name="analysis">The analysis of the converter.</param>
    /// <param name="process">What it can be made of.</param>
    /// <param name="points">The points that count; an area counts only where all of them are reached.</param>
    /// <param name="areas">The areas, each a budget of its own.</param>
    /// <param name="frequencyHz">Floor and ceiling of the frequency in hertz (Hz).</param>
    /// <param name="options">How sizes are looked for; null for the defaults.</param>
    /// <exception cref="ArgumentException">There is no point or area, a mode does not exist, or a value is out of range.</exception>
    /// <exception cref="ScNetException">A mode has no result.</exception>
    public static TradeOffCurve Of(
        ConverterAnalysis analysis, Process process, IReadOnlyList<SizingPoint> points, IReadOnlyList<AreaBudget> areas, Interval<double> frequencyHz, SizingOptions? options = null)
    {
        areas = Guard.Copy(areas, nameof(areas));
        if (areas.Count == 0)
        {
            throw new ArgumentException("Expected at least one area, but got none.", nameof(areas));
        }

        return new TradeOffCurve([.. areas
            .OrderBy(AreaOf)
            .Select(area => new TradeOffPoint(area, AreaOf(area), SizedDesign.Try(analysis, process, points, area, frequencyHz, options)))]);
    }

    /// <summary>The points.</summary>
    public override string ToString() => string.Join("; ", Points);

    private static double AreaOf(AreaBudget area) => area.TotalSquareMetres is { } total
        ? Math.Min(total, (area.CapacitorSquareMetres + area.SwitchSquareMetres) ?? total)
        : (area.CapacitorSquareMetres + area.SwitchSquareMetres) ?? 0;
}
