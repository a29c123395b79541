using MathNet.Numerics.LinearAlgebra;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// A converter by node potentials, as it is written down by hand: C u' = -G u + currents in every phase,
/// with node potentials known at the reference, the input and a stiff output. Nothing of the
/// library's formulation is used: no tree, no loops, no exact flows, no orthogonal decomposition.
/// </summary>
/// <remarks>
/// The capacitance matrix C is singular, but exactly so: nodes that capacitors join move together. With
/// y the potentials against the first node of such a group and z the potential of that node,
/// u = W y + N z, the equations of z are algebraic and are eliminated by a dense pseudo-inverse (the
/// potential of a part that floats in a phase is free and matters to nothing). No resistor is added.
/// </remarks>
internal sealed class NodalNetwork
{
    private readonly Converter _converter;
    private readonly Mode _mode;
    private readonly Dictionary<string, int> _node;
    private readonly double[] _fixed;
    private readonly bool[] _isFixed;
    private readonly int[] _inner;
    private readonly (int First, int Second, double Farads)[] _capacitances;
    private readonly double _loadAmperes;
    private readonly IReadOnlyList<double> _furtherAmperes;
    private readonly Matrix<double> _states;
    private readonly Matrix<double> _groups;
    private readonly Matrix<double> _inverseCapacitance;

    private NodalNetwork(Converter converter, Mode mode, double outputVolts, double inputVolts, double loadAmperes, IReadOnlyList<double> furtherAmperes)
    {
        _loadAmperes = loadAmperes;
        _furtherAmperes = furtherAmperes;
        _converter = converter;
        _mode = mode;
        _node = converter.Nodes.Select((name, i) => (name, i)).ToDictionary(n => n.name, n => n.i);
        int nodes = converter.Nodes.Count;
        _inner = [.. converter.Capacitors.Select(c => c.EsrOhms > 0 ? nodes++ : _node[c.PositiveNode])];
        _fixed = new double[nodes];
        _isFixed = new bool[nodes];
        Fix(Converter.ReferenceNode, 0);
        Fix(converter.InputNode, inputVolts);
        if (converter.Load == LoadKind.Stiff)
        {
            Fix(converter.OutputNode, outputVolts);
        }

        _capacitances =
        [
            .. converter.Capacitors.Select((c, i) => (_inner[i], _node[c.BottomNode], c.Farads)),
            .. converter.Capacitors.Where(c => c.Plates.BottomFarads > 0).Select(c => (_node[c.BottomNode], _node[c.Plates.BodyNode], c.Plates.BottomFarads)),
            .. converter.Capacitors.Where(c => c.Plates.TopFarads > 0).Select(c => (_node[c.PositiveNode], _node[c.Plates.BodyNode], c.Plates.TopFarads)),
            .. converter.Parasitics.Select(p => (_node[p.FirstNode], _node[p.SecondNode], p.Farads)),
        ];
        (_states, _groups) = Unknowns(nodes);
        Matrix<double> capacitance = Matrix<double>.Build.Dense(nodes, nodes);
        foreach ((int first, int second, double farads) in _capacitances)
        {
            Stamp(capacitance, first, second, farads);
        }

        _inverseCapacitance = _states.TransposeThisAndMultiply(capacitance * _states).Inverse();
        Phases = [.. converter.Phases.Select((phase, j) => Phase(j, phase.Duty.ToDouble()))];
    }

    /// <summary>One phase: y' = A y + b, the observed quantity c·y + d, and the current from the input.</summary>
    internal sealed record PhaseEquations(
        double Duty, Matrix<double> A, Vector<double> B, Vector<double> C, double D, Vector<double> InputC, double InputD)
    {
        /// <summary>Every node's potential as a row over y, and its constant part.</summary>
        public required (Matrix<double> Rows, Vector<double> Constant) Potentials { get; init; }
    }

    public int StateCount => _states.ColumnCount;

    public IReadOnlyList<PhaseEquations> Phases { get; }

    /// <summary>A bound on the rates of all phases, to tell a zero from rounding.</summary>
    public double LargestRate { get; private set; }

    /// <summary>
    /// The observed quantity is the current from the converter into a stiff output (capacitor currents,
    /// which average to nothing, left out), or the output voltage of a current load; likewise that from the input.
    /// </summary>
    public static NodalNetwork Of(
        Converter converter, Mode mode, double outputVolts, double inputVolts = 1, double loadAmperes = 1, params IReadOnlyList<double> furtherAmperes) =>
        new(converter, mode, outputVolts, inputVolts, loadAmperes, furtherAmperes);

