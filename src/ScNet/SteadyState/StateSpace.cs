using ScNet.Kernel;
using ScNet.Numerics;

namespace ScNet.SteadyState;

/// <summary>
/// The state of a converter, the same in every phase: independent capacitor voltages, scaled so that
/// half the sum of squares is the stored energy, and every node's voltage in terms of them.
/// </summary>
/// <remarks>
/// The proper tree of docs/theory/output-impedance.md: sources first, then capacitors. Capacitors that
/// close a loop of sources and capacitors only are dependent and add to the capacitance matrix. A
/// series resistance puts an inner node between the positive node and the capacitor.
/// </remarks>
internal sealed class StateSpace
{
    public const int InputSource = 0;
    public const int OutputSource = 1;
    public const int SourceCount = 2;

    private readonly Converter _converter;
    private readonly SwitchedNetwork _network;
    private readonly int[] _parent;
    private readonly int[] _parentCapacitor;
    private readonly int[] _treeIndex;
    private bool _isDiagonal = true;

    private StateSpace(Converter converter)
    {
        _converter = converter;
        _network = converter.Network;
        InnerNode = new int[_network.CapacitorCount];
        NodeCount = _network.NodeCount;
        for (int i = 0; i < InnerNode.Length; i++)
        {
            InnerNode[i] = converter.Capacitors[i].EsrOhms > 0 ? NodeCount++ : _network.BranchFirst[i];
        }

        _parent = new int[NodeCount];
        _parentCapacitor = new int[NodeCount];
        _treeIndex = new int[_network.CapacitorCount];
        Cluster = new int[NodeCount];
        Sources = new double[NodeCount * SourceCount];
        int[] order = Search();
        States = new double[NodeCount * StateCount];
        Express(order);
    }

    /// <summary>All nodes, inner ones included.</summary>
    public int NodeCount { get; private set; }

    /// <summary>The number of independent states.</summary>
    public int StateCount { get; private set; }

    /// <summary>The node at the capacitance of each capacitor: behind its series resistance, if it has one.</summary>
    public int[] InnerNode { get; }

    /// <summary>The cluster of each node: nodes joined by sources and capacitors. Cluster 0 holds the reference.</summary>
    public int[] Cluster { get; }

    public int ClusterCount { get; private set; }

    /// <summary>Per node and source: the node's voltage against its cluster's reference per volt of the source.</summary>
    public double[] Sources { get; }

    /// <summary>Per node and state: the node's voltage against its cluster's reference per unit of the state.</summary>
    public double[] States { get; }

    public static StateSpace Of(Converter converter) => new(converter);

    public ReadOnlySpan<double> StatesOf(int node) => States.AsSpan(node * StateCount, StateCount);

    public ReadOnlySpan<double> SourcesOf(int node) => Sources.AsSpan(node * SourceCount, SourceCount);

    /// <summary>A capacitor's voltage per unit of each state, where it is not zero: one state alone, if no capacitor depends on others.</summary>
    public (int State, double Weight)[] CapacitorRow(int capacitor)
    {
        if (_isDiagonal)
        {
            return [(_treeIndex[capacitor], 1 / Math.Sqrt(_converter.Capacitors[capacitor].Farads))];
        }

        ReadOnlySpan<double> first = StatesOf(InnerNode[capacitor]), second = StatesOf(_network.BranchSecond[capacitor]);
        List<(int State, double Weight)> row = [];
        for (int x = 0; x < first.Length; x++)
        {
            if (first[x] != second[x])
            {
                row.Add((x, first[x] - second[x]));
            }
        }

        return [.. row];
    }

    /// <summary>The product of a row as <see cref="CapacitorRow"/> gives it with a vector over the states.</summary>
    public static double Dot((int State, double Weight)[] row, ReadOnlySpan<double> states)
    {
        double sum = 0;
        foreach ((int state, double weight) in row)
        {
            sum += weight * states[state];
        }

        return sum;
    }

