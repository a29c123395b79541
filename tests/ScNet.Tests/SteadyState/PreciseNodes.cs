using Fractions;
using ScNet.Tests.Numerics;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// The two-port from the node equations C u' = -G u + currents alone, in numbers of 640 binary
/// places: matrix exponentials phase by phase, the periodic state by elimination, the means of output and input
/// by integration. Nothing of the library is used but the list of elements.
/// </summary>
/// <remarks>
/// Nodes that capacitors join make a group. With y the potentials of its nodes against its first one and
/// z the potential of that one, the equations of z hold no derivative and are eliminated; a part that
/// floats in a phase has one z without an equation, and any value serves.
/// </remarks>
internal sealed class PreciseNodes
{
    // A charge that no phase can change leaves a pivot of rounding: far below 1e-100, where rates over 24 decades do not reach.
    private const double Zero = 1e-100;

    private readonly Converter _converter;
    private readonly Mode _mode;
    private readonly Fraction _loadAmperes;
    private readonly Dictionary<string, int> _node;
    private readonly int[] _inner;
    private readonly int[] _group;
    private readonly bool[] _isFixed;
    private readonly BigMatrix _held;
    private readonly BigMatrix _states;
    private readonly BigMatrix _inverseCapacitance;

    private PreciseNodes(Converter converter, Mode mode, Fraction inputVolts, Fraction output)
    {
        _converter = converter;
        _mode = mode;
        _loadAmperes = output;
        _node = converter.Nodes.Select((name, i) => (name, i)).ToDictionary(n => n.name, n => n.i);
        int nodes = converter.Nodes.Count;
        _inner = [.. converter.Capacitors.Select(c => c.EsrOhms > 0 ? nodes++ : _node[c.PositiveNode])];
        _isFixed = new bool[nodes];
        _held = new BigMatrix(nodes, 1);
        Fix(Converter.ReferenceNode, Fraction.Zero);
        Fix(converter.InputNode, inputVolts);
        if (IsStiff)
        {
            Fix(converter.OutputNode, output);
        }

        (int First, int Second, double Farads)[] capacitances =
        [
            .. converter.Capacitors.Select((c, i) => (_inner[i], _node[c.BottomNode], c.Farads)),
            .. converter.Capacitors.Where(c => c.Plates.BottomFarads > 0).Select(c => (_node[c.BottomNode], _node[c.Plates.BodyNode], c.Plates.BottomFarads)),
            .. converter.Capacitors.Where(c => c.Plates.TopFarads > 0).Select(c => (_node[c.PositiveNode], _node[c.Plates.BodyNode], c.Plates.TopFarads)),
            .. converter.Parasitics.Select(p => (_node[p.FirstNode], _node[p.SecondNode], p.Farads)),
        ];
        _group = Groups(nodes, capacitances);
        int[] moving = [.. Enumerable.Range(0, nodes).Where(n => !_isFixed[n] && _group[n] != n)];
        _states = Columns(moving.Length, (n, k) => moving[k] == n);
        BigMatrix capacitance = new(nodes, nodes);
        foreach ((int first, int second, double farads) in capacitances)
        {
            Stamp(capacitance, first, second, farads);
        }

        _inverseCapacitance = (_states.Transposed() * capacitance * _states).Solve(BigMatrix.Identity(moving.Length), default);
    }

    private bool IsStiff => _converter.Load == LoadKind.Stiff;

    /// <summary>The impedance in ohms.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="mode">One of its modes.</param>
    /// <param name="ratio">The output's voltage without load, per volt of the input.</param>
    /// <param name="frequencyHz">The switching frequency in hertz.</param>
    public static double Ohms(Converter converter, Mode mode, Fraction ratio, double frequencyHz)
    {
        // a stiff output one volt below the ideal one, so that a mean current of one ampere is one ohm
        bool isStiff = converter.Load == LoadKind.Stiff;
        BigReal mean = new PreciseNodes(converter, mode, Fraction.One, isStiff ? ratio - 1 : Fraction.One).Means(frequencyHz).Output;
        return (double)(isStiff ? BigReal.One / mean : BigReal.Of(ratio) - mean);
    }

    /// <summary>What input and output see of each other, with parasitic capacitances.</summary>
    public static PortOracle.Ports Ports(Converter converter, Mode mode, double frequencyHz)
    {
        (BigReal output, BigReal input) = new PreciseNodes(converter, mode, Fraction.One, Fraction.Zero).Means(frequencyHz);
        (BigReal byOutput, BigReal inputByOutput) = new PreciseNodes(converter, mode, Fraction.Zero, Fraction.One).Means(frequencyHz);
        if (converter.Load == LoadKind.Current)
        {
            return new((double)output, -(double)byOutput, (double)inputByOutput, (double)input);
        }

        BigReal current = inputByOutput / byOutput;
        return new(-(double)(output / byOutput), -(double)(BigReal.One / byOutput), (double)current, (double)(input - (current * output)));
    }

    // The mean of the output's current or potential, and of the input's current.
    private (BigReal Output, BigReal Input) Means(double frequencyHz)
    {
        int n = _states.Columns;
        BigMatrix period = BigMatrix.Identity(n + 3);
        for (int j = 0; j < _converter.Phases.Count; j++)
        {
            BigMatrix rates = Equations(j);
            BigReal seconds = BigReal.Of(_converter.Phases[j].Duty) / frequencyHz;
            for (int row = 0; row < n + 3; row++)
            {
                for (int column = 0; column < n + 3; column++)
                {
                    rates[row, column] *= seconds;
                }
            }

            period = rates.Exponential() * period;
        }

        BigMatrix change = new(n, n), constant = new(n, 1);
        for (int i = 0; i < n; i++)
        {
            constant[i, 0] = period[i, n];
            for (int k = 0; k < n; k++)
            {
                change[i, k] = (i == k ? BigReal.One : default) - period[i, k];
            }
        }

        BigMatrix start = change.Solve(constant, Zero);
        BigReal output = period[n + 1, n], input = period[n + 2, n];
        for (int k = 0; k < n; k++)
        {
            output += period[n + 1, k] * start[k, 0];
            input += period[n + 2, k] * start[k, 0];
        }

        return (output * frequencyHz, input * frequencyHz);
    }

