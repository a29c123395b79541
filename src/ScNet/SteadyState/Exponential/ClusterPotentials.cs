using ScNet.Kernel;
using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>
/// The potentials of clusters that resistors join in a phase: nodal equations, whose matrix has positive conductances
/// only, bordered by a row per conducting diode, whose current is one more unknown. One cluster of every part is left at zero.
/// </summary>
internal static class ClusterPotentials
{
    /// <summary>One row over states and inputs per cluster, then one per diode of the network: its current from anode to cathode.</summary>
    public static T[] Of<T>(StateEquations<T> all, NetworkStructure structure, NetworkValues<T> values, int phase)
        where T : struct, IReal<T>
    {
        SwitchedLinearNetwork network = structure.Network;
        int[] group = structure.PhaseGroup[phase], unknown = new int[structure.ClusterCount];
        int count = 0;
        for (int c = 0; c < unknown.Length; c++)
        {
            unknown[c] = group[c] == c ? -1 : count++;
        }

        int[] diodes = [.. Enumerable.Range(network.FirstDiode, network.DiodeCount).Where(d => network.Closed[phase][d])];
        int clusters = count;
        count += diodes.Length;
        int width = all.Width, length = count + width;
        var rows = new T[count * length];
        for (int r = 0; r < network.Resistors.Length; r++)
        {
            (int a, int b) = Unknowns(network.Resistors[r]);
            if (!network.Closed[phase][r] || a == b || r >= network.FirstDiode)
            {
                continue;
            }

            T conductance = T.Of(1) / values.Ohms[r];
            T[] current = [.. all.Row(all.NodeBase, network.Resistors[r].First)];
            SmallMatrices.AddMultiple<T>(all.Row(all.NodeBase, network.Resistors[r].Second), T.Of(-1), current);
            Take(a, conductance, current);
            Take(b, -conductance, current);
            Add(a, a, conductance);
            Add(b, b, conductance);
            Add(a, b, -conductance);
            Add(b, a, -conductance);
        }

        for (int d = 0; d < diodes.Length; d++)
        {
            // anode minus cathode is the forward voltage; the current leaves the anode's cluster
            NodePair nodes = network.Resistors[diodes[d]];
            (int cathode, int anode) = Unknowns(nodes);
            int own = clusters + d;
            Add(anode, own, T.Of(1));
            Add(own, anode, T.Of(1));
            Add(cathode, own, T.Of(-1));
            Add(own, cathode, T.Of(-1));
            Take(own, T.Of(-1), all.Row(all.NodeBase, nodes.First));
            Take(own, T.Of(1), all.Row(all.NodeBase, nodes.Second));
            rows[(own * length) + count + all.StateCount + NetworkStructure.Input] += values.DiodeRatios[diodes[d] - network.FirstDiode];
        }

        for (int e = 0; e < network.Inductors.Length; e++)
        {
            (int a, int b) = Unknowns(network.Inductors[e]);
            Take(a, T.Of(1), all.Row(all.Inductors, e));
            Take(b, T.Of(-1), all.Row(all.Inductors, e));
        }

        foreach ((int input, NodePair nodes) in network.Loads)
        {
            var load = new T[width];
            load[all.StateCount + input] = T.Of(1);
            (int from, int back) = Unknowns(nodes);
            Take(from, T.Of(1), load);
            Take(back, T.Of(-1), load);
        }

        SmallMatrices.TrySolve<T>(rows, count, length, new double[count]);
        var potentials = new T[(structure.ClusterCount + network.DiodeCount) * width];
        for (int c = 0; c < unknown.Length; c++)
        {
            if (unknown[c] >= 0)
            {
                rows.AsSpan((unknown[c] * length) + count, width).CopyTo(potentials.AsSpan(c * width));
            }
        }

        for (int d = 0; d < diodes.Length; d++)
        {
            rows.AsSpan(((clusters + d) * length) + count, width)
                .CopyTo(potentials.AsSpan((structure.ClusterCount + diodes[d] - network.FirstDiode) * width));
        }

        return potentials;

        (int A, int B) Unknowns(NodePair nodes) => (unknown[structure.Cluster[nodes.First]], unknown[structure.Cluster[nodes.Second]]);

        void Add(int row, int column, T value)
        {
            if (row >= 0 && column >= 0)
            {
                rows[(row * length) + column] += value;
            }
        }

        // a current leaves a cluster
        void Take(int row, T factor, ReadOnlySpan<T> current)
        {
            if (row >= 0)
            {
                SmallMatrices.AddMultiple(current, -factor, rows.AsSpan((row * length) + count, width));
            }
        }
    }
}
