using ScNet.Kernel;
using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>
/// The state equation x' = A x + b u of every phase in energy coordinates (half the sum of the squares of x is the
/// stored energy), and every node's potential and element's current as a row over (x, u).
/// </summary>
/// <remarks>
/// x holds voltages first, then currents; u is the input voltage and, with a stiff output, the output voltage, else the
/// load current, then further load currents. Derivation: docs/theory/two-port.md. Cost: the square of the states times the elements per phase.
/// </remarks>
internal sealed class StateEquations<T>
    where T : struct, IReal<T>
{
    // of the square of a direction, in doubled precision
    private const double DependentDirection = 1e-18;

    private readonly NetworkStructure _structure;
    private readonly SwitchedLinearNetwork _network;
    private readonly NetworkValues<T> _values;
    private readonly T[] _voltages;
    private readonly T[] _currents;

    private StateEquations(NetworkStructure structure, NetworkValues<T> values)
    {
        _structure = structure;
        _network = structure.Network;
        _values = values;
        _voltages = EnergyTriangle(
            structure.VoltageStates, _network.Capacitors.Length, values.Farads, i => Difference(structure.NodeStates, structure.VoltageStates, _network.Capacitors[i]));
        _currents = EnergyTriangle(
            structure.CurrentStates,
            _network.Inductors.Length,
            values.Henries,
            e => [.. structure.InductorLinks.AsSpan(e * structure.CurrentStates, structure.CurrentStates)]);
        NodeBase = new T[_network.NodeCount * Width];
        for (int node = 0; node < _network.NodeCount; node++)
        {
            Span<T> row = Row(NodeBase, node);
            Fill(structure.NodeStates.AsSpan(node * structure.VoltageStates, structure.VoltageStates), row);
            SmallMatrices.SolveTriangle<T>(_voltages, row[..structure.VoltageStates]);
            Fill(structure.NodeSources.AsSpan(node * NetworkStructure.SourceCount, NetworkStructure.SourceCount), row[StateCount..]);
        }

        Inductors = new T[_network.Inductors.Length * Width];
        for (int e = 0; e < _network.Inductors.Length; e++)
        {
            Span<T> row = Row(Inductors, e);
            Span<T> states = row.Slice(structure.VoltageStates, structure.CurrentStates);
            Fill(structure.InductorLinks.AsSpan(e * structure.CurrentStates, structure.CurrentStates), states);
            SmallMatrices.SolveTriangle<T>(_currents, states);
            Fill(structure.InductorLoads.AsSpan(e * InputCount, InputCount), row[StateCount..]);
        }

        Phases = new PhaseEquations<T>[_network.PhaseCount];
        for (int j = 0; j < Phases.Length; j++)
        {
            int same = Enumerable.Range(0, j).FirstOrDefault(k => _network.Closed[k].AsSpan().SequenceEqual(_network.Closed[j]), j);
            Phases[j] = same < j ? Phases[same] : PhaseEquations<T>.Of(this, structure, values, j);
        }
    }

    internal StateEquations(NetworkStructure structure, NetworkValues<T> values, (T[] Voltages, T[] Currents) triangles, T[] nodes, T[] inductors, PhaseEquations<T>[] phases)
    {
        _structure = structure;
        _network = structure.Network;
        _values = values;
        (_voltages, _currents) = triangles;
        (NodeBase, Inductors, Phases) = (nodes, inductors, phases);
    }

    public int StateCount => _structure.VoltageStates + _structure.CurrentStates;

    /// <summary>States and inputs: the length of every row.</summary>
    public int Width => StateCount + InputCount;

    /// <summary>Both sources, then the further loads.</summary>
    public int InputCount => _network.InputCount;

    /// <summary>Per node: its voltage against the first node of its cluster.</summary>
    public T[] NodeBase { get; }

    /// <summary>Per inductor: its current from first to second terminal.</summary>
    public T[] Inductors { get; }

    public PhaseEquations<T>[] Phases { get; }

    public T[] Duties => _values.Duties;

    public static StateEquations<T> Of(NetworkStructure structure, NetworkValues<T> values) => new(structure, values);

    /// <summary>The same equations in another number type.</summary>
    public StateEquations<TOther> To<TOther>(System.Converter<T, TOther> convert)
        where TOther : struct, IReal<TOther>
    {
        var phases = new PhaseEquations<TOther>[Phases.Length];
        for (int j = 0; j < phases.Length; j++)
        {
            int same = Array.IndexOf(Phases, Phases[j]);
            phases[j] = same < j ? phases[same] : Phases[j].To(convert);
        }

        return new StateEquations<TOther>(
            _structure,
            _values.To(convert),
            (Array.ConvertAll(_voltages, convert), Array.ConvertAll(_currents, convert)),
            Array.ConvertAll(NodeBase, convert),
            Array.ConvertAll(Inductors, convert),
            phases);
    }

    public Span<T> Row(T[] rows, int index) => rows.AsSpan(index * Width, Width);

    /// <summary>The voltage of a capacitor, first terminal minus second, which is the same row in every phase.</summary>
    public T[] CapacitorVoltage(int capacitor)
    {
        T[] row = [.. Row(NodeBase, _network.Capacitors[capacitor].First)];
        SmallMatrices.AddMultiple<T>(Row(NodeBase, _network.Capacitors[capacitor].Second), T.Of(-1), row);
        return row;
    }

    /// <summary>
    /// Directions of the state that nothing ever moves, one row over the states each, reduced: each row has a one where
    /// the others have a zero, at the position given beside it.
    /// </summary>
    public (T[] Directions, int[] Pivots) FreeStates()
    {
        int n = StateCount, count = _structure.FreeVoltages.Count + _structure.FreeCurrents.Count;
        var rows = new T[count * n];
        for (int k = 0; k < count; k++)
        {
            Span<T> row = rows.AsSpan(k * n, n);
            if (k < _structure.FreeVoltages.Count)
            {
                int[] pattern = _structure.FreeVoltages[k];
                for (int i = 0; i < pattern.Length; i++)
                {
                    if (_structure.CapacitorState[i] is var state and >= 0)
                    {
                        row[state] = T.Of(pattern[i]);
                    }
                }

                MultiplyTransposed(_voltages, row[.._structure.VoltageStates]);
            }
            else
            {
                Fill(_structure.FreeCurrents[k - _structure.FreeVoltages.Count], row[_structure.VoltageStates..]);
                MultiplyTransposed(_currents, row[_structure.VoltageStates..]);
            }
        }

        return (rows, RowReduction.Reduce(rows, count, n));
    }

    /// <summary>Orthonormal rows over the states that span the currents of some inductors.</summary>
    public T[] RestingDirections(int[] inductors)
    {
        List<T[]> found = [];
        foreach (int e in inductors)
        {
            T[] row = [.. Row(Inductors, e)[..StateCount]];
            double size = SmallMatrices.Dot<T>(row, row).Nearest;
            foreach (T[] other in found.Concat(found))
            {
                SmallMatrices.AddMultiple<T>(other, -SmallMatrices.Dot<T>(row, other), row);
            }

            T rest = SmallMatrices.Dot<T>(row, row);
            if (rest.Nearest > DependentDirection * size)
            {
                T scale = T.Of(1) / T.Sqrt(rest);
                found.Add(Array.ConvertAll(row, v => v * scale));
            }
        }

        return [.. found.SelectMany(row => row)];
    }

    /// <summary>The same equations with phases of other lengths.</summary>
    public StateEquations<T> WithDuties(T[] duties) => new(_structure, _values with { Duties = duties }, (_voltages, _currents), NodeBase, Inductors, Phases);

    private static void Fill(ReadOnlySpan<int> from, Span<T> to)
    {
        for (int k = 0; k < from.Length; k++)
        {
            to[k] = T.Of(from[k]);
        }
    }

    private static int[] Difference(int[] nodeRows, int width, NodePair nodes)
    {
        var row = new int[width];
        for (int k = 0; k < width; k++)
        {
            row[k] = nodeRows[(nodes.First * width) + k] - nodeRows[(nodes.Second * width) + k];
        }

        return row;
    }

    // The triangle L of Σ value · row rowᵀ, so that Lᵀ takes tree voltages (link currents) to states.
    private static T[] EnergyTriangle(int n, int elements, T[] values, Func<int, int[]> row)
    {
        var matrix = new T[n * n];
        for (int e = 0; e < elements; e++)
        {
            int[] own = row(e);
            for (int r = 0; r < n; r++)
            {
                for (int c = 0; own[r] != 0 && c <= r; c++)
                {
                    matrix[(r * n) + c] += values[e] * T.Of(own[r] * own[c]);
                }
            }
        }

        SmallMatrices.Triangle<T>(matrix, n);
        return matrix;
    }

    // x becomes Lᵀ x
    private static void MultiplyTransposed(ReadOnlySpan<T> triangle, Span<T> x)
    {
        int n = x.Length;
        for (int k = 0; k < n; k++)
        {
            T sum = default;
            for (int r = k; r < n; r++)
            {
                sum += triangle[(r * n) + k] * x[r];
            }

            x[k] = sum;
        }
    }
}