    private void Fix(string node, double volts)
    {
        _fixed[_node[node]] = volts;
        _isFixed[_node[node]] = true;
    }

    private (Matrix<double> States, Matrix<double> Groups) Unknowns(int nodes)
    {
        // label propagation: all fixed nodes are one group, numbered -1
        int[] group = [.. Enumerable.Range(0, nodes).Select(n => _isFixed[n] ? -1 : n)];
        for (bool hasChanged = true; hasChanged;)
        {
            hasChanged = false;
            foreach ((int first, int second, _) in _capacitances)
            {
                int least = Math.Min(group[first], group[second]);
                hasChanged |= group[first] != least || group[second] != least;
                group[first] = group[second] = least;
            }
        }

        int[] moving = [.. Enumerable.Range(0, nodes).Where(n => !_isFixed[n] && group[n] != n)];
        int[] leading = [.. Enumerable.Range(0, nodes).Where(n => group[n] == n)];
        return (
            Matrix<double>.Build.Dense(nodes, moving.Length, (n, k) => moving[k] == n ? 1 : 0),
            Matrix<double>.Build.Dense(nodes, leading.Length, (n, k) => group[n] == leading[k] ? 1 : 0));
    }

    private PhaseEquations Phase(int phase, double duty)
    {
        Matrix<double> conductance = Matrix<double>.Build.Dense(_fixed.Length, _fixed.Length);
        for (int s = 0; s < _converter.Switches.Count; s++)
        {
            if (_mode.ClosedPhases[s].Contains(phase + 1))
            {
                Switch x = _converter.Switches[s];
                Stamp(conductance, _node[x.FirstNode], _node[x.SecondNode], 1 / x.Ohms);
            }
        }

        for (int i = 0; i < _inner.Length; i++)
        {
            if (_converter.Capacitors[i].EsrOhms > 0)
            {
                Stamp(conductance, _node[_converter.Capacitors[i].PositiveNode], _inner[i], 1 / _converter.Capacitors[i].EsrOhms);
            }
        }

        LargestRate = Math.Max(LargestRate, StateCount == 0 ? 0 : _inverseCapacitance.InfinityNorm() * conductance.InfinityNorm());
        int output = _node[_converter.OutputNode], input = _node[_converter.InputNode];
        Vector<double> held = Vector<double>.Build.DenseOfArray(_fixed);
        Vector<double> load = Vector<double>.Build.Dense(_fixed.Length, n => n == output && _converter.Load == LoadKind.Current ? -_loadAmperes : 0);
        for (int k = 0; k < _furtherAmperes.Count; k++)
        {
            load[_node[_converter.FurtherOutputs[k].Node]] -= _furtherAmperes[k];
            load[_node[_converter.FurtherOutputs[k].ReturnNode]] += _furtherAmperes[k];
        }

        Matrix<double> potentials = _states;
        Vector<double> constant = held;
        if (_groups.ColumnCount > 0)
        {
            Matrix<double> inverse = PseudoInverse(_groups.TransposeThisAndMultiply(conductance * _groups));
            potentials -= _groups * inverse * _groups.TransposeThisAndMultiply(conductance * _states);
            constant -= _groups * inverse * _groups.TransposeThisAndMultiply((conductance * held) - load);
        }

        (Vector<double> row, double offset) = _converter.Load == LoadKind.Current
            ? (potentials.Row(output), constant[output])
            : (-(conductance * potentials).Row(output), load[output] - (conductance * constant)[output]);
        Matrix<double> rates = -(_inverseCapacitance * _states.TransposeThisAndMultiply(conductance * potentials));
        rates.CoerceZero(1e-14 * LargestRate);
        return new(
            duty,
            rates,
            _inverseCapacitance * _states.TransposeThisAndMultiply(load - (conductance * constant)),
            row,
            offset,
            (conductance * potentials).Row(input),
            (conductance * constant)[input] - load[input])
        {
            Potentials = (potentials, constant),
        };
    }

    private static void Stamp(Matrix<double> matrix, int first, int second, double value)
    {
        matrix[first, first] += value;
        matrix[second, second] += value;
        matrix[first, second] -= value;
        matrix[second, first] -= value;
    }

    public static Matrix<double> PseudoInverse(Matrix<double> matrix, double tolerance = 1e-12)
    {
        var svd = matrix.Svd();
        Matrix<double> inverse = Matrix<double>.Build.Dense(
            matrix.ColumnCount, matrix.RowCount, (i, j) => i == j && svd.S[i] > tolerance * svd.S[0] ? 1 / svd.S[i] : 0);
        return svd.VT.TransposeThisAndMultiply(inverse) * svd.U.Transpose();
    }
}
