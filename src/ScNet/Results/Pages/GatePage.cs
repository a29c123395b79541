using System.Globalization;
using ScNet.Devices;
using ScNet.Stress;

namespace ScNet.Results.Pages;

/// <summary>What the gate and the body of every switch need, as a person reads it.</summary>
public static class GatePage
{
    private static readonly PageColumn[] s_switches =
    [
        new("switch", IsFigure: false, "switch"),
        new("made of", IsFigure: false, "device"),
        new("in series", IsFigure: true, "inSeries"),
        new("drive", IsFigure: true, null, "Gate-source voltage that turns it on"),
        new("gate from", IsFigure: false, "commonSupplies"),
        new("body on", IsFigure: false, "bodyNodes"),
    ];

    /// <summary>The columns of its tables of switches and phases.</summary>
    public static IReadOnlyList<PageColumn> Columns { get; } = Array.AsReadOnly<PageColumn>([.. s_switches, .. PhaseColumns(namesMode: true)]);

    /// <summary>The page of one converter, of all its modes.</summary>
    /// <param name="drive">The gate drive.</param>
    public static Page Of(ConverterGateDrive drive) => Of(GateNeeds.Of(null, drive));

    /// <summary>The page of one converter.</summary>
    /// <param name="needs">The gate drive.</param>
    /// <exception cref="ArgumentException">There is no gate drive.</exception>
    public static Page Of(GateNeeds needs)
    {
        ArgumentNullException.ThrowIfNull(needs);
        ConverterGateDrive drive = needs.Drive ?? throw new ArgumentException("Expected the gate drive of a converter that was read.", nameof(needs));
        ConverterStress stress = drive.Ratings.Stress;
        Converter converter = stress.Analysis.Converter;
        string file = needs.File is null ? string.Empty : $" ({needs.File})";
        string mode = needs.Only is { } only && converter.Modes.Count > 1 ? $", mode {only}" : string.Empty;
        bool namesMode = needs.Only is null && converter.Modes.Count > 1;
        string[] cautions =
        [
            .. stress.ModesWithoutResult.Select(m => $"Mode {m} has no result, and nothing is said of it"),
            .. needs.Diagnostics.Select(d => d.ToString()),
        ];
        return new Page(
            $"{converter.Name}{file}{mode}: gate drive at {StressWords.Volts(stress.Modes.Count > 0 ? stress.Modes[0].InputVolts : default)} of input",
            [
                Switches(drive),
                Phases(drive, needs, namesMode),
                .. drive.Switches.Any(s => s.OffPhases.Count > 0) ? [Stacks(drive, needs, namesMode)] : Array.Empty<PageBlock>(),
                new PageRemarks(["own rail: no node of the converter gives the gate its drive voltage within its rating at every input voltage"]),
                .. cautions.Length > 0 ? [new PageRemarks(cautions, isCaution: true)] : Array.Empty<PageBlock>(),
            ]);
    }

    private static PageTable Switches(ConverterGateDrive drive) => new(
        "Switches: what they are made of, what drives the gate in every phase, what takes the body",
        s_switches,
        drive.Switches.Select(s => (IEnumerable<PageCell>)
        [
            s.Rating.Switch.Name,
            s.Rating.Device.Name,
            new(s.Rating.Stack.Count.ToString(CultureInfo.InvariantCulture), s.Rating.Stack.Count),
            new(EngineeringNumber.Of(s.Rating.Device.GateDriveVolts, "V"), s.Rating.Device.GateDriveVolts),
            s.CommonSupplies.Count > 0 ? string.Join(", ", s.CommonSupplies) : s.OnPhases.Count == 0 ? "never closed" : s.NeedsOwnRail ? "own rail" : "by phase, see below",
            s.BodyNodes.Count > 0 ? string.Join(", ", s.BodyNodes) : "none",
        ]));

    private static PageColumn[] PhaseColumns(bool namesMode) =>
    [
        new("switch", IsFigure: false, "switch"),
        .. namesMode ? [new PageColumn("mode", IsFigure: false, "mode")] : Array.Empty<PageColumn>(),
        new("phase", IsFigure: true, "phase"),
        new("source", IsFigure: true, "source.maximumPerVoltOfInput"),
        new("gate", IsFigure: true, "gate.maximumVolts"),
        new("from (drive per V of input)", IsFigure: false, "supplies"),
    ];

    private static PageTable Phases(ConverterGateDrive drive, GateNeeds needs, bool namesMode) => new(
        "Every phase in which a switch is closed: source in V per V of input, gate level, what gives it",
        PhaseColumns(namesMode),
        drive.Switches.SelectMany(s => needs.OnPhases(s).Select(p => (IEnumerable<PageCell>)
        [
            s.Rating.Switch.Name,
            .. namesMode ? [p.Mode.Name] : Array.Empty<PageCell>(),
            new(p.Phase.ToString(CultureInfo.InvariantCulture), p.Phase),
            new(p.SourcePotential.ToString(), p.SourcePotential.PerVoltOfInput.Maximum?.ToDouble()),
            new(StressWords.Volts(p.GateVolts), p.GateVolts.Maximum),
            p.HasSupply ? Names(p.Supplies.Where(x => x.CoversRange))
                : p.Supplies.Count > 0 ? $"{Names(p.Supplies)}, else own rail"
                : "own rail",
        ])));

    private static PageTable Stacks(ConverterGateDrive drive, GateNeeds needs, bool namesMode) => new(
        "Every phase in which a stack is open: its gates, from the source side, with the blocked voltage shared equally",
        [
            new("switch", IsFigure: false, "switch"),
            .. namesMode ? [new PageColumn("mode", IsFigure: false, "offPhases.mode")] : Array.Empty<PageColumn>(),
            new("phase", IsFigure: true, "offPhases.phase"),
            new("gates of the stack", IsFigure: false, "offPhases.maximumVolts"),
        ],
        drive.Switches.SelectMany(s => needs.OffPhases(s).Select(p => (IEnumerable<PageCell>)
        [
            s.Rating.Switch.Name,
            .. namesMode ? [p.Mode.Name] : Array.Empty<PageCell>(),
            new(p.Phase.ToString(CultureInfo.InvariantCulture), p.Phase),
            p.GateVolts.All(v => v.IsDetermined) ? string.Join(", ", p.GateVolts.Select(StressWords.Volts)) : "? (an end floats)",
        ])));

    // nodes that give the same drive at the same input voltages together
    private static string Names(IEnumerable<GateSupply> supplies) => string.Join("; ", supplies
        .GroupBy(s => (s.DrivePerVoltOfInput, s.InputVolts, s.CoversRange))
        .Select(g => $"{string.Join(", ", g.Select(s => s.Capacitor is null ? s.Node : $"{s.Node} by {s.Capacitor.Name}"))} ({g.Key.DrivePerVoltOfInput})"
            + (g.Key.CoversRange ? string.Empty : $" at {StressWords.Volts(g.Key.InputVolts)}")));
}