    // Breadth-first over sources and capacitors, sources first; returns the nodes in the order found.
    private int[] Search()
    {
        Incidence incidence = Adjacency();
        _treeIndex.AsSpan().Fill(-1);
        _parent.AsSpan().Fill(-1);
        Cluster.AsSpan().Fill(-1);
        var order = new int[NodeCount];
        int found = 0;
        for (int start = 0; start < NodeCount; start++)
        {
            if (Cluster[start] >= 0)
            {
                continue;
            }

            int next = found;
            Cluster[start] = ClusterCount;
            order[found++] = start;
            for (; next < found; next++)
            {
                foreach (int branch in incidence[order[next]])
                {
                    int other = First(branch) == order[next] ? _network.BranchSecond[branch] : First(branch);
                    if (Cluster[other] < 0)
                    {
                        Cluster[other] = ClusterCount;
                        _parent[other] = order[next];
                        _parentCapacitor[other] = branch;
                        order[found++] = other;
                        if (branch < _network.CapacitorCount)
                        {
                            _treeIndex[branch] = StateCount++;
                        }
                    }
                }
            }

            ClusterCount++;
        }

        return order;
    }

    private Incidence Adjacency()
    {
        int[] first = [.. Enumerable.Range(0, _network.BranchCount).Select(First)];
        int[] sources = _network.Load == LoadKind.Stiff ? [_network.InputBranch, _network.OutputBranch] : [_network.InputBranch];
        return Incidence.Of(NodeCount, first, _network.BranchSecond, [.. sources, .. Enumerable.Range(0, _network.CapacitorCount)]);
    }

    private int First(int branch) => branch < _network.CapacitorCount ? InnerNode[branch] : _network.BranchFirst[branch];

    // Node voltages by tree voltages, then by energy coordinates: solve with the triangle of the capacitances.
    private void Express(int[] order)
    {
        foreach (int node in order)
        {
            if (_parent[node] is var parent and >= 0)
            {
                int branch = _parentCapacitor[node];
                StatesOf(parent).CopyTo(States.AsSpan(node * StateCount));
                SourcesOf(parent).CopyTo(Sources.AsSpan(node * SourceCount));
                double sign = First(branch) == node ? 1 : -1;
                if (branch < _network.CapacitorCount)
                {
                    States[(node * StateCount) + _treeIndex[branch]] += sign;
                }
                else
                {
                    Sources[(node * SourceCount) + (branch == _network.InputBranch ? InputSource : OutputSource)] += sign;
                }
            }
        }

        (DenseRows triangle, int[] columns) = Capacitances();
        for (int node = 0; node < NodeCount; node++)
        {
            if (_isDiagonal)
            {
                Span<double> states = States.AsSpan(node * StateCount, StateCount);
                for (int k = 0; k < states.Length; k++)
                {
                    states[k] /= triangle[k, columns[k]];
                }

                continue;
            }

            SolveTransposed(triangle, columns, States.AsSpan(node * StateCount, StateCount));
        }
    }

    // The rows √C (voltage of each capacitor by tree voltages), reduced to a triangle R with RᵀR the capacitances.
    private (DenseRows Triangle, int[] Columns) Capacitances()
    {
        DenseRows rows = new(_network.CapacitorCount, StateCount);
        for (int i = 0; i < _network.CapacitorCount; i++)
        {
            double root = Math.Sqrt(_converter.Capacitors[i].Farads);
            if (_treeIndex[i] >= 0)
            {
                rows[i, _treeIndex[i]] = root;
                continue;
            }

            _isDiagonal = false;
            ReadOnlySpan<double> first = StatesOf(InnerNode[i]), second = StatesOf(_network.BranchSecond[i]);
            for (int k = 0; k < StateCount; k++)
            {
                rows[i, k] = root * (first[k] - second[k]);
            }
        }

        if (!_isDiagonal)
        {
            return (rows, rows.Triangularise(StateCount, 0));
        }

        var columns = new int[StateCount];
        DenseRows diagonal = new(StateCount, StateCount);
        for (int i = 0; i < _network.CapacitorCount; i++)
        {
            int k = _treeIndex[i];
            columns[k] = k;
            diagonal[k, k] = rows[i, k];
        }

        return (diagonal, columns);
    }

    // y with yᵀ R = xᵀ, so that y · (R v) = x · v.
    private static void SolveTransposed(DenseRows triangle, int[] columns, Span<double> x)
    {
        Span<double> y = Scratch.Of(x.Length, stackalloc double[128]);
        for (int k = 0; k < x.Length; k++)
        {
            double value = x[columns[k]];
            for (int l = 0; l < k; l++)
            {
                value -= y[l] == 0 ? 0 : y[l] * triangle[l, columns[k]];
            }

            y[k] = value / triangle[k, columns[k]];
        }

        y.CopyTo(x);
    }
}
