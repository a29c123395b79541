namespace ScNet.Devices;

/// <summary>What a converter can be made of: kinds of devices, what drives and runs them, and their corners.</summary>
public sealed record Process
{
    /// <summary>The most switch devices in series where nothing is said.</summary>
    internal const int DefaultSwitchesInSeries = 3;

    /// <summary>The most capacitors in series where nothing is said.</summary>
    internal const int DefaultCapacitorsInSeries = 2;

    /// <summary>The name, for people.</summary>
    public required string Name { get; init => field = Guard.Named(value, nameof(Name)); }

    /// <summary>Kinds of switches, at least one, of different names.</summary>
    /// <exception cref="ArgumentException">There is none, or two have one name.</exception>
    public required IReadOnlyList<SwitchDevice> Switches { get; init => field = TurnedOn([.. Guard.Distinct(value, s => s.Name, isEmptyAllowed: false, nameof(Switches))], Corners); }

    /// <summary>Kinds of capacitors, at least one, of different names.</summary>
    /// <exception cref="ArgumentException">There is none, or two have one name.</exception>
    public required IReadOnlyList<CapacitorDevice> Capacitors { get; init => field = [.. Guard.Distinct(value, c => c.Name, isEmptyAllowed: false, nameof(Capacitors))]; }

    /// <summary>Inductors that can be had, of different names; empty where none can.</summary>
    /// <exception cref="ArgumentException">Two have one name.</exception>
    public IReadOnlyList<InductorDevice> Inductors { get; init => field = [.. Guard.Distinct(value, l => l.Name, isEmptyAllowed: true, nameof(Inductors))]; } = [];

    /// <summary>The devices in series that a switch may be made of, at most; at least 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is below 1.</exception>
    public int MaximumSwitchesInSeries { get; init => field = Guard.AtLeastOne(value, nameof(MaximumSwitchesInSeries)); } = DefaultSwitchesInSeries;

    /// <summary>The devices in series that a capacitor may be made of, at most; at least 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is below 1.</exception>
    public int MaximumCapacitorsInSeries { get; init => field = Guard.AtLeastOne(value, nameof(MaximumCapacitorsInSeries)); } = DefaultCapacitorsInSeries;

    /// <summary>Efficiency of the rail that drives the gates, above 0 and at most 1: drawn from the input is the gate's energy over it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above 0, or above 1.</exception>
    public double GateRailEfficiency
    {
        get;
        init => field = value <= 1 ? SwitchDevice.Positive(value, nameof(GateRailEfficiency)) : throw new ArgumentOutOfRangeException(nameof(GateRailEfficiency), value, "Expected at most 1.");
    }

        = 1;

    /// <summary>Resistance of metal or wiring in ohms (Ω) in series with each switch.</summary>
    public double WiringOhms { get; init => field = Guard.InRange(value, allowZero: true, nameof(WiringOhms)); }

    /// <summary>
    /// Dead time in seconds (s) at every change of phase, in which switches that change are open. Body diodes conduct the
    /// currents of inductors in it; a converter without inductors loses nothing by it.
    /// </summary>
    public double DeadTimeSeconds { get; init => field = Guard.InRange(value, allowZero: true, nameof(DeadTimeSeconds)); }

    /// <summary>What runs the converter.</summary>
    public ControlOverhead Control { get; init; } = ControlOverhead.None;

    /// <summary>Corners beside the typical one, of different names; empty where none are asked for.</summary>
    /// <exception cref="ArgumentException">Two have one name, or a switch does not turn on at one of them.</exception>
    public IReadOnlyList<Corner> Corners
    {
        get;
        init
        {
            field = [.. Guard.Distinct(value, c => c.Name, isEmptyAllowed: true, nameof(Corners))];
            TurnedOn(Switches, field);
        }
    }

        = [];

    /// <summary>The process at a corner: the same kinds with their values there, and no further corners. Parts beside the chip stay as they are.</summary>
    /// <remarks>Formulas and sources: docs/theory/devices.md.</remarks>
    /// <param name="corner">The corner, one of <see cref="Corners"/> or any other.</param>
    /// <exception cref="ArgumentException">A switch does not turn on there, as its threshold is not below its gate-drive voltage.</exception>
    public Process At(Corner corner)
    {
        ArgumentNullException.ThrowIfNull(corner);
        TurnedOn(Switches, [corner]);

        // the corners go first, as the switches at one of them are not held to the others
        return this with
        {
            Corners = [],
            Switches = [.. Switches.Select(s => s.At(corner))],
            Capacitors = [.. Capacitors.Select(c => c.At(corner))],
            WiringOhms = WiringOhms * corner.ResistanceFactor,
        };
    }

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    // whichever of the two lists is set last checks: the other is null, or empty, before
    private static IReadOnlyList<SwitchDevice> TurnedOn(IReadOnlyList<SwitchDevice>? switches, IReadOnlyList<Corner>? corners)
    {
        foreach (Corner corner in corners ?? [])
        {
            if (switches?.FirstOrDefault(s => !s.TurnsOnAt(corner)) is { } off)
            {
                throw new ArgumentException(FormattableString.Invariant(
                    $"Expected a threshold below the gate-drive voltage at the corner {Quoted.Name(corner.Name)}, but {Quoted.Name(off.Name)} has {off.ThresholdVolts * corner.ThresholdFactor} V and {off.GateDriveVolts} V."), nameof(corners));
            }
        }

        return switches ?? [];
    }
}
