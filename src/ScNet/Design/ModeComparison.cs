using ScNet.Analysis;
using ScNet.Stress;

namespace ScNet.Design;

/// <summary>
/// One mode of a converter on common ground with others: both limits at equal total capacitance and
/// equal total switch conductance, charge times voltage handled, and voltages against a rating.
/// </summary>
/// <remarks>
/// Series resistances of capacitors take no part: they are no share of the switch conductance. Nor do
/// capacitors across the sources, as they are no part of the converter (<see cref="LeftOut"/>).
/// </remarks>
public sealed class ModeComparison
{
    private ModeComparison(ModeAnalysis analysis, ComparisonConditions conditions)
    {
        Analysis = analysis;
        Conditions = conditions;
        Converter converter = analysis.Converter;
        IReadOnlySet<Capacitor> leftOut = DecouplingCapacitors.Of(converter);
        int[] own = [.. Enumerable.Range(0, converter.Capacitors.Count).Where(c => !leftOut.Contains(converter.Capacitors[c]))];
        LeftOut = [.. converter.Capacitors.Where(leftOut.Contains).Select(c => c.Name)];
        string[] capacitors = [.. converter.Capacitors.Select(c => c.Name)];
        string[] switches = [.. converter.Switches.Select(s => s.Name)];
        NamedList<Quantity> voltages = analysis.IdealPoint.CapacitorVoltages;
        BlockingVoltages blocking = analysis.BlockingVoltages;

        SlowSwitchingLimit = ComparedLimit.Of(
            [.. own.Select(c => capacitors[c])],
            [.. own.Select(c => analysis.SlowSwitchingLimit.Coefficients[c])],
            [.. own.Select(c => converter.Capacitors[c].Farads)],
            conditions.TotalCapacitanceFarads * conditions.FrequencyHz);
        ChargeSharing = analysis.ChargeSharing is not { } sharing ? null : ComparedLimit.Of(
            [.. own.Select(c => capacitors[c])],
            [.. own.Select(c => sharing.Coefficients[c])],
            [.. own.Select(c => converter.Capacitors[c].Farads)],
            conditions.TotalCapacitanceFarads * conditions.FrequencyHz);
        FastSwitchingLimit = ComparedLimit.Of(
            switches,
            analysis.FastSwitchingLimit.SwitchCoefficients,
            [.. converter.Switches.Select(s => 1 / s.Ohms)],
            conditions.TotalConductanceSiemens);
        CapacitorChargeVoltage = ChargeVoltage.Of(
            capacitors, analysis.ChargeFlow.Capacitors, Quantity.Exact(1, 2), voltages, analysis.Ratio);
        SwitchChargeVoltage = ChargeVoltage.Of(
            switches, analysis.ChargeFlow.Switches, Quantity.Exact(1), blocking.Peaks, analysis.Ratio);
        CapacitorStress = VoltageStress.Of(
            own.Select(c => (capacitors[c], (IEnumerable<Quantity>)[voltages[c]])), conditions.InputVoltageVolts, conditions.DeviceRatingVolts);
        SwitchStress = VoltageStress.Of(
            switches.Select((name, s) => (name, (IEnumerable<Quantity>)blocking.Switches[s])), conditions.InputVoltageVolts, conditions.DeviceRatingVolts);
        BottomPlateSwing = BottomPlateSwing.Of(analysis);
    }

    /// <summary>The analysis that is compared.</summary>
    public ModeAnalysis Analysis { get; }

    /// <summary>The common ground.</summary>
    public ComparisonConditions Conditions { get; }

    /// <summary>The ideal conversion ratio: output voltage per volt of input.</summary>
    public Quantity Ratio => Analysis.Ratio;

    /// <summary>The ideal output voltage in volts (V) at the conditions' input voltage; null where the ratio is undetermined.</summary>
    public double? IdealOutputVoltageVolts => Conditions.Volts(Ratio);

    /// <summary>
    /// The names of the capacitors across the sources, with both plates on input, stiff output or reference:
    /// they carry no charge and count in no total, stress or swing.
    /// </summary>
    public IReadOnlyList<string> LeftOut { get; }

    /// <summary>The slow-switching limit at the conditions' total capacitance and frequency, all charge taken as impulses.</summary>
    public ComparedLimit SlowSwitchingLimit { get; }

    /// <summary>What of it is left when held currents carry their share at a steady rate; null in a mode without a current load or inductors.</summary>
    public ComparedLimit? ChargeSharing { get; }

    /// <summary>The one to show where there is room for one: <see cref="ChargeSharing"/> where there is any, else <see cref="SlowSwitchingLimit"/>.</summary>
    public ComparedLimit LowFrequencyLimit => ChargeSharing ?? SlowSwitchingLimit;

    /// <summary>The fast-switching limit at the conditions' total switch conductance.</summary>
    public ComparedLimit FastSwitchingLimit { get; }

    /// <summary>Charge times voltage that the capacitors handle.</summary>
    public ChargeVoltage CapacitorChargeVoltage { get; }

    /// <summary>Charge times voltage that the switches handle.</summary>
    public ChargeVoltage SwitchChargeVoltage { get; }

    /// <summary>The capacitors' voltages against the rating.</summary>
    public VoltageStress CapacitorStress { get; }

    /// <summary>The switches' blocking voltages against the rating.</summary>
    public VoltageStress SwitchStress { get; }

    /// <summary>How far the capacitors' bottom plates swing over the phases.</summary>
    public BottomPlateSwing BottomPlateSwing { get; }

    /// <summary>The largest determined swing of a bottom plate in volts (V); null where there is none.</summary>
    public double? MaximumBottomPlateSwingVolts => Conditions.Volts(BottomPlateSwing.Maximum);

    /// <summary>Compares one mode. The cost is one pass over elements and phases.</summary>
    /// <param name="analysis">The mode's analysis.</param>
    /// <param name="conditions">The common ground.</param>
    public static ModeComparison Of(ModeAnalysis analysis, ComparisonConditions conditions)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(conditions);
        return new ModeComparison(analysis, conditions);
    }

    /// <summary>The mode, its ratio and both limits.</summary>
    public override string ToString() =>
        $"{Analysis.Converter.Name}, mode {Analysis.Mode}: ratio {Ratio}, {UnitText.Of(IdealOutputVoltageVolts, "V")}; {(ChargeSharing is null ? "SSL" : "charge sharing")} {LowFrequencyLimit}; FSL {FastSwitchingLimit}";
}
