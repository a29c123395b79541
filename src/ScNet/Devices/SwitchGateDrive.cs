namespace ScNet.Devices;

/// <summary>What the gate and the body of one switch need in all modes.</summary>
/// <remarks>An ideal closed switch has both terminals at one potential, so either is the source.</remarks>
public sealed class SwitchGateDrive
{
    private readonly Lazy<IReadOnlyList<string>> _bodyNodes;
    private readonly Lazy<IReadOnlyList<string>> _commonSupplies;
    private readonly Lazy<IReadOnlyList<StackOffPhase>> _offPhases;

    internal SwitchGateDrive(
        SwitchRating rating, IReadOnlyList<GatePhase> phases, Interval<double> terminalVolts, Func<IReadOnlyList<string>> bodyNodes,
        Func<IReadOnlyList<StackOffPhase>> offPhases)
    {
        _offPhases = new(offPhases);
        Rating = rating;
        OnPhases = phases;
        TerminalVolts = terminalVolts;
        _bodyNodes = new(bodyNodes);
        _commonSupplies = new(() => [.. Common(s => s.CoversRange)]);
    }

    /// <summary>The switch, its device and its stack.</summary>
    public SwitchRating Rating { get; }

    /// <summary>Every phase of every mode in which it is closed, mode after mode.</summary>
    public IReadOnlyList<GatePhase> OnPhases { get; }

    /// <summary>
    /// Of a stack, every phase of every mode in which it is open, mode after mode: its inner gates need levels of their own then.
    /// Empty for a single device, whose gate rests at its source. Found when first asked for.
    /// </summary>
    public IReadOnlyList<StackOffPhase> OffPhases => _offPhases.Value;

    /// <summary>Whether in some on-phase no node of the converter can supply the gate over the whole input range.</summary>
    public bool NeedsOwnRail => OnPhases.Any(p => !p.HasSupply);

    /// <summary>The nodes that serve in every on-phase of every mode over the whole input range. Found when first asked for.</summary>
    public IReadOnlyList<string> CommonSupplies => _commonSupplies.Value;

    /// <summary>
    /// The potentials in volts (V) of its terminals over all modes, phases and input voltages: an n-type body
    /// must not be above the minimum, a p-type body not below the maximum. Undetermined where one is.
    /// </summary>
    public Interval<double> TerminalVolts { get; }

    /// <summary>
    /// The nodes that can take the body in every phase of every mode: never above (p-type: below) a terminal.
    /// Found when first asked for, in a time of nodes · phases · modes.
    /// </summary>
    public IReadOnlyList<string> BodyNodes => _bodyNodes.Value;

    /// <summary>The name of the switch and what it needs; where no node serves over the whole input range, those that serve in a part of it.</summary>
    public override string ToString() => $"{Rating.Switch.Name}: {Need}";

    private string Need => CommonSupplies.Count > 0 ? $"from {string.Join(", ", CommonSupplies)}"
        : !NeedsOwnRail ? "from a different node in each phase"
        : PartOfRange() is { Count: > 0 } parts
            ? $"from {string.Join(", ", parts.Select(p => $"{p.Node} at {p.InputVolts.ToString("V")} of input"))}, own rail elsewhere"
        : OnPhases.Any(p => p.Supplies.Count > 0) ? "own rail in some phase or part of the input range"
        : "own rail";

    private IEnumerable<string> Common(Predicate<GateSupply> counts) => OnPhases.Count == 0 ? []
        : OnPhases.Skip(1).Aggregate(
            OnPhases[0].Supplies.Where(s => counts(s)).Select(s => s.Node),
            (nodes, phase) => nodes.Where(phase.Supplies.Where(s => counts(s)).Select(s => s.Node).ToHashSet().Contains));

    // the input voltages at which a node serves in every on-phase
    private List<(string Node, Interval<double> InputVolts)> PartOfRange()
    {
        List<(string, Interval<double>)> parts = [];
        foreach (string node in Common(_ => true))
        {
            GateSupply[] supplies = [.. OnPhases.Select(p => p.Supplies.First(s => s.Node == node))];
            double from = supplies.Max(s => s.InputVolts.Minimum!.Value), to = supplies.Min(s => s.InputVolts.Maximum!.Value);
            if (from <= to)
            {
                parts.Add((node, new Interval<double>(from, to)));
            }
        }

        return parts;
    }
}
