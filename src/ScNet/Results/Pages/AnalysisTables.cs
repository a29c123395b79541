using ScNet.Analysis;

namespace ScNet.Results.Pages;

/// <summary>The elements of an analysed mode as tables: one row each, phases across.</summary>
internal static class AnalysisTables
{
    /// <summary>Capacitors, inductors and switches; nothing of a kind that the converter does not have.</summary>
    public static IEnumerable<PageBlock> Of(ModeAnalysis mode)
    {
        Converter converter = mode.Converter;
        return
        [
            .. converter.Capacitors.Count > 0 ? [Capacitors(mode)] : Array.Empty<PageBlock>(),
            .. converter.Inductors.Count > 0 ? [Inductors(mode)] : Array.Empty<PageBlock>(),
            .. converter.Switches.Count > 0 ? [Switches(mode)] : Array.Empty<PageBlock>(),
        ];
    }

    private static PageTable Capacitors(ModeAnalysis mode)
    {
        Converter converter = mode.Converter;
        return new PageTable(
            "Capacitors: voltage in V per V of input, charge into the positive plate per unit of output charge",
            [
                new("name", false), new("plate +", false, Group: "element"), new("bottom", false, Group: "element"), new("C", true, Group: "element"), new("ESR", true, Group: "element"),
                new("voltage", true, "capacitorVoltages"),
                .. mode.ChargeSharing is null
                    ? [new("SSL coeff.", true, "slowSwitchingLimit.coefficients", "share in the slow-switching limit: R = Σ coefficient/(C·f)", "limits")]
                    : new PageColumn[]
                    {
                        new("sharing", true, "chargeSharing.coefficients", "share in charge sharing: R = Σ coefficient/(C·f)", "limits"),
                        new("impulses", true, "slowSwitchingLimit.coefficients", "share in the slow-switching limit, with all charge in impulses: R = Σ coefficient/(C·f)", "limits"),
                    },
                new("FSL coeff.", true, "fastSwitchingLimit.coefficients", "share of the series resistance in the fast-switching limit: R = Σ coefficient·ESR", "limits"),
                .. PerPhase(converter, "charge", "chargeFlow.capacitors"),
            ],
            Enumerable.Range(0, converter.Capacitors.Count).Select(c => Row(mode, c)));
    }

    private static IEnumerable<PageCell> Row(ModeAnalysis mode, int c)
    {
        Capacitor capacitor = mode.Converter.Capacitors[c];
        Quantity voltage = mode.IdealPoint.CapacitorVoltages[c];
        return
        [
            capacitor.Name,
            capacitor.PositiveNode,
            capacitor.BottomNode,
            Cells.Of(capacitor.Farads, "F"),
            Cells.Of(capacitor.EsrOhms, "Ω"),
            Cells.Of(voltage, voltage + (capacitor.Controlled is null ? string.Empty : " (controlled)")),
            .. mode.ChargeSharing is { } sharing ? [Cells.Of(sharing.Coefficients[c])] : Array.Empty<PageCell>(),
            Cells.Of(mode.SlowSwitchingLimit.Coefficients[c]),
            capacitor.EsrOhms > 0 ? Cells.Of(mode.FastSwitchingLimit.CapacitorCoefficients[c]) : "-",
            .. mode.ChargeFlow.Capacitors[c].Select(Cells.Of),
        ];
    }

    private static PageTable Inductors(ModeAnalysis mode) => new(
        "Inductors: current from first to second node per unit of load current, charge likewise, voltage (first minus second) in V per V of input",
        [
            new("name", false), new("first", false, Group: "element"), new("second", false, Group: "element"), new("L", true, Group: "element"), new("R", true, Group: "element"),
            new("current", true, "inductorCurrents"),
            new("FSL coeff.", true, "fastSwitchingLimit.coefficients", "share of the winding in the fast-switching limit: R = Σ coefficient·R"),
            .. PerPhase(mode.Converter, "charge", "chargeFlow.inductors"),
            .. PerPhase(mode.Converter, "voltage", "inductorVoltages"),
        ],
        mode.Inductors.Select(i => (IEnumerable<PageCell>)
        [
            i.Inductor.Name,
            i.Inductor.FirstNode,
            i.Inductor.SecondNode,
            Cells.Of(i.Inductor.Henries, "H"),
            Cells.Of(i.Inductor.Ohms, "Ω"),
            Cells.Of(i.Current),
            i.Inductor.Ohms > 0 ? Cells.Of(i.FastCoefficient) : "-",
            .. i.Charge.Select(Cells.Of),
            .. i.Voltage.Select(Cells.Of),
        ]));

    private static PageTable Switches(ModeAnalysis mode)
    {
        Converter converter = mode.Converter;
        return new PageTable(
            "Switches: charge from first to second node per unit of output charge, blocking voltage (first minus second) in V per V of input; both: whether it must block both polarities",
            [
                new("name", false), new("first", false, Group: "element"), new("second", false, Group: "element"), new("R on", true, Group: "element"),
                new("closed", false, Meaning: "the phases in which it is closed", Group: "element"),
                new("peak", true, "blockingVoltages", "the blocking voltage of the largest magnitude", "both"),
                new("both", false, Meaning: "whether the switch must block both polarities", Group: "both"),
                new("FSL coeff.", true, "fastSwitchingLimit.coefficients", "share in the fast-switching limit: R = Σ coefficient·R on", "both"),
                .. PerPhase(converter, "charge", "chargeFlow.switches"),
                .. PerPhase(converter, "blocks", "blockingVoltages"),
            ],
            converter.Switches.Select((element, s) => (IEnumerable<PageCell>)
            [
                element.Name,
                element.FirstNode,
                element.SecondNode,
                Cells.Of(element.Ohms, "Ω"),
                mode.Mode.ClosedPhases[s] is { Count: > 0 } closed ? string.Join(",", closed) : "none",
                Cells.Of(mode.BlockingVoltages.Peaks[s]),
                BothWays(mode.BlockingVoltages.Switches[s]),
                Cells.Of(mode.FastSwitchingLimit.SwitchCoefficients[s]),
                .. mode.ChargeFlow.Switches[s].Select(Cells.Of),
                .. mode.BlockingVoltages.Switches[s].Select(Cells.Of),
            ]));
    }

    private static string BothWays(PhaseValues blocks)
    {
        bool positive = blocks.Any(v => v.TryGetSign(out int sign) && sign > 0);
        bool negative = blocks.Any(v => v.TryGetSign(out int sign) && sign < 0);
        return positive && negative ? "yes" : blocks.All(v => v.IsDetermined) ? "no" : "?";
    }

    private static IEnumerable<PageColumn> PerPhase(Converter converter, string heading, string key) =>
        converter.Phases.Select(p => new PageColumn($"{heading} {p.Number}", true, key, $"in phase {p}", heading));
}
