using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.SteadyState.Conduction;

namespace ScNet.Design;

/// <summary>One mode of a converter at a load, at the totals of a comparison: the netlist's values all scaled by one factor each.</summary>
/// <remarks>
/// Plates keep their proportion to their capacitor, and its series resistance times its capacitance stays as it is. Capacitors across the
/// sources, parasitic capacitances listed by themselves and inductors stay as the netlist has them. The periodic steady state is exact.
/// </remarks>
public sealed class ComparedLoad
{
    private ComparedLoad(PeriodicSteadyState steady) => Steady = steady;

    /// <summary>The exact periodic steady state at the conditions' input voltage and frequency, with the values at the totals.</summary>
    public PeriodicSteadyState Steady { get; }

    /// <summary>The load current in amperes (A).</summary>
    public double LoadAmperes => Steady.Point.LoadCurrentAmperes;

    /// <summary>The average output voltage in volts (V).</summary>
    public double OutputVolts => Steady.AverageOutputVoltageVolts;

    /// <summary>The output impedance in ohms (Ω).</summary>
    public double OutputOhms => Steady.OutputImpedanceOhms;

    /// <summary>What resistances lose in watts (W), also in charging what plates and other parasitic capacitances the netlist has.</summary>
    public double LossWatts => Steady.DissipationWatts;

    /// <summary>Output power per input power with these losses alone; null where either is not positive.</summary>
    public double? ResistiveEfficiency => Steady.ResistiveEfficiency;

    /// <summary>Finds a mode at a load. The cost is that of a periodic steady state.</summary>
    /// <param name="analysis">The mode's analysis.</param>
    /// <param name="conditions">The common ground.</param>
    /// <param name="loadAmperes">Average current out of the output node in amperes (A), of either sign.</param>
    /// <exception cref="ArgumentOutOfRangeException">The load current is out of range.</exception>
    /// <exception cref="ScNetException">The network is too large, or has no periodic state.</exception>
    public static ComparedLoad Of(ModeAnalysis analysis, ComparisonConditions conditions, double loadAmperes)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(conditions);
        Converter values = AtTotals(analysis.Converter, conditions);
        OperatingPoint point = new(conditions.InputVoltageVolts, loadAmperes, conditions.FrequencyHz);

        // where a current ends phases, times and ratio follow from the operating point
        return new ComparedLoad(analysis.Mode.UntilZeroPhases.Any(p => p.Count > 0)
            ? ConductionModel.Of(values, analysis.Mode).At(point).Steady
            : PeriodicSteadyState.Of(analysis.WithValuesOf(values), point));
    }

    /// <summary>Output voltage and efficiency.</summary>
    public override string ToString() =>
        $"{UnitText.Of(LoadAmperes, "A")} load: {UnitText.Of(OutputVolts, "V")}, {(ResistiveEfficiency is { } efficiency ? UnitText.Percent(efficiency) : "no efficiency")}";

    /// <summary>The converter with the totals of the conditions.</summary>
    internal static Converter AtTotals(Converter converter, ComparisonConditions conditions)
    {
        IReadOnlySet<Capacitor> leftOut = DecouplingCapacitors.Of(converter);
        double total = converter.Capacitors.Where(c => !leftOut.Contains(c)).Sum(c => c.Farads);
        double capacitance = total > 0 ? conditions.TotalCapacitanceFarads / total : 1;
        double conductance = converter.Switches.Count > 0 ? conditions.TotalConductanceSiemens / converter.Switches.Sum(s => 1 / s.Ohms) : 1;
        double Factor(Capacitor c) => leftOut.Contains(c) ? 1 : capacitance;
        Converter values = converter.WithValues(
            [.. converter.Capacitors.Select(c => Factor(c) * c.Farads)],
            [.. converter.Switches.Select(s => s.Ohms / conductance)],
            [.. converter.Capacitors.Select(c => c.EsrOhms / Factor(c))]);
        return converter.ParasiticBranches.Count == 0 ? values : values.WithParasitics(
            [.. converter.Capacitors.Select(c => c.Plates with { BottomFarads = Factor(c) * c.Plates.BottomFarads, TopFarads = Factor(c) * c.Plates.TopFarads })],
            [.. converter.Parasitics]);
    }
}
