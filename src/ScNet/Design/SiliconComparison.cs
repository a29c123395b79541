using ScNet.Analysis;
using ScNet.Devices;
using ScNet.Stress;

namespace ScNet.Design;

/// <summary>
/// One mode of a converter on equal silicon with others: the same total area of capacitors and of
/// switches, each element stacked as the voltages of all modes and changes demand.
/// </summary>
/// <remarks>
/// A stack of n has 1/n² of the capacitance, or of the conductance, that its area gives in one device.
/// The limits are those of <see cref="ComparedLimit"/> with each coefficient times n². Derivation:
/// docs/theory/stress.md, "Equal silicon". Capacitors across the sources, with both plates on input, stiff
/// output or reference, are no part of the converter's silicon: they take no area and count as no device.
/// </remarks>
public sealed class SiliconComparison
{
    private SiliconComparison(
        ModeAnalysis analysis, ConverterRatings ratings, double capacitorAreaSquareMetres, double switchAreaSquareMetres, double frequencyHz)
    {
        Analysis = analysis;
        Ratings = ratings;
        CapacitorAreaSquareMetres = Guard.InRange(capacitorAreaSquareMetres, allowZero: false, nameof(capacitorAreaSquareMetres));
        SwitchAreaSquareMetres = Guard.InRange(switchAreaSquareMetres, allowZero: false, nameof(switchAreaSquareMetres));
        FrequencyHz = Guard.InRange(frequencyHz, allowZero: false, nameof(frequencyHz));
        IReadOnlySet<Capacitor> leftOut = DecouplingCapacitors.Of(analysis.Converter);
        int[] own = [.. Enumerable.Range(0, ratings.Capacitors.Count).Where(c => !leftOut.Contains(ratings.Capacitors[c].Capacitor))];
        Capacitors = [.. own.Select(c => ratings.Capacitors[c])];
        Undetermined =
        [
            .. ratings.Switches.Where(s => s.Overall.IsLowerBound).Select(s => s.Switch.Name),
            .. Capacitors.Where(c => c.Overall.IsLowerBound).Select(c => c.Capacitor.Name),
        ];
        double[] switchAreas = [.. ratings.Switches.Select(s => s.Stack.AreaSquareMetres)];
        SlowSwitchingLimit = OfCapacitors(analysis.SlowSwitchingLimit.Coefficients);
        ChargeSharing = analysis.ChargeSharing is { } sharing ? OfCapacitors(sharing.Coefficients) : null;
        FastSwitchingLimit = ComparedLimit.Of(
            [.. ratings.Switches.Select(s => s.Switch.Name)],
            [.. analysis.FastSwitchingLimit.SwitchCoefficients.Select((k, s) => Weighted(
                k, StackCost(ratings.Switches[s].Stack.Count, ratings.Switches[s].Device.StackAreaFactor) * ratings.Switches[s].Device.OnResistanceOhmMicrometres * ratings.Switches[s].Device.AreaSquareMetresPerMicrometre))],
            switchAreas,
            switchAreaSquareMetres,
            analysis.FastSwitchingLimit.SwitchCoefficients.Any(k => k.Kind == QuantityKind.Numeric));
        BottomPlateSwing = BottomPlateSwing.Of(analysis);

        ComparedLimit OfCapacitors(NamedList<Quantity> coefficients) => ComparedLimit.Of(
            [.. Capacitors.Select(c => c.Capacitor.Name)],
            [.. own.Select(c => Weighted(
                coefficients[c], StackCost(ratings.Capacitors[c].Stack.Count, ratings.Capacitors[c].Device.StackAreaFactor) / ratings.Capacitors[c].Device.FaradsPerSquareMetre))],
            [.. Capacitors.Select(c => c.Stack.AreaSquareMetres)],
            capacitorAreaSquareMetres * frequencyHz,
            coefficients.Any(k => k.Kind == QuantityKind.Numeric));
    }

    /// <summary>The analysis that is compared.</summary>
    public ModeAnalysis Analysis { get; }

    /// <summary>The devices, stacks and verdicts; where <see cref="ConverterRatings.IsAllowed"/> is false, some stack is larger than allowed or only a lower bound.</summary>
    public ConverterRatings Ratings { get; }

    /// <summary>The ratings of the capacitors that are part of the converter, in its order.</summary>
    public IReadOnlyList<CapacitorRating> Capacitors { get; }

    /// <summary>The elements of which some voltage is undetermined, switches first: their stacks, and with them both limits, are lower bounds.</summary>
    public IReadOnlyList<string> Undetermined { get; }

    /// <summary>Whether both limits are lower bounds, as some stacks are.</summary>
    public bool IsLowerBound => Undetermined.Count > 0;

    /// <summary>The area of all capacitors in square metres (m²).</summary>
    public double CapacitorAreaSquareMetres { get; }

    /// <summary>The area of all switches in square metres (m²).</summary>
    public double SwitchAreaSquareMetres { get; }

    /// <summary>Switching frequency in hertz (Hz), at which the slow-switching limit is given.</summary>
    public double FrequencyHz { get; }

