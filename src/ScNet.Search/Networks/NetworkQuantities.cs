using Fractions;
using ScNet.Search.LoopSpaces;

namespace ScNet.Search.Networks;

/// <summary>The figures of a network from the whole numbers of its solution.</summary>
internal static class NetworkQuantities
{
    /// <summary>Per phase the charge that each terminal's branch takes from its node.</summary>
    public static long[][] ChargesOfTerminals(NetworkSolution solution) => [.. solution.Charges.Select(phase =>
    {
        long[] charges = new long[Terminals.Count(phase.Count - LoopSpace.FirstCapacitorColumn)];
        TerminalCharges.Write<long>([.. phase], charges);
        return charges;
    })];

    /// <summary>The potential of each terminal of a wiring in one piece, in the scale of the solution's voltages.</summary>
    public static long[] TerminalPotentials(Wiring wiring, BranchForest forest, NetworkSolution solution)
    {
        long[] nodes = new long[wiring.NodeCount];
        foreach ((int node, int from, int branch, int sign) in forest.Steps())
        {
            nodes[node] = nodes[from] + (sign * solution.Voltages[branch]);
        }

        long[] potentials = new long[wiring.TerminalCount];
        for (int t = 0; t < potentials.Length; t++)
        {
            potentials[t] = nodes[wiring.Nodes[t]];
        }

        return potentials;
    }

    /// <summary>The capacitors' voltages per volt of input.</summary>
    public static IReadOnlyList<Fraction> CapacitorVoltages(NetworkSolution solution) => Array.AsReadOnly<Fraction>(
        [.. solution.Voltages.Skip(LoopSpace.FirstCapacitorColumn).Select(v => new Fraction(v, solution.Voltages[LoopSpace.InputColumn]))]);

    /// <summary>The capacitors' charges per unit of charge to the output.</summary>
    public static IReadOnlyList<IReadOnlyList<Fraction>> CapacitorCharges(NetworkSolution solution) => Array.AsReadOnly<IReadOnlyList<Fraction>>(
        [.. solution.Charges.Select(phase => Array.AsReadOnly<Fraction>(
            [.. phase.Skip(LoopSpace.FirstCapacitorColumn).Select(q => new Fraction(q, solution.OutputCharge))]))]);

    /// <summary>The planned switches with their charges and voltages.</summary>
    public static IReadOnlyList<NetworkSwitch> Switches(IReadOnlyList<PlannedSwitch> planned, NetworkSolution solution, long[][] potentials) =>
        Array.AsReadOnly<NetworkSwitch>([.. planned.Select(s => new NetworkSwitch(
            s.First,
            s.Second,
            Array.AsReadOnly<int>([.. Enumerable.Range(1, potentials.Length).Where(phase => s.IsClosed[phase - 1])]),
            Array.AsReadOnly<Fraction>([.. s.Charges.Select(q => new Fraction(q, solution.OutputCharge))]),
            Array.AsReadOnly<Fraction>([.. potentials.Select((p, j) => s.IsClosed[j]
                ? Fraction.Zero
                : new Fraction(p[s.First] - p[s.Second], solution.Voltages[LoopSpace.InputColumn]))])))]);

    /// <summary>The measures of a network.</summary>
    public static NetworkMeasures Measures(SearchedNetwork network, NetworkSolution solution, long[][] potentials)
    {
        Fraction ratio = network.Ratio.Abs(), half = new(1, 2);
        Fraction[] moved = [.. Enumerable.Range(0, network.CapacitorCount)
            .Select(c => half * Sum(network.Charges.Select(phase => phase[c].Abs())))];
        Fraction total = Sum(moved);
        return new NetworkMeasures(
            Sum(moved.Zip(network.CapacitorVoltages, (q, v) => q * v.Abs())) / ratio,
            Sum(network.Switches.Select(s => Sum(s.Charges.Select(q => q.Abs())) * s.PeakVoltage)) / ratio,
            network.Switches.Count,
            network.CapacitorVoltages.Max(v => v.Abs()),
            network.Switches.Max(s => s.PeakVoltage),
            Sum(moved.Select((q, c) => q * SquaredSwing(c, solution, potentials))) / total,
            total,
            Sum(network.Switches.Select(s => Sum(s.Charges.Select(q => q.Abs())))));
    }

    // the square of the largest difference of a plate's potential between phases; both plates swing alike
    private static Fraction SquaredSwing(int capacitor, NetworkSolution solution, long[][] potentials)
    {
        int plate = Terminals.BottomPlate(capacitor);
        Fraction swing = new(potentials.Max(p => p[plate]) - potentials.Min(p => p[plate]), solution.Voltages[LoopSpace.InputColumn]);
        return swing * swing;
    }

    private static Fraction Sum(IEnumerable<Fraction> values) => values.Aggregate(Fraction.Zero, (sum, value) => sum + value);
}
