using ScNet.Design.Losses;
using ScNet.SteadyState;

namespace ScNet.Results;

/// <summary>What a row of a <see cref="ResultTable.OfOperation"/> shows of a mode.</summary>
/// <param name="Steady">The periodic steady state.</param>
/// <param name="Budget">The losses with devices; null where it was not asked for, or cannot be had.</param>
public sealed record OperatedMode(PeriodicSteadyState Steady, LossBudget? Budget = null);

/// <summary>Periodic steady states at one operating point as a document for other programs.</summary>
internal static class OperationTable
{
    private static readonly Figure<OperatedMode>[] s_figures =
    [
        new("outputVoltageVolts", m => m.Steady.AverageOutputVoltageVolts),
        new("idealOutputVoltageVolts", m => m.Steady.IdealOutputVoltageVolts),
        new("outputRippleVolts", m => m.Steady.OutputRippleVolts),
        new("outputImpedance.ohms", m => m.Steady.OutputImpedanceOhms),
        new("inputCurrentAmperes", m => m.Steady.AverageInputCurrentAmperes),
        new("inputPowerWatts", m => m.Steady.InputPowerWatts),
        new("outputPowerWatts", m => m.Steady.OutputPowerWatts),
        new("dissipationWatts", m => m.Steady.DissipationWatts),
        new("resistiveEfficiency", m => m.Steady.ResistiveEfficiency),
        new("isOverloaded", m => m.Steady.IsOverloaded),
        new("switches", m => SwitchesOf(m.Steady), HasColumn: false),
        new("capacitors", m => CapacitorsOf(m.Steady), HasColumn: false),
        new("inductors", m => InductorsOf(m.Steady), HasColumn: false),
        new("parasitics", m => ParasiticsOf(m.Steady), HasColumn: false),
        new("bodyDiodes", m => DiodesOf(m.Steady), HasColumn: false),
    ];

    /// <summary>The columns of the CSV text without losses.</summary>
    public static IReadOnlyList<string> Columns { get; } =
        ResultTable.Of<OperatedMode>([], s_figures, []).Columns;

    /// <summary>The table.</summary>
    /// <param name="point">The operating point of all rows.</param>
    /// <param name="deadTimeSeconds">The dead time in each phase in seconds (s); 0 for none.</param>
    /// <param name="rows">The rows, in their order.</param>
    /// <param name="hasBudgets">Whether the rows have losses with devices.</param>
    public static ResultTable Of(OperatingPoint point, double deadTimeSeconds, IEnumerable<ResultRow<OperatedMode>> rows, bool hasBudgets = false)
    {
        ArgumentNullException.ThrowIfNull(point);
        ArgumentNullException.ThrowIfNull(rows);
        return ResultTable.Of(
            [
                new("inputVoltageVolts", point.InputVoltageVolts),
                new("loadCurrentAmperes", point.LoadCurrentAmperes),
                new("hertz", point.FrequencyHz),
                new("deadTimeSeconds", deadTimeSeconds),
            ],
            hasBudgets ? [.. s_figures, .. LossFigures.Of<OperatedMode>("budget.", m => m.Budget)] : s_figures,
            rows);
    }

    /// <summary>The table of many operating points, which stand before the figures of the whole.</summary>
    /// <param name="rows">One row per mode and operating point.</param>
    public static ResultTable OfSweep(IEnumerable<ResultRow<SweptMode>> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        Figure<SweptMode>[] point =
        [
            new("duty", m => Quantity.Exact(m.Duty)),
            new("inputVoltageVolts", m => m.Point.InputVoltageVolts),
            new("loadCurrentAmperes", m => m.Point.LoadCurrentAmperes),
            new("hertz", m => m.Point.FrequencyHz),
        ];
        return ResultTable.Of([], [.. point, .. s_figures.Where(f => f.HasColumn).Select(f => new Figure<SweptMode>(f.Path, m => f.Value(new OperatedMode(m.Steady))))], rows);
    }

    private static KeyValuePair<string, object?>[] SwitchesOf(PeriodicSteadyState steady) => [.. steady.Switches.Select((s, i) => Element(
        s.Switch.Name,
        new("rmsCurrentAmperes", s.RmsCurrentAmperes),
        new("peakCurrentAmperes", s.PeakCurrentAmperes),
        new("dissipationWatts", s.DissipationWatts),
        new("minimumBlockingVolts", s.BlockingWhereDeterminedVolts.Minimum),
        new("maximumBlockingVolts", s.BlockingWhereDeterminedVolts.Maximum),
        new("isBlockingDetermined", s.BlockingVolts.IsDetermined || steady.Mode.ClosedPhases[i].Count == steady.Converter.Phases.Count)))];

    private static KeyValuePair<string, object?>[] CapacitorsOf(PeriodicSteadyState steady) => [.. steady.Capacitors.Select(c => Element(
        c.Capacitor.Name,
        new("rmsCurrentAmperes", c.RmsCurrentAmperes),
        new("peakCurrentAmperes", c.PeakCurrentAmperes),
        new("dissipationWatts", c.DissipationWatts),
        new("averageVoltageVolts", c.AverageVoltageVolts),
        new("rippleVolts", c.RippleVolts),
        new("bottomPlate", c.BottomPlate is { } bottom ? Figures(bottom) : null),
        new("topPlate", c.TopPlate is { } top ? Figures(top) : null)))];

    private static KeyValuePair<string, object?>[] InductorsOf(PeriodicSteadyState steady) => [.. steady.Inductors.Select(l => Element(
        l.Inductor.Name,
        new("averageCurrentAmperes", l.AverageCurrentAmperes),
        new("rippleAmperes", l.RippleAmperes),
        new("rmsCurrentAmperes", l.RmsCurrentAmperes),
        new("peakCurrentAmperes", l.PeakCurrentAmperes),
        new("dissipationWatts", l.DissipationWatts)))];

    private static KeyValuePair<string, object?>[] DiodesOf(PeriodicSteadyState steady) => [.. steady.Diodes.Select(d => Element(
        d.Switch.Name,
        new("averageCurrentAmperes", d.AverageCurrentAmperes),
        new("peakCurrentAmperes", d.PeakCurrentAmperes),
        new("dissipationWatts", d.DissipationWatts)))];

    private static KeyValuePair<string, object?>[] ParasiticsOf(PeriodicSteadyState steady) =>
        [.. steady.Converter.Parasitics.Zip(steady.Parasitics, (p, o) => Element(p.Name, Figures(o)))];

    private static KeyValuePair<string, object?>[] Figures(ParasiticOperation p) =>
    [
        new("swingVolts", p.SwingVolts),
        new("rmsCurrentAmperes", p.RmsCurrentAmperes),
        new("chargingWatts", p.ChargingWatts),
    ];

    private static KeyValuePair<string, object?> Element(string name, params KeyValuePair<string, object?>[] figures) => new(name, figures);
}
