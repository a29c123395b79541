using ScNet.Analysis;

namespace ScNet.Design.Sizing;

/// <summary>Checks of what sizes are asked for.</summary>
internal static class SizingCheck
{
    /// <summary>Requires at least one point, of modes that exist and values in range.</summary>
    public static void Points(IReadOnlyList<SizingPoint> points, ConverterAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (points.Count == 0)
        {
            throw new ArgumentException("Expected at least one point, but got none.", nameof(points));
        }

        foreach (SizingPoint point in points)
        {
            analysis.Modes.PositionOf(point.Mode);
            if (!Guard.IsInRange(point.InputVolts, allowZero: false) || !Guard.IsInRange(point.LoadAmperes, allowZero: false) || !Guard.IsInRange(point.Weight, allowZero: false)
                || (point.OutputVolts is { } output && !double.IsFinite(output)))
            {
                throw new ArgumentException($"Expected a positive input voltage, load current and weight from {Guard.MinimumValue} to {Guard.MaximumValue}, but got {point}, weight {point.Weight}.", nameof(points));
            }
        }
    }

    /// <summary>What stands against sizes of a network: inductors, as the duty that regulates them belongs to the sizes.</summary>
    public static Diagnostic? Network(Converter converter) => converter.Inductors.Count == 0 ? null : new Diagnostic(
        DiagnosticSeverity.Error,
        DiagnosticCodes.InductorSizes,
        $"Expected a converter of switches and capacitors, but '{converter.Name}' has {UnitText.Count(converter.Inductors.Count, "inductor", "inductors")}: its duty holds the output and belongs to the sizes. Make it a candidate, by its duty, and ask a ranked choice for it.",
        [.. converter.Inductors.Select(l => l.Name)]);

    /// <summary>Requires that both kinds of elements are bounded.</summary>
    public static void Area(AreaBudget area)
    {
        if (!area.IsBounded)
        {
            throw new ArgumentException("Expected an area in all, or one of capacitors and one of switches.", nameof(area));
        }
    }

    /// <summary>Requires a floor and a ceiling.</summary>
    public static void Frequency(Interval<double> frequencyHz)
    {
        if (!frequencyHz.IsDetermined || !Guard.IsInRange(frequencyHz.Minimum!.Value, allowZero: false))
        {
            throw new ArgumentException($"Expected a floor above zero and a ceiling, but got {frequencyHz}.", nameof(frequencyHz));
        }
    }
}