    /// <summary>The slow-switching limit at the total capacitor area and frequency; "own proportions" are the netlist's capacitances, stacked.</summary>
    public ComparedLimit SlowSwitchingLimit { get; }

    /// <summary>What of it is left when held currents carry their share at a steady rate; null in a mode without a current load or inductors.</summary>
    public ComparedLimit? ChargeSharing { get; }

    /// <summary>The one to show where there is room for one: <see cref="ChargeSharing"/> where there is any, else <see cref="SlowSwitchingLimit"/>.</summary>
    public ComparedLimit LowFrequencyLimit => ChargeSharing ?? SlowSwitchingLimit;

    /// <summary>The fast-switching limit at the total switch area; "own proportions" are the netlist's conductances, stacked.</summary>
    public ComparedLimit FastSwitchingLimit { get; }

    /// <summary>The swings of the bottom plates in this mode.</summary>
    public BottomPlateSwing BottomPlateSwing { get; }

    /// <summary>The capacitor devices, each of a stack counted.</summary>
    public long CapacitorDeviceCount => Capacitors.Sum(c => (long)c.Stack.Count);

    /// <summary>The switch devices, each of a stack counted.</summary>
    public long SwitchDeviceCount => Ratings.Switches.Sum(s => (long)s.Stack.Count);

    /// <summary>The most devices in series of any element.</summary>
    public int MaximumStackCount => Capacitors.Select(c => c.Stack.Count).Concat(Ratings.Switches.Select(s => s.Stack.Count)).DefaultIfEmpty(1).Max();

    /// <summary>Compares one mode. The cost is one pass over elements and phases.</summary>
    /// <param name="ratings">The ratings of the converter.</param>
    /// <param name="mode">The name of one of its modes.</param>
    /// <param name="capacitorAreaSquareMetres">The area of all capacitors in square metres (m²).</param>
    /// <param name="switchAreaSquareMetres">The area of all switches in square metres (m²).</param>
    /// <param name="frequencyHz">Switching frequency in hertz (Hz).</param>
    /// <exception cref="ArgumentException">The converter has no such mode.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is not positive, or not from 1e-60 to 1e60.</exception>
    /// <exception cref="ScNetException">The mode has no result.</exception>
    public static SiliconComparison Of(
        ConverterRatings ratings,
        string mode,
        double capacitorAreaSquareMetres,
        double switchAreaSquareMetres,
        double frequencyHz = ComparisonConditions.DefaultFrequencyHz)
    {
        ArgumentNullException.ThrowIfNull(ratings);
        return new SiliconComparison(
            ratings.Stress.Analysis.Modes[mode].Require(), ratings, capacitorAreaSquareMetres, switchAreaSquareMetres, frequencyHz);
    }

    /// <summary>Compares one mode on the common ground of a comparison, with the ratings of <see cref="Rate"/>.</summary>
    /// <param name="ratings">The ratings of the converter.</param>
    /// <param name="mode">The name of one of its modes.</param>
    /// <param name="conditions">The common ground; its totals are what the areas give in single devices.</param>
    /// <exception cref="ArgumentException">The converter has no such mode.</exception>
    /// <exception cref="ScNetException">The mode has no result.</exception>
    public static SiliconComparison Of(ConverterRatings ratings, string mode, ComparisonConditions conditions)
    {
        ArgumentNullException.ThrowIfNull(conditions);
        return Of(ratings, mode, conditions.TotalCapacitanceFarads, conditions.TotalConductanceSiemens, conditions.FrequencyHz);
    }

    /// <summary>
    /// The ratings of a converter made of one switch device and one capacitor of the rating of a comparison, as
    /// many in series as it takes.
    /// </summary>
    /// <remarks>
    /// The devices are without dimension: the area that gives 1 F, or 1 S, in one device counts as 1. So the
    /// totals of the comparison are what the areas give in single devices, and where nothing is stacked the
    /// limits are those of the best split.
    /// </remarks>
    /// <param name="analysis">The analysis of the converter.</param>
    /// <param name="conditions">Input voltage and rating.</param>
    public static ConverterRatings Rate(ConverterAnalysis analysis, ComparisonConditions conditions)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(conditions);
        Interval<double> input = new(conditions.InputVoltageVolts, conditions.InputVoltageVolts);
        return ConverterRatings.Of(ConverterStress.Of(analysis, input), RatingLimits.OfRating(conditions.DeviceRatingVolts));
    }

    /// <summary>The mode, its ratio and both limits on the areas.</summary>
    public override string ToString() =>
        $"{Analysis.Converter.Name}, mode {Analysis.Mode}: ratio {Analysis.Ratio}, {UnitText.Count(CapacitorDeviceCount + SwitchDeviceCount, "device", "devices")}; {(ChargeSharing is null ? "SSL" : "charge sharing")} {LowFrequencyLimit}; FSL {FastSwitchingLimit}";

    private static Quantity Weighted(Quantity coefficient, double weight) =>
        coefficient.IsDetermined ? Quantity.Numeric(coefficient.ToDouble() * weight) : coefficient;

    // area of a stack over that of a single device of the same value; the spacing between devices is left out
    private static double StackCost(int count, double factor) => (double)count * count * (count > 1 ? factor : 1);
}
