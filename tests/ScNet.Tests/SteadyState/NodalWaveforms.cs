using MathNet.Numerics.LinearAlgebra;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// The waveforms of a converter by node potentials, written from its public lists: C u' = -G u + i in every
/// phase, integrated by matrix exponentials and closed over the period. Nothing of the library's
/// formulation is used: no tree, no exact flows, no modes, no output impedance.
/// </summary>
/// <remarks>
/// Nodes that capacitors join move together: u = W y + N z + what sources hold, with y the potentials
/// against the first node of a group. The equations of z are algebraic and are solved by a pseudo-inverse;
/// the potential of a part that floats comes out arbitrary. A stiff output is held at the voltage at which
/// its mean current is the load current, by the secant through two voltages (the network is linear).
/// </remarks>
internal sealed class NodalWaveforms
{
    private const double RankTolerance = 1e-12;

    private readonly Converter _converter;
    private readonly double _period;
    private readonly double[] _lengths;
    private readonly Dictionary<string, int> _node;
    private readonly int[] _inner;
    private readonly Matrix<double>[] _generators;
    private readonly Matrix<double>[] _potentials;
    private readonly Matrix<double>[] _conductances;
    private readonly Vector<double>[] _starts;

    private NodalWaveforms(Converter converter, Mode mode, double inputVolts, double loadAmperes, double frequencyHz, double outputVolts)
    {
        _converter = converter;
        _period = 1 / frequencyHz;
        _lengths = [.. converter.Phases.Select(p => p.Duty.ToDouble() * _period)];
        _node = converter.Nodes.Select((name, i) => (name, i)).ToDictionary(n => n.name, n => n.i);
        int nodes = converter.Nodes.Count;
        _inner = [.. converter.Capacitors.Select(c => c.EsrOhms > 0 ? nodes++ : _node[c.PositiveNode])];
        Dictionary<int, double> held = new() { [_node[Converter.ReferenceNode]] = 0, [_node[converter.InputNode]] = inputVolts };
        if (converter.Load == LoadKind.Stiff)
        {
            held[_node[converter.OutputNode]] = outputVolts;
        }

        (Matrix<double> moving, Matrix<double> groups) = Unknowns(nodes, held);
        Matrix<double> capacitance = Matrix<double>.Build.Dense(nodes, nodes);
        for (int i = 0; i < _inner.Length; i++)
        {
            Stamp(capacitance, _inner[i], _node[converter.Capacitors[i].BottomNode], converter.Capacitors[i].Farads);
        }

        Vector<double> sources = Vector<double>.Build.Dense(nodes, n => held.GetValueOrDefault(n));
        Vector<double> load = Vector<double>.Build.Dense(
            nodes, n => converter.Load == LoadKind.Current && n == _node[converter.OutputNode] ? -loadAmperes : 0);
        _conductances = [.. converter.Phases.Select(p => Conductance(mode, p.Number, nodes))];
        _potentials = [.. _conductances.Select(g => Potentials(g, moving, groups, sources, load))];
        _generators = [.. _conductances.Zip(_potentials, (g, u) => Generator(moving, capacitance, g, u, load))];
        _starts = Starts(moving.ColumnCount);
    }

    /// <summary>The waveforms at an operating point; a stiff output gets the voltage that the load current asks for.</summary>
    public static NodalWaveforms Of(Converter converter, Mode mode, double inputVolts, double loadAmperes, double frequencyHz)
    {
        NodalWaveforms low = new(converter, mode, inputVolts, loadAmperes, frequencyHz, 0);
        if (converter.Load == LoadKind.Current)
        {
            return low;
        }

        NodalWaveforms high = new(converter, mode, inputVolts, loadAmperes, frequencyHz, inputVolts);
        double atZero = low.MeanOutputCurrent(), atInput = high.MeanOutputCurrent();
        return new(converter, mode, inputVolts, loadAmperes, frequencyHz, inputVolts * (atZero - loadAmperes) / (atZero - atInput));
    }

