using ScNet.Analysis;
using ScNet.Devices;

namespace ScNet.Design;

/// <summary>
/// One mode of a converter on equal silicon with others: the same total area of capacitors and of
/// switches, each element stacked as the voltages of all modes and changes demand.
/// </summary>
/// <remarks>
/// A stack of n has 1/n² of the capacitance, or of the conductance, that its area gives in one device.
/// The limits are those of <see cref="ComparedLimit"/> with each coefficient times n². Derivation:
/// docs/theory/stress.md, "Equal silicon".
/// </remarks>
public sealed class SiliconComparison
{
    private SiliconComparison(ModeAnalysis analysis, ConverterRatings ratings, SiliconTotals totals)
    {
        Analysis = analysis;
        Ratings = ratings;
        Totals = totals;
        double[] capacitorAreas = [.. ratings.Capacitors.Select(c => c.Stack.AreaSquareMetres)];
        double[] switchAreas = [.. ratings.Switches.Select(s => s.Stack.AreaSquareMetres)];
        SlowSwitchingLimit = ComparedLimit.Of(
            [.. ratings.Capacitors.Select(c => c.Capacitor.Name)],
            [.. analysis.SlowSwitchingLimit.Coefficients.Select((k, c) => Weighted(
                k, Square(ratings.Capacitors[c].Stack.Count) / ratings.Capacitors[c].Kind.FaradsPerSquareMetre))],
            capacitorAreas,
            totals.CapacitorAreaSquareMetres * totals.FrequencyHz,
            analysis.SlowSwitchingLimit.Coefficients.Any(k => k.Kind == QuantityKind.Numeric));
        FastSwitchingLimit = ComparedLimit.Of(
            [.. ratings.Switches.Select(s => s.Switch.Name)],
            [.. analysis.FastSwitchingLimit.SwitchCoefficients.Select((k, s) => Weighted(
                k, Square(ratings.Switches[s].Stack.Count) * ratings.Switches[s].Kind.OnResistanceOhmMicrometres * ratings.Switches[s].Kind.AreaSquareMetresPerMicrometre))],
            switchAreas,
            totals.SwitchAreaSquareMetres,
            analysis.FastSwitchingLimit.SwitchCoefficients.Any(k => k.Kind == QuantityKind.Numeric));
        BottomPlateSwing = BottomPlateSwing.Of(analysis);
    }

    /// <summary>The analysis that is compared.</summary>
    public ModeAnalysis Analysis { get; }

    /// <summary>The kinds, stacks and verdicts; where <see cref="ConverterRatings.IsAllowed"/> is false, some stack is larger than allowed or only a lower bound.</summary>
    public ConverterRatings Ratings { get; }

    /// <summary>The common totals.</summary>
    public SiliconTotals Totals { get; }

    /// <summary>The slow-switching limit at the total capacitor area and frequency; "own proportions" are the netlist's capacitances, stacked.</summary>
    public ComparedLimit SlowSwitchingLimit { get; }

    /// <summary>The fast-switching limit at the total switch area; "own proportions" are the netlist's conductances, stacked.</summary>
    public ComparedLimit FastSwitchingLimit { get; }

    /// <summary>The swings of the bottom plates in this mode.</summary>
    public BottomPlateSwing BottomPlateSwing { get; }

    /// <summary>The capacitor devices, each of a stack counted.</summary>
    public long CapacitorDeviceCount => Ratings.Capacitors.Sum(c => (long)c.Stack.Count);

    /// <summary>The switch devices, each of a stack counted.</summary>
    public long SwitchDeviceCount => Ratings.Switches.Sum(s => (long)s.Stack.Count);

    /// <summary>The most devices in series of any element.</summary>
    public int LargestStackCount => Ratings.Capacitors.Select(c => c.Stack.Count).Concat(Ratings.Switches.Select(s => s.Stack.Count)).DefaultIfEmpty(1).Max();

    /// <summary>Compares one mode. The cost is one pass over elements and phases.</summary>
    /// <param name="ratings">The ratings of the converter.</param>
    /// <param name="mode">The name of one of its modes.</param>
    /// <param name="totals">The common totals.</param>
    /// <exception cref="ArgumentException">The converter has no such mode.</exception>
    /// <exception cref="ScNetException">The mode has no result.</exception>
    public static SiliconComparison Of(ConverterRatings ratings, string mode, SiliconTotals totals)
    {
        ArgumentNullException.ThrowIfNull(ratings);
        ArgumentNullException.ThrowIfNull(totals);
        return new SiliconComparison(ratings.Stress.Analysis.Modes[mode].Require(), ratings, totals);
    }

    /// <summary>The mode, its ratio and both limits on the areas.</summary>
    public override string ToString() =>
        $"{Analysis.Converter.Name}, mode {Analysis.Mode}: ratio {Analysis.Ratio}, {UnitText.Count(CapacitorDeviceCount + SwitchDeviceCount, "device", "devices")}; SSL {SlowSwitchingLimit}; FSL {FastSwitchingLimit}";

    private static Quantity Weighted(Quantity coefficient, double weight) =>
        coefficient.IsDetermined ? Quantity.Numeric(coefficient.ToDouble() * weight) : coefficient;

    private static double Square(int count) => (double)count * count;
}
