using ScNet.Kernel;
using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>One phase of <see cref="StateEquations{T}"/>: all rows are over states and inputs.</summary>
internal sealed class PhaseEquations<T>
    where T : struct, IReal<T>
{
    private const double Dust = 1e-27;

    internal PhaseEquations(int inputs, T[] generator, T[] potentials, bool[] isKnown, T[] inputCharge, T[] output, T[][] further, T[][] resistors, T[] resting)
    {
        Generator = generator;
        Potentials = potentials;
        IsPotentialKnown = isKnown;
        InputCurrent = inputCharge;
        Output = output;
        FurtherOutputs = further;
        ResistorCurrents = resistors;
        RestingDirections = resting;
        int n = inputCharge.Length - inputs;
        Norm = PhaseExponential.Norm<T>(generator, n, inputCharge.Length);
        Drives = new double[inputs];
        for (int x = 0; x < n; x++)
        {
            for (int u = 0; u < Drives.Length; u++)
            {
                Drives[u] = Math.Max(Drives[u], Math.Abs(generator[(x * inputCharge.Length) + n + u].Nearest));
            }
        }

    }

    /// <summary>Both sources, then the further loads.</summary>
    public int InputCount => Drives.Length;

    /// <summary>[A b], one row per state.</summary>
    public T[] Generator { get; }

    /// <summary>The norm of A.</summary>
    public double Norm { get; }

    /// <summary>The largest entry of each column of b.</summary>
    public double[] Drives { get; }

    /// <summary>Per node: its potential.</summary>
    public T[] Potentials { get; }

    /// <summary>Per node: whether anything fixes its potential against the reference.</summary>
    public bool[] IsPotentialKnown { get; }

    /// <summary>The current out of the input source, without that of capacitors that sources charge directly, which average to nothing.</summary>
    public T[] InputCurrent { get; }

    /// <summary>The current into a stiff output (likewise), or the output voltage of a current load.</summary>
    public T[] Output { get; }

    /// <summary>The voltage of each further load; empty where nothing fixes it.</summary>
    public T[][] FurtherOutputs { get; }

    /// <summary>The current of each resistor that conducts, from first to second node; empty for the others.</summary>
    public T[][] ResistorCurrents { get; }

    /// <summary>Orthonormal directions of the state that are zero in this phase, one row over the states each: currents of inductors without a path.</summary>
    public T[] RestingDirections { get; }

    public static PhaseEquations<T> Of(StateEquations<T> all, NetworkStructure structure, NetworkValues<T> values, int phase)
    {
        SwitchedLinearNetwork network = structure.Network;
        int width = all.Width, n = all.StateCount;
        int[] group = structure.PhaseGroup[phase];
        T[] potentials = [.. all.NodeBase];
        T[] clusters = ClusterPotentials.Of(all, structure, values, phase);
        for (int node = 0; node < network.NodeCount; node++)
        {
            SmallMatrices.AddMultiple<T>(all.Row(clusters, structure.Cluster[node]), T.Of(1), all.Row(potentials, node));
        }

        var generator = new T[n * width];
        var input = new T[width];
        var output = new T[width];
        var resistors = new T[network.Resistors.Length][];
        for (int r = 0; r < resistors.Length; r++)
        {
            if (r >= network.FirstDiode)
            {
                resistors[r] = network.Closed[phase][r] ? Negated([.. all.Row(clusters, structure.ClusterCount + r - network.FirstDiode)]) : [];
                if (network.Closed[phase][r])
                {
                    Carry(network.Resistors[r], resistors[r]);
                }

                continue;
            }

            resistors[r] = network.Closed[phase][r] ? Difference(network.Resistors[r]) : [];
            T conductance = T.Of(1) / values.Ohms[r];
            for (int c = 0; c < resistors[r].Length; c++)
            {
                resistors[r][c] *= conductance;
            }

            if (network.Closed[phase][r])
            {
                Carry(network.Resistors[r], resistors[r]);
            }
        }

        for (int e = 0; e < network.Inductors.Length; e++)
        {
            Span<T> current = all.Row(all.Inductors, e);
            Carry(network.Inductors[e], current);
            T[] voltage = Difference(network.Inductors[e]);
            SmallMatrices.AddMultiple(current, -values.WindingOhms[e], voltage);
            for (int x = structure.VoltageStates; x < n; x++)
            {
                if (!current[x].IsZero)
                {
                    SmallMatrices.AddMultiple<T>(voltage, current[x], generator.AsSpan(x * width, width));
                }
            }
        }

        foreach ((int k, NodePair nodes) in network.Loads)
        {
            var load = new T[width];
            load[n + k] = T.Of(1);
            Carry(nodes, load);
        }

        T[] resting = all.RestingDirections(structure.RestingInductors[phase]);
        Rests.HoldGenerator<T>(resting, n, width, generator);
        bool[] isKnown = InductorPotentials.Extend(all, structure, values, group, generator, potentials);
        T[] row = network.IsStiff ? Negated(output) : isKnown[network.OutputNode] ? [.. all.Row(potentials, network.OutputNode)] : [];
        T[][] further = Array.ConvertAll(network.FurtherLoads, nodes =>
            (isKnown[nodes.First] && isKnown[nodes.Second]) || group[structure.Cluster[nodes.First]] == group[structure.Cluster[nodes.Second]] ? Difference(nodes) : []);
        return new(all.InputCount, generator, potentials, isKnown, input, row, further, resistors, resting);

        T[] Difference(NodePair nodes)
        {
            ReadOnlySpan<T> first = all.Row(potentials, nodes.First), second = all.Row(potentials, nodes.Second);
            var row = new T[width];
            for (int c = 0; c < width; c++)
            {
                T difference = first[c] - second[c];
                row[c] = IsDust(difference, first[c], second[c]) ? default : difference;
            }

            return row;
        }

        // a current from one node to another: what it takes from the states and the sources
        void Carry(NodePair nodes, ReadOnlySpan<T> current)
        {
            Span<T> first = all.Row(all.NodeBase, nodes.First), second = all.Row(all.NodeBase, nodes.Second);
            for (int x = 0; x < structure.VoltageStates; x++)
            {
                T weight = second[x] - first[x];
                if (!weight.IsZero)
                {
                    SmallMatrices.AddMultiple(current, weight, generator.AsSpan(x * width, width));
                }
            }

            SmallMatrices.AddMultiple(current, first[n + NetworkStructure.Input] - second[n + NetworkStructure.Input], input);
            SmallMatrices.AddMultiple(current, first[n + NetworkStructure.Load] - second[n + NetworkStructure.Load], output);
        }
    }

    /// <summary>The same equations in another number type.</summary>
    public PhaseEquations<TOther> To<TOther>(System.Converter<T, TOther> convert)
        where TOther : struct, IReal<TOther> => new(
            InputCount,
            Array.ConvertAll(Generator, convert),
            Array.ConvertAll(Potentials, convert),
            IsPotentialKnown,
            Array.ConvertAll(InputCurrent, convert),
            Array.ConvertAll(Output, convert),
            Array.ConvertAll(FurtherOutputs, r => Array.ConvertAll(r, convert)),
            Array.ConvertAll(ResistorCurrents, r => Array.ConvertAll(r, convert)),
            Array.ConvertAll(RestingDirections, convert));

    // What eliminating nodes in doubled precision leaves where both ends have one potential. A derivative may remain where
    // the values cancel.
    private static bool IsDust(T difference, T first, T second) => typeof(T) == typeof(DoubleDouble)
        && Math.Abs(difference.Nearest) <= Dust * (Math.Abs(first.Nearest) + Math.Abs(second.Nearest));

    private static T[] Negated(T[] row) => Array.ConvertAll(row, v => -v);
}
