using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;
using ScNet.Kernel;

namespace ScNet.Design.Losses;

/// <summary>
/// How currents of inductors divide among closed switches and series resistances while capacitor voltages stand still:
/// capacitors and sources are short circuits for them. Nodal equations of a network of resistors, by Cholesky.
/// </summary>
/// <remarks>Cost: the cube of the nodes that resistors connect, once per set of closed switches.</remarks>
internal sealed class CurrentSplit
{
    private readonly Converter _converter;
    private readonly SwitchedNetwork _network;
    private readonly bool[] _closed;
    private readonly int[] _shorted;
    private readonly int[] _component;
    private readonly int[] _unknown;
    private readonly Cholesky<double> _nodal;

    /// <summary>Sets the network up.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="closed">Whether each switch conducts.</param>
    public CurrentSplit(Converter converter, bool[] closed)
    {
        (_converter, _network, _closed) = (converter, converter.Network, closed);
        DisjointSets shorted = new(_network.NodeCount), connected = new(_network.NodeCount);
        foreach (int branch in _network.HeldVoltages.AsSpan(0, _network.HeldVoltageCount))
        {
            connected.Join(_network.BranchFirst[branch], _network.BranchSecond[branch]);
            if (branch >= _network.CapacitorCount || converter.Capacitors[branch].EsrOhms == 0)
            {
                shorted.Join(_network.BranchFirst[branch], _network.BranchSecond[branch]);
            }
        }

        foreach ((int first, int second, _) in ClosedSwitches())
        {
            connected.Join(first, second);
        }

        _shorted = [.. Enumerable.Range(0, _network.NodeCount).Select(shorted.Find)];
        _component = [.. Enumerable.Range(0, _network.NodeCount).Select(connected.Find)];

        // one node of each component is the reference of its potentials
        _unknown = new int[_network.NodeCount];
        int count = 0;
        for (int node = 0; node < _unknown.Length; node++)
        {
            _unknown[node] = _shorted[node] == node && _shorted[_component[node]] != node ? count++ : -1;
        }

        _nodal = Nodal(count).Cholesky();
    }

    /// <summary>Divides currents.</summary>
    /// <param name="inductorAmperes">The current of each inductor from its first terminal to its second.</param>
    /// <param name="switches">Receives the current of each switch from its first terminal to its second.</param>
    /// <param name="capacitors">Receives the current into each capacitor with a series resistance; zero for others.</param>
    /// <returns>Whether there is a path for every current.</returns>
    public bool TryDivide(ReadOnlySpan<double> inductorAmperes, Span<double> switches, Span<double> capacitors)
    {
        int nodes = _network.NodeCount;
        var into = new double[nodes];
        double[] componentSum = new double[nodes], componentSize = new double[nodes];
        for (int l = 0; l < inductorAmperes.Length; l++)
        {
            int branch = _network.FirstInductorBranch + l;
            Enter(_network.BranchSecond[branch], inductorAmperes[l]);
            Enter(_network.BranchFirst[branch], -inductorAmperes[l]);
        }

        Vector<double> right = Vector<double>.Build.Dense(_nodal.Factor.RowCount);
        for (int node = 0; node < nodes; node++)
        {
            if (_unknown[_shorted[node]] is >= 0 and int row)
            {
                right[row] += into[node];
            }
        }

        Vector<double> potentials = _nodal.Solve(right);
        double Potential(int node) => _unknown[_shorted[node]] is >= 0 and int row ? potentials[row] : 0;
        for (int s = 0; s < _closed.Length; s++)
        {
            switches[s] = _closed[s] ? (Potential(_network.SwitchFirst[s]) - Potential(_network.SwitchSecond[s])) / _converter.Switches[s].Ohms : 0;
        }

        for (int c = 0; c < _network.CapacitorCount; c++)
        {
            double ohms = _converter.Capacitors[c].EsrOhms;
            capacitors[c] = ohms > 0 ? (Potential(_network.BranchFirst[c]) - Potential(_network.BranchSecond[c])) / ohms : 0;
        }

        for (int k = 0; k < nodes; k++)
        {
            if (Math.Abs(componentSum[k]) > 1e-9 * componentSize[k])
            {
                return false;
            }
        }

        return true;

        void Enter(int node, double amperes)
        {
            into[node] += amperes;
            componentSum[_component[node]] += amperes;
            componentSize[_component[node]] += Math.Abs(amperes);
        }
    }

    private IEnumerable<(int First, int Second, double Ohms)> ClosedSwitches()
    {
        for (int s = 0; s < _closed.Length; s++)
        {
            if (_closed[s])
            {
                yield return (_network.SwitchFirst[s], _network.SwitchSecond[s], _converter.Switches[s].Ohms);
            }
        }
    }

    private Matrix<double> Nodal(int count)
    {
        Matrix<double> matrix = Matrix<double>.Build.Dense(count, count);
        foreach ((int first, int second, double ohms) in ClosedSwitches())
        {
            Add(first, second, 1 / ohms);
        }

        for (int c = 0; c < _network.CapacitorCount; c++)
        {
            if (_converter.Capacitors[c].EsrOhms is > 0 and double ohms)
            {
                Add(_network.BranchFirst[c], _network.BranchSecond[c], 1 / ohms);
            }
        }

        return matrix;

        void Add(int first, int second, double siemens)
        {
            int a = _unknown[_shorted[first]], b = _unknown[_shorted[second]];
            if (_shorted[first] == _shorted[second])
            {
                return;
            }

            if (a >= 0)
            {
                matrix[a, a] += siemens;
            }

            if (b >= 0)
            {
                matrix[b, b] += siemens;
            }

            if (a >= 0 && b >= 0)
            {
                matrix[a, b] -= siemens;
                matrix[b, a] -= siemens;
            }
        }
    }
}
