using System.Diagnostics.CodeAnalysis;
using Fractions;
using ScNet.Search.LoopSpaces;
using ScNet.Search.Networks;

namespace ScNet.Search;

/// <summary>
/// A network of flying capacitors between input, stiff output and reference, with a wiring per phase that fixes every
/// voltage, charge and potential, and with the switches that make it.
/// </summary>
public sealed class SearchedNetwork
{
    // a bit per phase in a machine word
    private const int MostPhases = 30;

    private readonly List<PlannedSwitch> _planned;

    private SearchedNetwork(IReadOnlyList<Wiring> phases, SwitchLayout layout, Fraction? limit, NetworkSolution solution, long[][] potentials)
    {
        Phases = Array.AsReadOnly(phases.ToArray());
        Layout = phases.Count == 2 && layout == SwitchLayout.Fewest ? SwitchLayout.LowestBlocking : layout;
        SwitchVoltageLimit = limit;
        long? scaled = limit is { } most ? (long)(most * solution.Voltages[LoopSpace.InputColumn]) : null;
        _planned = SwitchPlan.Of(phases, potentials, NetworkQuantities.ChargesOfTerminals(solution), Layout, scaled);
        Ratio = new Fraction(solution.Voltages[LoopSpace.OutputColumn], solution.Voltages[LoopSpace.InputColumn]);
        CapacitorVoltages = NetworkQuantities.CapacitorVoltages(solution);
        Charges = NetworkQuantities.CapacitorCharges(solution);
        Switches = NetworkQuantities.Switches(_planned, solution, potentials);
        Measures = NetworkQuantities.Measures(this, solution, potentials);
    }

    /// <summary>The number of flying capacitors.</summary>
    public int CapacitorCount => Phases[0].CapacitorCount;

    /// <summary>What each phase joins.</summary>
    public IReadOnlyList<Wiring> Phases { get; }

    /// <summary>How the switches are laid out; <see cref="SwitchLayout.Fewest"/> of two phases is <see cref="SwitchLayout.LowestBlocking"/>.</summary>
    public SwitchLayout Layout { get; }

    /// <summary>The share of the input's voltage above which no switch was to block when the fewest were chosen; null where none was set.</summary>
    internal Fraction? SwitchVoltageLimit { get; }

    /// <summary>Output voltage over input voltage without load; negative where it inverts.</summary>
    public Fraction Ratio { get; }

    /// <summary>The voltage of each capacitor, positive less bottom plate per volt of input.</summary>
    public IReadOnlyList<Fraction> CapacitorVoltages { get; }

    /// <summary>Per phase the charge into each capacitor's positive plate per unit of charge to the output.</summary>
    public IReadOnlyList<IReadOnlyList<Fraction>> Charges { get; }

    /// <summary>
    /// The switches: the fewest that make the wirings, except that <see cref="SwitchLayout.LowestBlocking"/> and <see cref="SwitchLayout.LeastCharge"/> of three and
    /// more phases share a switch between phases only where that comes by itself.
    /// </summary>
    public IReadOnlyList<NetworkSwitch> Switches { get; }

    /// <summary>What the network asks for.</summary>
    public NetworkMeasures Measures { get; }

    /// <summary>Makes a network of wirings.</summary>
    /// <param name="phases">A wiring per phase, all of the same number of capacitors; at most 30.</param>
    /// <param name="layout">How the switches are laid out.</param>
    /// <param name="network">The network.</param>
    /// <returns>False where there are too few or too many phases, a wiring short-circuits a branch or leaves a piece floating, or the loops do not fix all voltages and charges, none zero.</returns>
    public static bool TryCreate(IReadOnlyList<Wiring> phases, SwitchLayout layout, [NotNullWhen(true)] out SearchedNetwork? network) => TryCreate(phases, layout, null, out network);

    /// <summary>Makes a network of wirings whose switches, the fewest, block no more than a limit that some keep to.</summary>
    internal static bool TryCreate(IReadOnlyList<Wiring> phases, SwitchLayout layout, Fraction? limit, [NotNullWhen(true)] out SearchedNetwork? network)
    {
        ArgumentNullException.ThrowIfNull(phases);
        network = null;
        if (phases.Count is < 2 or > MostPhases || phases.Any(p => p.TerminalCount != phases[0].TerminalCount || !p.IsAdmissible))
        {
            return false;
        }

        BranchForest[] forests = [.. phases.Select(BranchForest.Of)];
        if (forests.Any(f => f.PieceCount > 1) || !NetworkSolution.TrySolve([.. phases.Select(LoopSpace.Of)], out NetworkSolution? solution))
        {
            return false;
        }

        long[][] potentials = [.. forests.Select((forest, j) => NetworkQuantities.TerminalPotentials(phases[j], forest, solution))];
        network = new SearchedNetwork(phases, layout, limit, solution, potentials);
        return true;
    }

    /// <summary>The network as a converter of phases of equal length, with capacitors c1, c2 … and switches s1, s2 ….</summary>
    /// <param name="name">Its name.</param>
    public Converter ToConverter(string name) => NetworkConverter.Of(this, name);

    /// <summary>The ratio, capacitors, switches and wirings.</summary>
    public override string ToString() =>
        $"{Ratio} by {UnitText.Count(CapacitorCount, "capacitor", "capacitors")} and {UnitText.Count(Switches.Count, "switch", "switches")}: {string.Join(" | ", Phases)}";
}
