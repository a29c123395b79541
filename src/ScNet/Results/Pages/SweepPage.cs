using ScNet.SteadyState;

namespace ScNet.Results.Pages;

/// <summary>A sweep as a page: one row per mode and point.</summary>
public static class SweepPage
{
    /// <summary>The columns of a sweep of operating points.</summary>
    public static IReadOnlyList<PageColumn> OperationColumns { get; } =
    [
        .. OperationPage.Columns.Take(2),
        new("duty", true, "duty", "of the first phase; the others share the rest in their proportion", "point"),
        new("input", true, "inputVoltageVolts", "input voltage", "point"),
        new("load", true, "loadCurrentAmperes", "load current", "point"),
        new("frequency", true, "hertz", Group: "point"),
        .. OperationPage.Columns.Skip(2),
    ];

    /// <summary>The columns of a sweep of the output impedance.</summary>
    public static IReadOnlyList<PageColumn> ImpedanceColumns { get; } = [.. OperationPage.Columns.Take(2), .. ImpedanceBlocks.Columns];

    /// <summary>The output impedance over frequency.</summary>
    /// <param name="rows">One row per mode and frequency; files that could not be read are left out.</param>
    public static Page Of(IEnumerable<ResultRow<ImpedancePoint>> rows) => Of("Output impedance over frequency", rows, ImpedanceColumns, ImpedanceBlocks.Row);

    /// <summary>Operating points.</summary>
    /// <param name="rows">One row per mode and point; files that could not be read are left out.</param>
    public static Page Of(IEnumerable<ResultRow<SweptMode>> rows) => Of("Operating points", rows, OperationColumns, Row);

    private static Page Of<T>(string title, IEnumerable<ResultRow<T>> rows, IReadOnlyList<PageColumn> columns, Func<T, IEnumerable<PageCell>> cells)
        where T : class
    {
        ResultRow<T>[] all = [.. Guard.Copy(rows, nameof(rows))], shown = [.. all.Where(r => r.Outcome is not null)];
        PageTable table = new(
            string.Empty,
            columns,
            shown.Select(r => (IEnumerable<PageCell>)
            [
                r.Outcome!.Converter.Name,
                r.Outcome.Mode.Name,
                .. r.Result is { } result ? cells(result) : ["no result", .. Enumerable.Repeat<PageCell>("-", columns.Count - 3)],
            ]),
            nameColumns: 2,
            hasLegend: true);
        return new Page(title, [table], all.All(r => r.Result is not null));
    }

    private static IEnumerable<PageCell> Row(SweptMode swept)
    {
        PeriodicSteadyState steady = swept.Steady;
        return
        [
            Cells.Of(Quantity.Exact(swept.Duty)),
            Cells.Of(swept.Point.InputVoltageVolts, "V"),
            Cells.Of(swept.Point.LoadCurrentAmperes, "A"),
            Cells.Of(swept.Point.FrequencyHz, "Hz"),
            Cells.Of(steady.AverageOutputVoltageVolts, "V"),
            Cells.Of(steady.OutputRippleVolts, "V"),
            Cells.Of(steady.OutputImpedanceOhms, "Ω"),
            Cells.Of(steady.AverageInputCurrentAmperes, "A"),
            Cells.Of(steady.InputPowerWatts, "W"),
            Cells.Of(steady.OutputPowerWatts, "W"),
            Cells.Of(steady.DissipationWatts, "W"),
            steady.IsOverloaded ? "overload" : Cells.Percent(steady.ResistiveEfficiency),
        ];
    }
}
