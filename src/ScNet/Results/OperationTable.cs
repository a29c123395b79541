using ScNet.SteadyState;

namespace ScNet.Results;

/// <summary>Periodic steady states at one operating point as a document for other programs.</summary>
internal static class OperationTable
{
    private static readonly Figure<PeriodicSteadyState>[] s_figures =
    [
        new("outputVoltageVolts", s => s.AverageOutputVoltageVolts),
        new("idealOutputVoltageVolts", s => s.IdealOutputVoltageVolts),
        new("outputRippleVolts", s => s.OutputRippleVolts),
        new("outputImpedance.ohms", s => s.OutputImpedanceOhms),
        new("inputCurrentAmperes", s => s.AverageInputCurrentAmperes),
        new("inputPowerWatts", s => s.InputPowerWatts),
        new("outputPowerWatts", s => s.OutputPowerWatts),
        new("dissipationWatts", s => s.DissipationWatts),
        new("resistiveEfficiency", s => s.ResistiveEfficiency),
        new("isOverloaded", s => s.IsOverloaded),
        new("switches", SwitchesOf, HasColumn: false),
        new("capacitors", CapacitorsOf, HasColumn: false),
        new("inductors", InductorsOf, HasColumn: false),
        new("parasitics", ParasiticsOf, HasColumn: false),
    ];

    /// <summary>The table.</summary>
    /// <param name="point">The operating point of all rows.</param>
    /// <param name="deadTimeSeconds">The dead time in each phase in seconds (s); 0 for none.</param>
    /// <param name="rows">The rows, in their order.</param>
    public static ResultTable Of(OperatingPoint point, double deadTimeSeconds, IEnumerable<ResultRow<PeriodicSteadyState>> rows)
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
            s_figures,
            rows);
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