    /// <summary>The potential of a node; arbitrary in a phase in which it floats.</summary>
    public double Potential(string node, double seconds) => At(seconds).Potentials[_node[node]];

    /// <summary>The mean of a node's potential over the period.</summary>
    public double MeanPotential(string node) => Mean(j => _potentials[j].Row(_node[node]));

    public double SwitchCurrent(Mode mode, int index, double seconds)
    {
        (int phase, Vector<double> u) = At(seconds);
        Switch s = _converter.Switches[index];
        return mode.ClosedPhases[index].Contains(phase + 1)
            ? (u[_node[s.FirstNode]] - u[_node[s.SecondNode]]) / s.Ohms
            : 0;
    }

    public double CapacitorVoltage(int index, double seconds)
    {
        Vector<double> u = At(seconds).Potentials;
        return u[_inner[index]] - u[_node[_converter.Capacitors[index].BottomNode]];
    }

    /// <summary>The current into a capacitor from the rate of its voltage.</summary>
    public double CapacitorCurrent(int index, double seconds)
    {
        (int phase, Vector<double> state) = StateAt(seconds);
        int bottom = _node[_converter.Capacitors[index].BottomNode];
        Vector<double> rate = _generators[phase].SubMatrix(0, state.Count, 0, state.Count) * state;
        Vector<double> voltage = _potentials[phase].Row(_inner[index]) - _potentials[phase].Row(bottom);
        return _converter.Capacitors[index].Farads * voltage * rate;
    }

    private (int Phase, Vector<double> Potentials) At(double seconds)
    {
        (int phase, Vector<double> state) = StateAt(seconds);
        return (phase, _potentials[phase] * state);
    }

    private (int Phase, Vector<double> State) StateAt(double seconds)
    {
        int phase = 0;
        while (phase < _lengths.Length - 1 && seconds >= _lengths[phase])
        {
            seconds -= _lengths[phase++];
        }

        int n = _starts[phase].Count;
        return (phase, (MatrixExponential.Of(_generators[phase] * seconds) * Extended(_starts[phase])).SubVector(0, n));
    }

    // Capacitor currents into the output average to nothing and are left out.
    private double MeanOutputCurrent() => Mean(j => -(_conductances[j] * _potentials[j]).Row(_node[_converter.OutputNode]));

    private double Mean(Func<int, Vector<double>> row)
    {
        double sum = 0;
        for (int j = 0; j < _lengths.Length; j++)
        {
            int n = _starts[j].Count;
            Vector<double> end = MatrixExponential.Of(_generators[j] * _lengths[j]) * Extended(_starts[j]);
            sum += row(j) * end.SubVector(n, n);
        }

        return sum / _period;
    }

    // The unknowns with the constant one behind them, then their integrals from zero.
    private static Vector<double> Extended(Vector<double> state) =>
        Vector<double>.Build.Dense(2 * state.Count, i => i < state.Count ? state[i] : 0);

    private (Matrix<double> Moving, Matrix<double> Groups) Unknowns(int nodes, Dictionary<int, double> held)
    {
        int[] group = [.. Enumerable.Range(0, nodes).Select(n => held.ContainsKey(n) ? -1 : n)];
        for (bool hasChanged = true; hasChanged;)
        {
            hasChanged = false;
            for (int i = 0; i < _inner.Length; i++)
            {
                int bottom = _node[_converter.Capacitors[i].BottomNode], least = Math.Min(group[_inner[i]], group[bottom]);
                hasChanged |= group[_inner[i]] != least || group[bottom] != least;
                group[_inner[i]] = group[bottom] = least;
            }
        }

        int[] moving = [.. Enumerable.Range(0, nodes).Where(n => !held.ContainsKey(n) && group[n] != n)];
        int[] first = [.. Enumerable.Range(0, nodes).Where(n => group[n] == n)];
        return (
            Matrix<double>.Build.Dense(nodes, moving.Length, (n, k) => moving[k] == n ? 1 : 0),
            Matrix<double>.Build.Dense(nodes, Math.Max(1, first.Length), (n, k) => k < first.Length && group[n] == first[k] ? 1 : 0));
    }

