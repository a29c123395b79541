namespace ScNet.Devices;

/// <summary>What a converter can be made of: kinds of devices, what drives and runs them, and their corners.</summary>
public sealed class Process
{
    /// <summary>The name, for people.</summary>
    public required string Name { get; init; }

    /// <summary>Kinds of switches, at least one.</summary>
    public required IReadOnlyList<SwitchDevice> Switches { get; init => field = [.. value]; }

    /// <summary>Kinds of capacitors, at least one.</summary>
    public required IReadOnlyList<CapacitorDevice> Capacitors { get; init => field = [.. value]; }

    /// <summary>Inductors that can be had; empty where none can.</summary>
    public IReadOnlyList<InductorDevice> Inductors { get; init => field = [.. value]; } = [];

    /// <summary>The devices in series that a switch may be made of, at most; at least 1.</summary>
    public int MaximumSwitchesInSeries { get; init; } = 3;

    /// <summary>The devices in series that a capacitor may be made of, at most; at least 1.</summary>
    public int MaximumCapacitorsInSeries { get; init; } = 2;

    /// <summary>Efficiency of the rail that drives the gates, above 0 and at most 1: drawn from the input is the gate's energy over it.</summary>
    public double GateRailEfficiency { get; init; } = 1;

    /// <summary>Resistance of metal or wiring in ohms (Ω) in series with each switch.</summary>
    public double WiringOhms { get; init => field = Guard.InRange(value, allowZero: true, nameof(WiringOhms)); }

    /// <summary>What runs the converter.</summary>
    public ControlOverhead Control { get; init; } = ControlOverhead.None;

    /// <summary>Corners beside the typical one; empty where none are asked for.</summary>
    public IReadOnlyList<Corner> Corners { get; init => field = [.. value]; } = [];

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}
