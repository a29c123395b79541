namespace ScNet.Reconfiguration;

/// <summary>
/// Several single-ratio networks laid over one another on shared capacitors, with as few switches as the
/// search found: one converter with a mode per network.
/// </summary>
/// <remarks>
/// Every node of a network that is not a port vanishes into capacitor plates: in each phase a network only
/// says which plates and ports are joined. A set of switches serves if it can join every such group within
/// itself. The search tries the ways to map each network's capacitors, in order and direction, onto the
/// shared ones and thins out the switches for each; the count is the least found, not proved least unless another
/// <see cref="IOverlayMethod"/> says so. Up to
/// <see cref="LargestTrialCount"/> ways all are tried, of more a seeded sample of as many: from five capacitors
/// in two networks on, or four in three. One way is made at a time. Cost of a trial: groups · terminals².
/// </remarks>
public sealed class Overlay
{
    /// <summary>The largest number of mappings that is tried.</summary>
    public const int LargestTrialCount = 20_000;

    /// <summary>The largest number of capacitors that a network may have.</summary>
    public const int LargestCapacitorCount = 30;

    internal Overlay(Converter converter, int separateSwitchCount)
    {
        Converter = converter;
        SeparateSwitchCount = separateSwitchCount;
    }

    /// <summary>The reconfigurable converter; its modes bear the names of the networks. Capacitances and on-resistances are 1.</summary>
    public Converter Converter { get; }

    /// <summary>How many switches it needs.</summary>
    public int SwitchCount => Converter.Switches.Count;

    /// <summary>Whether no set of switches between terminals, however capacitors are mapped, has fewer.</summary>
    public bool IsProvedLeast { get; internal init; }

    /// <summary>How many switches the networks have together when built separately.</summary>
    public int SeparateSwitchCount { get; }

    /// <summary>Lays networks over one another.</summary>
    /// <param name="name">The name of the converter.</param>
    /// <param name="networks">The converters, each with one mode, a stiff load and the same phases; the names become mode names.</param>
    /// <param name="seed">Starts the random choices of the search; the same number gives the same converter.</param>
    /// <param name="progress">Receives the fraction done, from 0 to 1; may be null.</param>
    /// <param name="cancellationToken">Stops the search.</param>
    /// <exception cref="ArgumentException">There is no network, or one has several modes, a current load, other duties than the first or more than <see cref="LargestCapacitorCount"/> capacitors.</exception>
    /// <exception cref="ScNetException">A network has inductors.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static Overlay Of(
        string name,
        IReadOnlyList<Converter> networks,
        int seed = 1,
        IProgress<double>? progress = null,
        CancellationToken cancellationToken = default) => new OverlayHeuristic(seed).Lay(name, networks, progress, cancellationToken);

    /// <summary>The mode table: a line per mode, the phases of each switch that closes.</summary>
    public override string ToString() => string.Join("\n", Converter.Modes.Select(m =>
        $"{m.Name}: {string.Join(", ", Converter.Switches.Select((s, i) => (s.Name, On: m.ClosedPhases[i])).Where(s => s.On.Count > 0).Select(s => $"{s.Name} {s.On}"))}"));

    /// <summary>Refuses what cannot be laid over one another.</summary>
    internal static void Check(string name, IReadOnlyList<Converter> networks)
    {
        Guard.Named(name, nameof(name));
        networks = Guard.Copy(networks, nameof(networks));
        if (networks.Count == 0 || networks.Select(n => n.Name).Distinct(StringComparer.Ordinal).Count() != networks.Count)
        {
            throw new ArgumentException("Expected at least one network, each with a name of its own.", nameof(networks));
        }

        Converter first = networks[0];
        foreach (Converter network in networks)
        {
            InductorSupport.Refuse(network, "Laying networks over one another");
            if (network.Modes.Count != 1 || network.Load != LoadKind.Stiff)
            {
                throw new ArgumentException($"Expected one mode and a stiff load, but '{network.Name}' has {network.Modes.Count} modes and load {network.Load}.", nameof(networks));
            }

            if (!network.Phases.Select(p => p.Duty).SequenceEqual(first.Phases.Select(p => p.Duty)))
            {
                throw new ArgumentException($"Expected the duties of '{first.Name}', but '{network.Name}' has others.", nameof(networks));
            }
        }
    }
}
