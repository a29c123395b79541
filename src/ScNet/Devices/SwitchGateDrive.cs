namespace ScNet.Devices;

/// <summary>What the gate and the body of one switch need in all modes.</summary>
/// <remarks>An ideal closed switch has both terminals at one potential, so either is the source.</remarks>
public sealed class SwitchGateDrive
{
    internal SwitchGateDrive(SwitchRating rating, GatePhase[] phases, double? lowest, double? highest, string[] bodyNodes)
    {
        Rating = rating;
        OnPhases = phases;
        LowestTerminalVolts = lowest;
        HighestTerminalVolts = highest;
        BodyNodes = bodyNodes;
        CommonSupplies = phases.Length == 0 ? [] : [.. phases[0].Supplies.Where(s => s.CoversRange).Select(s => s.Node)
            .Where(node => phases.All(p => p.Supplies.Any(s => s.CoversRange && s.Node == node)))];
    }

    /// <summary>The switch, its kind and its stack.</summary>
    public SwitchRating Rating { get; }

    /// <summary>Every phase of every mode in which it is closed, mode after mode.</summary>
    public IReadOnlyList<GatePhase> OnPhases { get; }

    /// <summary>Whether in some on-phase no node of the converter can supply the gate over the whole input range.</summary>
    public bool NeedsOwnRail => OnPhases.Any(p => !p.HasSupply);

    /// <summary>The nodes that serve in every on-phase of every mode.</summary>
    public IReadOnlyList<string> CommonSupplies { get; }

    /// <summary>The lowest potential in volts (V) of its terminals over all modes, phases and input voltages: an n-type body must not be above it. Null where one is undetermined.</summary>
    public double? LowestTerminalVolts { get; }

    /// <summary>The highest potential in volts (V) of its terminals: a p-type body must not be below it. Null where one is undetermined.</summary>
    public double? HighestTerminalVolts { get; }

    /// <summary>The nodes that can take the body in every phase of every mode: never above (p-type: below) a terminal.</summary>
    public IReadOnlyList<string> BodyNodes { get; }

    /// <summary>The name of the switch and what it needs.</summary>
    public override string ToString() => CommonSupplies.Count > 0 ? $"{Rating.Switch.Name}: from {string.Join(", ", CommonSupplies)}"
        : NeedsOwnRail ? $"{Rating.Switch.Name}: own rail"
        : $"{Rating.Switch.Name}: from a different node in each phase";
}
