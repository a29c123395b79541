using ScNet.Design;
using ScNet.Design.Losses;
using ScNet.Devices;
using ScNet.Stress;

namespace ScNet.Results.Pages;

/// <summary>Modes of converters side by side as a page: one row per mode, what the columns mean, and what needs a note.</summary>
public static class ComparisonPage
{
    private const string Limits = "limits", Load = "load", Devices = "devices", Charge = "charge", Switch = "switch", Capacitor = "capacitor";

    /// <summary>The page of one converter.</summary>
    /// <param name="comparisons">The compared modes.</param>
    public static Page Of(params IReadOnlyList<ModeComparison> comparisons)
    {
        comparisons = Guard.Copy(comparisons, nameof(comparisons));
        ArgumentOutOfRangeException.ThrowIfZero(comparisons.Count);
        return Of(comparisons[0].Conditions, comparisons.Select(c => ResultRow.Of(null, c.Analysis.Outcome, new ComparedMode(c))));
    }

    /// <summary>The page.</summary>
    /// <param name="conditions">The conditions of all rows.</param>
    /// <param name="rows">The rows, in their order; files that could not be read are left out.</param>
    /// <param name="hasSilicon">Whether the rows are compared at equal silicon too.</param>
    /// <param name="loadAmperes">The load current in amperes (A) at which the rows are compared too; null for none.</param>
    /// <param name="process">The process in whose devices the rows have losses at the load; null for none.</param>
    public static Page Of(
        ComparisonConditions conditions, IEnumerable<ResultRow<ComparedMode>> rows, bool hasSilicon = false, double? loadAmperes = null, Process? process = null)
    {
        ArgumentNullException.ThrowIfNull(conditions);
        ArgumentNullException.ThrowIfNull(rows);
        ResultRow<ComparedMode>[] all = [.. rows], shown = [.. all.Where(r => r.Outcome is not null)];
        string title = $"{EngineeringNumber.Of(conditions.InputVoltageVolts, "V")} input, "
            + $"{EngineeringNumber.Of(conditions.DeviceRatingVolts, "V")} rating, "
            + $"{EngineeringNumber.Of(conditions.TotalCapacitanceFarads, "F")} of capacitance, "
            + $"{EngineeringNumber.Of(conditions.TotalConductanceSiemens, "S")} of switch conductance, "
            + $"{EngineeringNumber.Of(conditions.FrequencyHz, "Hz")}"
            + (loadAmperes is { } amperes ? $", {EngineeringNumber.Of(amperes, "A")} load" : string.Empty);
        PageTable table = new(
            string.Empty,
            Columns(hasSilicon, loadAmperes is not null, process is not null),
            shown.Select(r => (IEnumerable<PageCell>)[NameOf(r, shown), r.Outcome!.Mode.Name, .. Figures(r, hasSilicon, loadAmperes is not null, process is not null)]),
            nameColumns: 2,
            hasLegend: true,
            [
                .. process is null ? Array.Empty<PageFigure>() : [new PageFigure("devices", $"of '{process.Name}', those that lose least at the load and at these values")],
                new("SSL, FSL", "slow- and fast-switching limit of the output impedance, at the totals above"),
                new("?, ≥, ~", "undetermined; a lower bound, as others are undetermined; an estimate, as charges depend on component values"),
                .. shown.Any(r => r.Result?.Comparison.ChargeSharing is not null)
                    ? [new PageFigure("*", "charge sharing instead of SSL: what is left of it as held currents (load, inductors) carry their share steadily; with all charge as impulses it is slowSwitchingLimit of the JSON and CSV output")]
                    : Array.Empty<PageFigure>(),
            ]);
        return new Page(title, [table, .. ComparisonNotes.Of(shown)], all.All(r => r.Result is not null));
    }

    /// <summary>The columns of the table.</summary>
    /// <param name="hasSilicon">Whether the rows are compared at equal silicon too.</param>
    /// <param name="hasLoad">Whether the rows are compared at a load too.</param>
    /// <param name="hasBudgets">Whether the rows have losses with devices at the load.</param>
    public static IReadOnlyList<PageColumn> Columns(bool hasSilicon = false, bool hasLoad = false, bool hasBudgets = false)
    {
        const string best = "the split of the total with the least impedance";
        string own = hasSilicon
            ? "the best split where each element is a stack that withstands its voltages; a stack of n devices has 1/n² of what its area gives in one"
            : "the netlist's values scaled to the total";
        return
        [
            new("netlist", false, "converter"),
            new("mode", false, "mode"),
            new("ratio", true, "ratio", "ideal output voltage per volt of input, and in volts", "ratio"),
            new("Vout", true, "idealOutputVoltageVolts", "ideal output voltage per volt of input, and in volts", "ratio"),
            hasSilicon
                ? new("SSL area", true, "equalSilicon.slowSwitchingLimit.bestSplitOhms", own, Limits)
                : new("SSL own", true, "slowSwitchingLimit.ownProportionsOhms", own, Limits),
            new("SSL best", true, "slowSwitchingLimit.bestSplitOhms", best, Limits),
            hasSilicon
                ? new("FSL area", true, "equalSilicon.fastSwitchingLimit.bestSplitOhms", own, Limits)
                : new("FSL own", true, "fastSwitchingLimit.ownProportionsOhms", own, Limits),
            new("FSL best", true, "fastSwitchingLimit.bestSplitOhms", best, Limits),
            .. hasSilicon
                ? [new PageColumn("n", true, "equalSilicon.maximumStackCount", "most devices in series of any element, for its voltages in every mode and at every change between two", Limits)]
                : Array.Empty<PageColumn>(),
            .. hasLoad
                ?
                [
                    new PageColumn("V at load", true, "atLoad.outputVoltageVolts", AtLoad, Load),
                    new PageColumn("η at load", true, "atLoad.resistiveEfficiency", AtLoad, Load),
                ]
                : Array.Empty<PageColumn>(),
            .. hasBudgets
                ?
                [
                    new PageColumn("η devices", true, "budget.efficiency", "efficiency at the load with all losses", Devices),
                    new PageColumn("most lost by", false, null, "the kind of loss that takes most of the input, with its share", Devices),
                ]
                : Array.Empty<PageColumn>(),
            new("QV cap", true, "capacitorChargeVoltage.value", Handled, Charge),
            new("QV sw", true, "switchChargeVoltage.value", Handled, Charge),
            new("Vsw", true, "switchStress.peakVolts", "highest blocking voltage of a switch", Switch),
            new("Vsw over", false, "switchStress.exceedingCount", Over, Switch),
            new("Vcap", true, "capacitorStress.peakVolts", "highest voltage of a capacitor", Capacitor),
            new("Vcap over", false, "capacitorStress.exceedingCount", Over, Capacitor),
        ];
    }

