using ScNet.Kernel;
using ScNet.Numerics;

namespace ScNet.SteadyState;

/// <summary>
/// One phase in its own coordinates: resistor currents split into a part that node groups connected to
/// resistors fix, and orthogonal exponential modes. Built once, it serves every frequency.
/// </summary>
/// <remarks>
/// Symbols as in docs/theory/output-impedance.md. Each row of <see cref="Rows"/> is one coordinate of
/// the resistor currents, each times the root of its ohms; the columns are, in this order: node groups,
/// states (B), sources (h), the particular flow (q⁰), the directions (z) and, if asked for, the
/// resistors themselves (U).
/// </remarks>
internal sealed class PhaseModes
{
    // Products of rows of rates farther apart than this would lose digits of the slow ones.
    private const double LeastRateShare = 1e-8;

    private PhaseModes(
        DenseRows rows, int[] groupOf, int[] groupOrder, int groups, int states, int directions, double[] load, double[]? rates = null)
    {
        Rows = rows;
        GroupOf = groupOf;
        GroupOrder = groupOrder;
        Groups = groups;
        States = states;
        Directions = directions;
        Load = load;
        Rates = new double[rows.RowCount];
        Ramps = new double[rows.RowCount];
        for (int k = groupOrder.Length; k < rows.RowCount; k++)
        {
            ReadOnlySpan<double> coupling = Coupling(k);
            Rates[k] = rates is null ? DenseRows.Dot(coupling, coupling) : rates[k];
            Ramps[k] = DenseRows.Dot(coupling, load);
        }
    }

    public DenseRows Rows { get; }

    /// <summary>The column of each cluster of nodes, or -1 for the cluster to which the others that are connected to it refer.</summary>
    public int[] GroupOf { get; }

    /// <summary>The node groups in the order of the triangle that the first rows hold.</summary>
    public int[] GroupOrder { get; }

    /// <summary>The rows before this one belong to node groups, the others to exponential modes.</summary>
    public int FirstMode => GroupOrder.Length;

    public int ModeCount => Rows.RowCount;

    public int Groups { get; }

    public int States { get; }

    public int Directions { get; }

    /// <summary>The rate λ of each row in 1/s; zero for rows whose current is constant.</summary>
    public double[] Rates { get; }

    /// <summary>The change of each state in 1/s per ampere of load current (J); zero with a stiff load.</summary>
    public double[] Load { get; }

    /// <summary>B J of each row: the drive of a mode by a load current.</summary>
    public double[] Ramps { get; }

    public PhaseTerms Terms => new(Rows, ParticularColumn, Directions, Rates, Ramps);

    public int SourceColumn => Groups + States;

    public int ParticularColumn => SourceColumn + StateSpace.SourceCount;

    public int DirectionColumn => ParticularColumn + 1;

    public int ResistorColumn => DirectionColumn + Directions;

    /// <summary>The row of B: how a mode's current depends on the states.</summary>
    public ReadOnlySpan<double> Coupling(int row) => Rows.Row(row).Slice(Groups, States);

    public double Particular(int row) => Rows[row, ParticularColumn];

    public double Direction(int row, int direction) => Rows[row, DirectionColumn + direction];

    public static PhaseModes Of(StateSpace space, Converter converter, PhaseForest forest, ResistorFlows flows, int phase, bool withResistors)
    {
        SwitchedNetwork network = converter.Network;
        int[] resistors = flows.Resistors[phase];
        int[] groupOf = GroupColumns(space, network, resistors, out int groups);
        int directions = flows.Directions.Count;
        int columns = groups + space.StateCount + StateSpace.SourceCount + 1 + directions + (withResistors ? resistors.Length : 0);
        DenseRows rows = new(resistors.Length, columns);
        for (int r = 0; r < resistors.Length; r++)
        {
            (int first, int second) = Ends(space, network, resistors[r]);
            double scale = 1 / Math.Sqrt(flows.Ohms(resistors[r]));
            Fill(rows.Row(r), space, groupOf, groups, first, scale);
            Fill(rows.Row(r), space, groupOf, groups, second, -scale);
            int at = groups + space.StateCount + StateSpace.SourceCount;
            rows[r, at++] = flows.Particular[phase][r];
            for (int k = 0; k < directions; k++)
            {
                rows[r, at++] = flows.Directions[k][phase][r];
            }

            if (withResistors)
            {
                rows[r, at + r] = 1;
            }
        }

        if (LoopChains.TryOf(converter, forest, flows, phase) is { } chains
            && OfChains(chains, rows, groups) is ({ } modes, { } chainOrder, { } rates))
        {
            return new PhaseModes(modes, groupOf, chainOrder, groups, space.StateCount, directions, new double[space.StateCount], rates);
        }

        int[] order = rows.Triangularise(groups, 0);
        double[] load = LoadDrive(space, rows, order, groups, groupOf[space.Cluster[network.Output]], network.Output);
        rows.Orthogonalise(order.Length, groups, space.StateCount);
        return new PhaseModes(rows, groupOf, order, groups, space.StateCount, directions, load);
    }

