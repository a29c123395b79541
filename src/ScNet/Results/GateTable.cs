using ScNet.Devices;

namespace ScNet.Results;

/// <summary>Gate drive as a document for other programs: a row per phase in which a switch is closed.</summary>
internal static class GateTable
{
    private static readonly Figure<Row>[] s_figures =
    [
        new("file", r => r.Needs.File),
        new("converter", r => r.Needs.Drive?.Ratings.Stress.Analysis.Converter.Name),
        new("mode", r => r.Phase?.Mode.Name),
        new("status", r => r.Needs.Drive is null ? "error" : "ok"),
        new("diagnostics", r => r.Needs.Diagnostics, HasColumn: false),
        new("switch", r => r.Gate?.Rating.Switch.Name),
        new("phase", r => r.Phase?.Phase),
        new("device", r => r.Gate?.Rating.Device.Name),
        new("inSeries", r => r.Gate?.Rating.Stack.Count),
        new("source.minimumPerVoltOfInput", r => r.Phase?.SourcePotential.PerVoltOfInput.Minimum is { } low ? Quantity.Exact(low) : null),
        new("source.maximumPerVoltOfInput", r => r.Phase?.SourcePotential.PerVoltOfInput.Maximum is { } high ? Quantity.Exact(high) : null),
        new("gate.minimumVolts", r => r.Phase?.GateVolts.Minimum),
        new("gate.maximumVolts", r => r.Phase?.GateVolts.Maximum),
        new("hasSupply", r => r.Phase?.HasSupply),
        new("supplies", r => r.Phase?.Supplies.Select(Supply), HasColumn: false),
        new("needsOwnRail", r => r.Gate?.NeedsOwnRail),
        new("commonSupplies", r => r.Gate?.CommonSupplies, HasColumn: false),
        new("offPhases", r => r.Gate is { } gate ? r.Needs.OffPhases(gate).Select(Off) : null, HasColumn: false),
        new("bodyNodes", r => r.Gate?.BodyNodes, HasColumn: false),
    ];

    /// <summary>The table.</summary>
    /// <param name="inputVolts">The input voltages in volts (V) of all rows.</param>
    /// <param name="results">The converters.</param>
    public static ResultTable Of(Interval<double> inputVolts, IEnumerable<GateNeeds> results)
    {
        return ResultTable.OfAny(
            [new("minimumInputVolts", inputVolts.Minimum), new("maximumInputVolts", inputVolts.Maximum)], s_figures, Guard.Copy(results, nameof(results)).SelectMany(RowsOf));
    }

    private static IEnumerable<Row> RowsOf(GateNeeds needs) => needs.Drive is { } drive
        ? drive.Switches.SelectMany(s => needs.OnPhases(s).Select(p => new Row(needs, s, p)))
        : [new Row(needs, null, null)];

    private static KeyValuePair<string, object?>[] Supply(GateSupply supply) =>
    [
        new("node", supply.Node),
        new("capacitor", supply.Capacitor?.Name),
        new("drivePerVoltOfInput", supply.DrivePerVoltOfInput),
        new("minimumInputVolts", supply.InputVolts.Minimum),
        new("maximumInputVolts", supply.InputVolts.Maximum),
        new("coversRange", supply.CoversRange),
    ];

    private static KeyValuePair<string, object?>[] Off(StackOffPhase off) =>
    [
        new("mode", off.Mode.Name),
        new("phase", off.Phase),
        new("minimumVolts", off.GateVolts.Select(v => v.Minimum)),
        new("maximumVolts", off.GateVolts.Select(v => v.Maximum)),
    ];

    private sealed record Row(GateNeeds Needs, SwitchGateDrive? Gate, GatePhase? Phase);
}