    private const string AtLoad = "output voltage and efficiency at the load above, the netlist's values scaled to the totals: conduction, charge redistribution and the netlist's own plates and parasitic capacitances; no gate drive, switching or leakage";

    private const string Handled = "charge times voltage handled by capacitors and by switches, per unit of output charge and volt of output";

    private const string Over = "how many of them exceed the rating, and by how much at most";

    // two files may hold converters of the same name
    private static string NameOf(ResultRow<ComparedMode> row, IEnumerable<ResultRow<ComparedMode>> rows)
    {
        Converter converter = row.Outcome!.Converter;
        return row.File is { } file && rows.Any(r => r.Outcome!.Converter.Name == converter.Name && !ReferenceEquals(r.Outcome.Converter, converter))
            ? $"{converter.Name} ({file})"
            : converter.Name;
    }

    private static IEnumerable<PageCell> Figures(ResultRow<ComparedMode> row, bool hasSilicon, bool hasLoad, bool hasBudgets)
    {
        if (row.Result is not { Comparison: var comparison } result)
        {
            return ["no result", .. Enumerable.Repeat<PageCell>("-", Columns(hasSilicon, hasLoad, hasBudgets).Count - 3)];
        }

        string shared = comparison.ChargeSharing is null ? string.Empty : "*";
        PageCell slowBest = Best(comparison.LowFrequencyLimit, shared), fastBest = Best(comparison.FastSwitchingLimit);
        PageCell[] limits = result.Silicon is { } silicon
            ?
            [
                Best(silicon.LowFrequencyLimit, (silicon.ChargeSharing is null ? string.Empty : "*") + Bound(silicon)), slowBest,
                Best(silicon.FastSwitchingLimit, Bound(silicon)), fastBest,
                Marked(Bound(silicon), Cells.Count(silicon.MaximumStackCount)),
            ]
            : [Marked(shared, Cells.Of(comparison.LowFrequencyLimit.OwnProportionsOhms, "Ω")), slowBest, Cells.Of(comparison.FastSwitchingLimit.OwnProportionsOhms, "Ω"), fastBest];
        PageCell[] load = result.Load is { } at
            ? [Cells.Of(at.OutputVolts, "V"), at.Steady.IsOverloaded ? "overload" : Cells.Percent(at.ResistiveEfficiency)]
            : [];
        return
        [
            Cells.Of(comparison.Ratio, QuantityText.Short(comparison.Ratio)),
            Cells.Of(comparison.IdealOutputVoltageVolts, "V"),
            .. limits,
            .. load,
            .. hasBudgets ? MostLost(result.Budget) : [],
            Cells.Of(comparison.CapacitorChargeVoltage.Value, QuantityText.Decimal(comparison.CapacitorChargeVoltage.Value)),
            Cells.Of(comparison.SwitchChargeVoltage.Value, QuantityText.Decimal(comparison.SwitchChargeVoltage.Value)),
            .. Stress(comparison.SwitchStress),
            .. Stress(comparison.CapacitorStress),
        ];
    }

    private static PageCell[] MostLost(LossBudget? budget)
    {
        if (budget is not { Efficiency: { } efficiency })
        {
            return ["-", "-"];
        }

        LossKind most = Enum.GetValues<LossKind>().MaxBy(budget.WattsOf);
        return [Cells.Percent(efficiency), $"{LossBudget.Formulas[(int)most].Name} {Cells.Percent(budget.WattsOf(most) / budget.InputWatts).Text}"];
    }

    private static string Bound(SiliconComparison silicon) => silicon.IsLowerBound ? "≥" : string.Empty;

    private static PageCell Marked(string mark, PageCell cell) => cell with { Text = mark + cell.Text };

    private static PageCell Best(ComparedLimit limit, string mark = "") => Marked(
        mark + (limit is { DependsOnComponentValues: true, BestSplitOhms: not null } ? "~" : string.Empty), Cells.Of(limit.BestSplitOhms, "Ω"));

    private static PageCell[] Stress(VoltageStress stress)
    {
        string bound = stress.Undetermined.Count > 0 ? "≥" : string.Empty;
        string excess = stress.Exceeding.Count > 0 ? $" +{EngineeringNumber.Of(stress.MaximumExcessVolts, "V")}" : string.Empty;
        PageCell peak = stress.PeakVolts is { } volts ? Marked(bound, Cells.Of(volts, "V")) : stress.Undetermined.Count > 0 ? "?" : "-";
        PageCell over = Cells.Count(stress.Exceeding.Count);
        return [peak, over with { Text = bound + over.Text + excess }];
    }
}