    /// <summary>The two nodes of a resistor; a series resistance lies between a capacitor's positive and inner node.</summary>
    public static (int First, int Second) Ends(StateSpace space, SwitchedNetwork network, int resistor)
    {
        int capacitor = resistor - network.SwitchCount;
        return capacitor < 0
            ? (network.SwitchFirst[resistor], network.SwitchSecond[resistor])
            : (network.BranchFirst[capacitor], space.InnerNode[capacitor]);
    }

    // The rows of node groups first, then the modes of the chains; null where their rates lie too far apart for products of rows.
    private static (DenseRows Rows, int[] Order, double[] Rates)? OfChains(LoopChains chains, DenseRows rows, int groups)
    {
        int count = rows.RowCount;
        DenseRows shares = new(count, count);
        for (int r = 0; r < count; r++)
        {
            shares[r, r] = 1;
        }

        if (chains.TryRotate(shares) is not { } rates || rates.Where(r => r > 0).Min() < LeastRateShare * rates.Max())
        {
            return null;
        }

        DenseRows modes = new(count, rows.ColumnCount);
        int[] ordered = [.. Enumerable.Range(0, count).OrderBy(r => rates[r] > 0)];
        for (int k = 0; k < count; k++)
        {
            for (int r = 0; r < count; r++)
            {
                DenseRows.AddMultiple(rows.Row(r), shares[ordered[k], r], modes.Row(k));
            }
        }

        int still = rates.Count(r => r == 0);
        DenseRows first = new(still, rows.ColumnCount);
        for (int k = 0; k < still; k++)
        {
            modes.Row(k).CopyTo(first.Row(k));
        }

        int[] order = first.Triangularise(groups, 0);
        for (int k = 0; k < still; k++)
        {
            first.Row(k).CopyTo(modes.Row(k));
        }

        return (modes, order, [.. ordered.Select(r => rates[r])]);
    }

    // One unknown per cluster, but none for one cluster of each set that resistors join: the reference's, or the first.
    private static int[] GroupColumns(StateSpace space, SwitchedNetwork network, int[] resistors, out int groups)
    {
        var root = new int[space.ClusterCount];
        for (int c = 0; c < root.Length; c++)
        {
            root[c] = c;
        }

        int Find(int cluster)
        {
            while (root[cluster] != cluster)
            {
                cluster = root[cluster] = root[root[cluster]];
            }

            return cluster;
        }

        foreach (int resistor in resistors)
        {
            (int first, int second) = Ends(space, network, resistor);
            int a = Find(space.Cluster[first]), b = Find(space.Cluster[second]);
            root[Math.Max(a, b)] = Math.Min(a, b);
        }

        var column = new int[root.Length];
        groups = 0;
        for (int c = 0; c < root.Length; c++)
        {
            column[c] = Find(c) == c ? -1 : groups++;
        }

        return column;
    }

    private static void Fill(Span<double> row, StateSpace space, int[] groupOf, int groups, int node, double scale)
    {
        if (groupOf[space.Cluster[node]] is var group and >= 0)
        {
            row[group] += scale;
        }

        ReadOnlySpan<double> states = space.StatesOf(node), sources = space.SourcesOf(node);
        for (int k = 0; k < states.Length; k++)
        {
            row[groups + k] += scale * states[k];
        }

        for (int s = 0; s < sources.Length; s++)
        {
            row[groups + states.Length + s] += scale * sources[s];
        }
    }

    // A load current of one ampere leaves the output node: what is not carried by resistors discharges states. Of a stiff output, which
    // is in the reference's cluster and depends on no state, it takes nothing.
    private static double[] LoadDrive(StateSpace space, DenseRows rows, int[] order, int groups, int outputGroup, int output)
    {
        var load = new double[space.StateCount];
        DenseRows.AddMultiple(space.StatesOf(output), -1, load);

        // forward substitution with the transposed triangle: the currents that the node groups demand
        var demanded = new double[order.Length];
        for (int k = 0; k < order.Length; k++)
        {
            double value = order[k] == outputGroup ? -1 : 0;
            for (int l = 0; l < k; l++)
            {
                value -= rows[l, order[k]] * demanded[l];
            }

            demanded[k] = value / rows[k, order[k]];
            DenseRows.AddMultiple(rows.Row(k).Slice(groups, load.Length), -demanded[k], load);
        }

        return load;
    }
}