    private Matrix<double> Conductance(Mode mode, int phase, int nodes)
    {
        Matrix<double> conductance = Matrix<double>.Build.Dense(nodes, nodes);
        for (int s = 0; s < _converter.Switches.Count; s++)
        {
            if (mode.ClosedPhases[s].Contains(phase))
            {
                Stamp(conductance, _node[_converter.Switches[s].FirstNode], _node[_converter.Switches[s].SecondNode], 1 / _converter.Switches[s].Ohms);
            }
        }

        for (int i = 0; i < _inner.Length; i++)
        {
            if (_converter.Capacitors[i].EsrOhms > 0)
            {
                Stamp(conductance, _node[_converter.Capacitors[i].PositiveNode], _inner[i], 1 / _converter.Capacitors[i].EsrOhms);
            }
        }

        return conductance;
    }

    // Node potentials by the unknowns and the constant one.
    private static Matrix<double> Potentials(
        Matrix<double> conductance, Matrix<double> moving, Matrix<double> groups, Vector<double> sources, Vector<double> load)
    {
        Matrix<double> inverse = groups * PseudoInverse(groups.TransposeThisAndMultiply(conductance * groups));
        Vector<double> constant = sources - (inverse * (groups.Transpose() * ((conductance * sources) - load)));
        return moving.ColumnCount == 0
            ? constant.ToColumnMatrix()
            : (moving - (inverse * groups.TransposeThisAndMultiply(conductance * moving))).InsertColumn(moving.ColumnCount, constant);
    }

    private static Matrix<double> Generator(
        Matrix<double> moving, Matrix<double> capacitance, Matrix<double> conductance, Matrix<double> potentials, Vector<double> load)
    {
        int states = moving.ColumnCount, n = states + 1;
        Matrix<double> generator = Matrix<double>.Build.Dense(2 * n, 2 * n);
        if (states > 0)
        {
            Matrix<double> forced = -(conductance * potentials);
            forced.SetColumn(states, forced.Column(states) + load);
            Matrix<double> rates = moving.TransposeThisAndMultiply(capacitance * moving).Solve(moving.TransposeThisAndMultiply(forced));
            generator.SetSubMatrix(0, 0, rates);
        }

        generator.SetSubMatrix(n, 0, Matrix<double>.Build.DenseIdentity(n));
        return generator;
    }

    private Vector<double>[] Starts(int states)
    {
        int n = states + 1;
        Matrix<double>[] maps = [.. _generators.Zip(_lengths, (g, t) => MatrixExponential.Of(g * t).SubMatrix(0, n, 0, n))];
        Matrix<double> period = maps.Aggregate(Matrix<double>.Build.DenseIdentity(n), (all, map) => map * all);
        Vector<double> start = Vector<double>.Build.Dense(n, i => i == states ? 1 : 0);
        if (states > 0)
        {
            Matrix<double> change = Matrix<double>.Build.DenseIdentity(states) - period.SubMatrix(0, states, 0, states);
            start.SetSubVector(0, states, PseudoInverse(change) * period.Column(states, 0, states));
        }

        var starts = new Vector<double>[maps.Length];
        for (int j = 0; j < maps.Length; j++)
        {
            starts[j] = start;
            start = maps[j] * start;
        }

        return starts;
    }

    private static void Stamp(Matrix<double> matrix, int first, int second, double value)
    {
        matrix[first, first] += value;
        matrix[second, second] += value;
        matrix[first, second] -= value;
        matrix[second, first] -= value;
    }

    private static Matrix<double> PseudoInverse(Matrix<double> matrix)
    {
        var svd = matrix.Svd();
        Matrix<double> inverse = Matrix<double>.Build.Dense(
            matrix.ColumnCount, matrix.RowCount, (i, j) => i == j && svd.S[i] > RankTolerance * svd.S[0] ? 1 / svd.S[i] : 0);
        return svd.VT.TransposeThisAndMultiply(inverse) * svd.U.Transpose();
    }
}