    // The rates of the states, of the constant one, and of the integrals of what is observed: the current
    // into a stiff output (without capacitors', which average to nothing), or the output's potential; the input's current.
    private BigMatrix Equations(int phase)
    {
        (BigMatrix conductance, int[] roots) = Conductances(phase);
        int[] free = [.. Enumerable.Range(0, roots.Length).Where(g => _group[g] == g && roots[g] != g)];
        BigMatrix load = new(_group.Length, 1), groups = Columns(free.Length, (n, k) => _group[n] == free[k]);
        int output = _node[_converter.OutputNode], input = _node[_converter.InputNode];
        load[output, 0] = IsStiff ? default : -BigReal.Of(_loadAmperes);
        BigMatrix across = groups.Transposed(), square = across * conductance * groups;
        BigMatrix potentials = _states - (groups * square.Solve(across * conductance * _states, default));
        BigMatrix constants = _held - (groups * square.Solve(across * ((conductance * _held) - load), default));
        BigMatrix own = -(_inverseCapacitance * _states.Transposed() * conductance * potentials);
        BigMatrix drive = _inverseCapacitance * _states.Transposed() * (load - (conductance * constants));
        BigMatrix currents = conductance * potentials, constantCurrents = conductance * constants;
        int n = _states.Columns;
        BigMatrix rates = new(n + 3, n + 3);
        for (int k = 0; k < n; k++)
        {
            for (int i = 0; i < n; i++)
            {
                rates[i, k] = own[i, k];
            }

            rates[k, n] = drive[k, 0];
            rates[n + 1, k] = IsStiff ? -currents[output, k] : potentials[output, k];
            rates[n + 2, k] = currents[input, k];
        }

        rates[n + 1, n] = IsStiff ? -constantCurrents[output, 0] : constants[output, 0];
        rates[n + 2, n] = constantCurrents[input, 0];
        return rates;
    }

    // Also, per group, the least group that resistors join it to: itself where its potential is fixed or free to choose.
    private (BigMatrix Conductance, int[] Roots) Conductances(int phase)
    {
        BigMatrix conductance = new(_group.Length, _group.Length);
        List<(int First, int Second)> joined = [];
        void Add(int first, int second, double ohms)
        {
            Stamp(conductance, first, second, BigReal.One / ohms);
            joined.Add((_group[first], _group[second]));
        }

        for (int s = 0; s < _converter.Switches.Count; s++)
        {
            if (_mode.ClosedPhases[s].Contains(phase + 1))
            {
                Add(_node[_converter.Switches[s].FirstNode], _node[_converter.Switches[s].SecondNode], _converter.Switches[s].Ohms);
            }
        }

        for (int i = 0; i < _inner.Length; i++)
        {
            if (_converter.Capacitors[i].EsrOhms > 0)
            {
                Add(_node[_converter.Capacitors[i].PositiveNode], _inner[i], _converter.Capacitors[i].EsrOhms);
            }
        }

        int[] roots = [.. Enumerable.Range(0, _group.Length)];
        Spread(roots, joined);
        return (conductance, roots);
    }

    private void Fix(string node, Fraction volts)
    {
        _isFixed[_node[node]] = true;
        _held[_node[node], 0] = BigReal.Of(volts);
    }

    // Every node gets the least node of its group; all fixed nodes are of the group of the first of them.
    private int[] Groups(int nodes, (int First, int Second, double Farads)[] capacitances)
    {
        int[] group = [.. Enumerable.Range(0, nodes)];
        int[] held = [.. Enumerable.Range(0, nodes).Where(n => _isFixed[n])];
        Spread(group, [
            .. held.Select(n => (held[0], n)),
            .. capacitances.Select(c => (c.First, c.Second))]);
        return [.. group.Select(g => g == group[held[0]] ? held[0] : g)];
    }

    // Labels sink to the least of everything joined; a label of fixed nodes counts as the least of all.
    private void Spread(int[] label, IReadOnlyList<(int First, int Second)> joined)
    {
        int Rank(int node) => _isFixed[node] ? -1 : node;
        for (bool hasChanged = true; hasChanged;)
        {
            hasChanged = false;
            foreach ((int first, int second) in joined)
            {
                int least = Rank(label[first]) <= Rank(label[second]) ? label[first] : label[second];
                hasChanged |= label[first] != least || label[second] != least;
                label[first] = label[second] = least;
            }
        }
    }

    private BigMatrix Columns(int count, Func<int, int, bool> isOne)
    {
        BigMatrix matrix = new(_isFixed.Length, count);
        for (int n = 0; n < _isFixed.Length; n++)
        {
            for (int k = 0; k < count; k++)
            {
                matrix[n, k] = isOne(n, k) ? BigReal.One : default;
            }
        }

        return matrix;
    }

    private static void Stamp(BigMatrix matrix, int first, int second, BigReal value)
    {
        matrix[first, first] += value;
        matrix[second, second] += value;
        matrix[first, second] -= value;
        matrix[second, first] -= value;
    }
}
