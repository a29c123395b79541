using ScNet.Kernel;
using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>
/// The potentials of clusters that resistors join in a phase: nodal equations, whose matrix has positive conductances
/// only. One cluster of every part is left at zero.
/// </summary>
internal static class ClusterPotentials
{
    /// <summary>One row over states and inputs per cluster.</summary>
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

        int width = all.Width, length = count + width;
        var rows = new T[count * length];
        for (int r = 0; r < network.Resistors.Length; r++)
        {
            (int a, int b) = Unknowns(network.Resistors[r]);
            if (!network.Closed[phase][r] || a == b)
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

        for (int e = 0; e < network.Inductors.Length; e++)
        {
            (int a, int b) = Unknowns(network.Inductors[e]);
            Take(a, T.Of(1), all.Row(all.Inductors, e));
            Take(b, T.Of(-1), all.Row(all.Inductors, e));
        }

        if (!network.IsStiff)
        {
            var load = new T[width];
            load[^1] = T.Of(1);
            Take(unknown[structure.Cluster[network.OutputNode]], T.Of(1), load);
        }

        SmallMatrices.TrySolve<T>(rows, count, length, new double[count]);
        var potentials = new T[structure.ClusterCount * width];
        for (int c = 0; c < unknown.Length; c++)
        {
            if (unknown[c] >= 0)
            {
                rows.AsSpan((unknown[c] * length) + count, width).CopyTo(potentials.AsSpan(c * width));
            }
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
