using ScNet.Analysis;

namespace ScNet.Design.Losses;

/// <summary>Which capacitor loses how much of what charge sharing costs: in proportion to its part of the slow limit.</summary>
internal static class SharingShares
{
    /// <summary>The share of each capacitor that has one; one share of 1 without a name where no capacitor has one.</summary>
    /// <param name="analysis">The analysis of the mode.</param>
    public static IReadOnlyList<(string Name, double Share)> Of(ModeAnalysis analysis)
    {
        Converter converter = analysis.Converter;
        double[] parts = [.. converter.Capacitors.Select((c, i) => Coefficient(analysis, i) * c.ElastancePerFarad)];
        double sum = parts.Sum();
        return sum > 0 && double.IsFinite(sum)
            ? [.. converter.Capacitors.Select((c, i) => (c.Name, parts[i] / sum)).Where(s => s.Item2 > 0)]
            : [(string.Empty, 1)];
    }

    private static double Coefficient(ModeAnalysis analysis, int capacitor)
    {
        Quantity coefficient = (analysis.ChargeSharing?.Coefficients ?? analysis.SlowSwitchingLimit.Coefficients)[capacitor];
        return coefficient.IsDetermined ? coefficient.ToDouble() : 0;
    }
}
