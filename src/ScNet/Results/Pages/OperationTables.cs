using ScNet.SteadyState;

namespace ScNet.Results.Pages;

/// <summary>The elements of a periodic steady state as tables: one row each.</summary>
internal static class OperationTables
{
    // what is smaller against the input voltage or the load current is rounding
    private const double Rounding = 1e-12;

    /// <summary>Switches, capacitors, inductors, body diodes and parasitic capacitances; nothing of a kind that there is not.</summary>
    public static IEnumerable<PageBlock> Of(PeriodicSteadyState steady) =>
    [
        .. steady.Switches.Count > 0 ? Switches(steady) : [],
        .. steady.Capacitors.Count > 0 ? [Capacitors(steady)] : Array.Empty<PageBlock>(),
        .. steady.Inductors.Count > 0 ? [Inductors(steady)] : Array.Empty<PageBlock>(),
        .. steady.Diodes.Count > 0 ? [Diodes(steady)] : Array.Empty<PageBlock>(),
        .. Parasitics(steady),
    ];

    private static IEnumerable<PageBlock> Switches(PeriodicSteadyState steady)
    {
        bool IsAlwaysClosed(int s) => steady.Mode.ClosedPhases[s].Count == steady.Converter.Phases.Count;
        yield return new PageTable(
            "Switches: peak current from first to second node, voltage (first minus second) while open",
            [
                new("name", false), new("RMS", true, "switches.rmsCurrentAmperes"), new("peak", true, "switches.peakCurrentAmperes"), new("dissipation", true, "switches.dissipationWatts"),
                new("blocks", false, "switches.maximumBlockingVolts"),
            ],
            steady.Switches.Select((x, s) => (IEnumerable<PageCell>)
            [
                x.Switch.Name,
                Amperes(steady, x.RmsCurrentAmperes),
                Amperes(steady, x.PeakCurrentAmperes),
                Watts(steady, x.DissipationWatts),
                IsAlwaysClosed(s) ? "-" : Blocks(steady, x),
            ]));
        if (steady.Switches.Where((x, s) => !x.BlockingVolts.IsDetermined && !IsAlwaysClosed(s)).Any())
        {
            yield return new PageRemarks([$"?: a side of the open switch floats in some phase{Loose(steady)}"]);
        }
    }

    // A side that does not float may still be connected to a capacitor that no loop charges to a definite voltage.
    private static string Loose(PeriodicSteadyState steady)
    {
        string[] open = [.. steady.Capacitors.Where(c => c.AverageVoltageVolts is null).Select(c => c.Capacitor.Name)];
        return open.Length == 0
            ? ", and nothing fixes the voltage there"
            : $", or is connected to a capacitor whose own voltage nothing fixes ({string.Join(", ", open)})";
    }

    private static PageCell Blocks(PeriodicSteadyState steady, SwitchOperation x)
    {
        (double? minimum, double? maximum) = (x.BlockingWhereDeterminedVolts.Minimum, x.BlockingWhereDeterminedVolts.Maximum);
        string range = minimum is null || maximum is null ? string.Empty : $"{Volts(steady, minimum).Text} to {Volts(steady, maximum).Text}";
        return new(x.BlockingVolts.IsDetermined ? range : range.Length > 0 ? $"{range}, ?" : "?", maximum);
    }

    private static PageTable Capacitors(PeriodicSteadyState steady) => new(
        "Capacitors: peak current into the positive plate, average voltage and ripple peak to peak",
        [
            new("name", false), new("RMS", true, "capacitors.rmsCurrentAmperes"), new("peak", true, "capacitors.peakCurrentAmperes"), new("dissipation", true, "capacitors.dissipationWatts"),
            new("average", true, "capacitors.averageVoltageVolts"), new("ripple", true, "capacitors.rippleVolts"),
        ],
        steady.Capacitors.Select(c => (IEnumerable<PageCell>)
        [
            c.Capacitor.Name,
            Amperes(steady, c.RmsCurrentAmperes),
            Amperes(steady, c.PeakCurrentAmperes),
            Watts(steady, c.DissipationWatts),
            Volts(steady, c.AverageVoltageVolts),
            Volts(steady, c.RippleVolts),
        ]));

    private static PageTable Inductors(PeriodicSteadyState steady) => new(
        "Inductors: average and peak current from first to second node, ripple peak to peak",
        [
            new("name", false), new("average", true, "inductors.averageCurrentAmperes"), new("ripple", true, "inductors.rippleAmperes"), new("RMS", true, "inductors.rmsCurrentAmperes"),
            new("peak", true, "inductors.peakCurrentAmperes"), new("dissipation", true, "inductors.dissipationWatts"),
        ],
        steady.Inductors.Select(l => (IEnumerable<PageCell>)
        [
            l.Inductor.Name,
            Amperes(steady, l.AverageCurrentAmperes),
            Amperes(steady, l.RippleAmperes),
            Amperes(steady, l.RmsCurrentAmperes),
            Amperes(steady, l.PeakCurrentAmperes),
            Watts(steady, l.DissipationWatts),
        ]));

    private static PageTable Diodes(PeriodicSteadyState steady) => new(
        "Body diodes: current from second to first node of the switch",
        [
            new("switch", false), new("average", true, "bodyDiodes.averageCurrentAmperes"), new("peak", true, "bodyDiodes.peakCurrentAmperes"),
            new("dissipation", true, "bodyDiodes.dissipationWatts"),
        ],
        steady.Diodes.Select(d => (IEnumerable<PageCell>)
            [d.Switch.Name, Amperes(steady, d.AverageCurrentAmperes), Amperes(steady, d.PeakCurrentAmperes), Watts(steady, d.DissipationWatts)]));

    private static IEnumerable<PageBlock> Parasitics(PeriodicSteadyState steady)
    {
        (string Name, ParasiticOperation Operation)[] parasitics =
        [
            .. steady.Capacitors.SelectMany(c => new[] { ($"{c.Capacitor.Name}, bottom plate", c.BottomPlate), ($"{c.Capacitor.Name}, positive plate", c.TopPlate) })
                .Where(p => p.Item2 is not null).Select(p => (p.Item1, p.Item2!)),
            .. steady.Converter.Parasitics.Zip(steady.Parasitics, (p, o) => (p.Name, o)),
        ];
        return parasitics.Length == 0 ? [] : [new PageTable(
            "Parasitic capacitances: swing peak to peak, what charging them costs (part of the dissipation above)",
            [
                new("name", false), new("C", true), new("swing", true, "parasitics.swingVolts"), new("RMS", true, "parasitics.rmsCurrentAmperes"),
                new("charging", true, "parasitics.chargingWatts"),
            ],
            parasitics.Select(p => (IEnumerable<PageCell>)
            [
                p.Name,
                Cells.Of(p.Operation.Farads, "F"),
                Volts(steady, p.Operation.SwingVolts),
                Cells.Of(p.Operation.RmsCurrentAmperes, "A"),
                Watts(steady, p.Operation.ChargingWatts),
            ]))];
    }

    private static PageCell Amperes(PeriodicSteadyState steady, double? value) => Of(value, "A", steady.Point.LoadCurrentAmperes);

    private static PageCell Volts(PeriodicSteadyState steady, double? value) => Of(value, "V", steady.Point.InputVoltageVolts);

    private static PageCell Watts(PeriodicSteadyState steady, double? value) => Of(value, "W", steady.InputPowerWatts);

    private static PageCell Of(double? value, string unit, double scale) =>
        Cells.Of(Math.Abs(value ?? 0) < Rounding * Math.Abs(scale) ? 0 * value : value, unit);
}
