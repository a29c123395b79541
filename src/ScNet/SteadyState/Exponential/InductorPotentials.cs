using ScNet.Kernel;
using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>Potentials of parts that only inductors join to the reference: from the inductors' voltages, once the state equation is known.</summary>
internal static class InductorPotentials
{
    /// <summary>Raises the potentials of such parts.</summary>
    /// <returns>Per node: whether its potential is fixed against the reference.</returns>
    public static bool[] Extend<T>(
        StateEquations<T> all, NetworkStructure structure, NetworkValues<T> values, int[] group, T[] generator, T[] potentials)
        where T : struct, IReal<T>
    {
        SwitchedLinearNetwork network = structure.Network;
        var reached = new bool[structure.ClusterCount];
        for (int c = 0; c < reached.Length; c++)
        {
            reached[c] = group[c] == 0;
        }

        for (bool hasGrown = true; hasGrown;)
        {
            hasGrown = false;
            for (int e = 0; e < network.Inductors.Length; e++)
            {
                NodePair nodes = network.Inductors[e];
                int first = group[structure.Cluster[nodes.First]], second = group[structure.Cluster[nodes.Second]];
                if (reached[first] == reached[second])
                {
                    continue;
                }

                // what the second part must rise by so that its inductor's voltage is L i' + R i
                T[] rise = Voltage(e);
                SmallMatrices.AddMultiple<T>(all.Row(potentials, nodes.First), T.Of(-1), rise);
                SmallMatrices.AddMultiple<T>(all.Row(potentials, nodes.Second), T.Of(1), rise);
                Raise(reached[first] ? second : first, T.Of(reached[first] ? -1 : 1), rise);
                hasGrown = true;
            }
        }

        return [.. structure.Cluster.Select(c => reached[group[c]])];

        T[] Voltage(int e)
        {
            Span<T> current = all.Row(all.Inductors, e);
            var row = new T[all.Width];
            SmallMatrices.AddMultiple(current, values.WindingOhms[e], row);
            for (int x = structure.VoltageStates; x < all.StateCount; x++)
            {
                SmallMatrices.AddMultiple<T>(generator.AsSpan(x * all.Width, all.Width), values.Henries[e] * current[x], row);
            }

            return row;
        }

        void Raise(int part, T sign, T[] rise)
        {
            for (int c = 0; c < reached.Length; c++)
            {
                if (group[c] == part)
                {
                    reached[c] = true;
                }
            }

            for (int node = 0; node < network.NodeCount; node++)
            {
                if (group[structure.Cluster[node]] == part)
                {
                    SmallMatrices.AddMultiple<T>(rise, sign, all.Row(potentials, node));
                }
            }
        }
    }
}
