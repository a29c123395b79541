using ScNet.Design.Losses;
using ScNet.SteadyState;

namespace ScNet.Results.Pages;

/// <summary>Periodic steady states at an operating point as a page: of each mode the figures of the whole and those of every element.</summary>
public static class OperationPage
{
    /// <summary>The figures of the whole as columns.</summary>
    public static IReadOnlyList<PageColumn> Columns { get; } =
    [
        new("netlist", false, "converter"), new("mode", false, "mode"), new("Output voltage", true, "outputVoltageVolts"), new("Output ripple", true, "outputRippleVolts"),
        new("Output impedance", true, "outputImpedance.ohms"), new("Input current", true, "inputCurrentAmperes"), new("Input power", true, "inputPowerWatts"),
        new("Output power", true, "outputPowerWatts"), new("Dissipation", true, "dissipationWatts"), new("Efficiency", true, "resistiveEfficiency"),
    ];

    /// <summary>The page of one mode.</summary>
    /// <param name="steady">The steady state.</param>
    /// <param name="budget">Its losses with devices; null where they are not asked for.</param>
    public static Page Of(PeriodicSteadyState steady, LossBudget? budget = null)
    {
        ArgumentNullException.ThrowIfNull(steady);
        return new Page(
            $"{steady.Converter.Name}, mode {steady.Mode.Name}: {Conditions(steady.Point)}", Blocks(steady, budget));
    }

    /// <summary>The page of several modes, each under a heading.</summary>
    /// <param name="point">The operating point of all.</param>
    /// <param name="deadTimeSeconds">The dead time in each phase in seconds (s); 0 for none.</param>
    /// <param name="rows">The rows, in their order; files that could not be read are left out.</param>
    public static Page Of(OperatingPoint point, double deadTimeSeconds, IEnumerable<ResultRow<OperatedMode>> rows)
    {
        ArgumentNullException.ThrowIfNull(point);
        ArgumentNullException.ThrowIfNull(rows);
        List<PageBlock> blocks = [];
        HashSet<Converter> seen = new(ReferenceEqualityComparer.Instance);
        bool isComplete = true;
        foreach (ResultRow<OperatedMode> row in rows)
        {
            isComplete &= row.Result is not null;
            if (row.Outcome is not { } outcome)
            {
                continue;
            }

            blocks.Add(new PageHeading($"{outcome.Converter.Name}{(row.File is { } file ? $" ({file})" : string.Empty)}, mode {outcome.Mode.Name}"));
            blocks.AddRange(row.Result is { Steady: { } steady } operated ? Blocks(steady, operated.Budget) : [new PageRemarks(["No result"], isCaution: true)]);

            // the warnings of the netlist once, below its first mode
            IEnumerable<Diagnostic> said = seen.Add(outcome.Converter) ? [] : outcome.Converter.Warnings.Except(outcome.Diagnostics);
            blocks.AddRange(Findings.Of(row.Diagnostics.Except(said)));
        }

        return new Page(
            $"{Conditions(point)}, {(deadTimeSeconds > 0 ? $"{EngineeringNumber.Of(deadTimeSeconds, "s")} of dead time in each phase" : "no dead time")}", blocks, isComplete);
    }

    private static string Conditions(OperatingPoint point) =>
        $"{EngineeringNumber.Of(point.InputVoltageVolts, "V")} input, {EngineeringNumber.Of(point.LoadCurrentAmperes, "A")} load, {EngineeringNumber.Of(point.FrequencyHz, "Hz")}";

    private static IEnumerable<PageBlock> Blocks(PeriodicSteadyState steady, LossBudget? budget) =>
        [.. Summary(steady), .. OperationTables.Of(steady), .. budget is null ? [] : LossPage.Blocks(budget, "Losses with devices: ")];

    private static IEnumerable<PageBlock> Summary(PeriodicSteadyState steady)
    {
        static string Of(double? value, string unit) => EngineeringNumber.Of(value, unit);
        string efficiency = steady.ResistiveEfficiency is { } share ? Cells.Percent(share).Text : "none";
        yield return new PageFigures([
            new("Output voltage", $"{Of(steady.AverageOutputVoltageVolts, "V")}, ideally {Of(steady.IdealOutputVoltageVolts, "V")}", "outputVoltageVolts"),
            new("Output ripple", steady.Converter.Load == LoadKind.Stiff ? "none, as the load is stiff" : Of(steady.OutputRippleVolts, "V") + " peak to peak", "outputRippleVolts"),
            new("Output impedance", Of(steady.OutputImpedanceOhms, "Ω"), "outputImpedance.ohms"),
            new("Input current", Of(steady.AverageInputCurrentAmperes, "A"), "inputCurrentAmperes"),
            new("Input power", Of(steady.InputPowerWatts, "W"), "inputPowerWatts"),
            new("Output power", Of(steady.OutputPowerWatts, "W"), "outputPowerWatts"),
            new("Dissipation", Of(steady.DissipationWatts, "W"), "dissipationWatts"),
            new("Efficiency", $"{efficiency} (conduction and charge redistribution only: no gate drive, switching or leakage)", "resistiveEfficiency"),
        ]);
        if (steady.IsOverloaded)
        {
            yield return new PageRemarks(
                [
                    $"Overload: the output voltage is pulled to zero by {Of(steady.ZeroOutputCurrentAmperes, "A")} already. "
                    + "The figures extrapolate the linear model and mean nothing for a real load.",
                ],
                isCaution: true);
        }
        else if (steady.IsDrivenByLoad)
        {
            yield return new PageRemarks(["The load drives the converter: its current flows against the output voltage. For a load that takes power, change the sign."], isCaution: true);
        }
    }
}
