using MathNet.Numerics.LinearAlgebra;

namespace ScNet.Tests.Networks;

/// <summary>
/// The steady-state equations as they are written down by hand, one unknown per node potential, branch
/// charge and capacitor voltage and phase, solved as one dense system: no contraction, no loops, no
/// elimination of the library. One volt at the input, one coulomb to the load per period of one second.
/// </summary>
internal sealed class SteadyStateOracle
{
    private readonly Converter _converter;
    private readonly Mode _mode;
    private readonly int _phases;
    private readonly Dictionary<string, int> _unknown = [];
    private readonly List<(List<(int Unknown, double Factor)> Terms, double Right)> _equations = [];
    private Vector<double> _solution = Vector<double>.Build.Dense(1);

    private SteadyStateOracle(Converter converter, Mode mode)
    {
        _converter = converter;
        _mode = mode;
        _phases = converter.Phases.Count;
    }

    /// <summary>The output voltage; with a current load its average over the period.</summary>
    public double OutputVolts => this["output"];

    /// <summary>The largest disagreement of the solution with an equation.</summary>
    public double Residual { get; private set; }

    private double this[string name] => _solution[_unknown[name]];

    /// <summary>The voltage of a capacitor where it is constant.</summary>
    public double CapacitorVolts(int capacitor) => this[$"v{capacitor}"];

    /// <summary>The potential of a node; where nothing but a capacitor or switch that is left open touches it in this phase, any value.</summary>
    public double PotentialOf(string node, int phase) => _unknown.TryGetValue($"u{node},{phase}", out int unknown) ? _solution[unknown] : double.NaN;

    public double CapacitorCharge(int capacitor, int phase) => this[$"q{capacitor},{phase}"];

    public double SwitchCharge(int index, int phase) => IsClosed(index, phase) ? this[$"s{index},{phase}"] : 0;

    public double InputCharge(int phase) => this[$"in{phase}"];

    public double OutputCharge(int phase) => this[$"out{phase}"];

    /// <summary>Slow limit: Kirchhoff's voltage law at every phase end, charge = C · change of voltage.</summary>
    public static SteadyStateOracle Slow(Converter converter, Mode? mode = null)
    {
        SteadyStateOracle oracle = new(converter, mode ?? converter.Modes[0]);
        oracle.AddCommon();
        for (int j = 0; j < oracle._phases; j++)
        {
            int before = (j + oracle._phases - 1) % oracle._phases;
            for (int i = 0; i < converter.Capacitors.Count; i++)
            {
                Capacitor c = converter.Capacitors[i];
                double farads = c.Farads;
                oracle.Add(0, ($"q{i},{j}", 1),
                    ($"u{c.PositiveNode},{j}", -farads), ($"u{c.BottomNode},{j}", farads),
                    ($"u{c.PositiveNode},{before}", farads), ($"u{c.BottomNode},{before}", -farads));
            }

            for (int s = 0; s < converter.Switches.Count; s++)
            {
                if (oracle.IsClosed(s, j))
                {
                    oracle.Add(0, ($"u{converter.Switches[s].FirstNode},{j}", 1), ($"u{converter.Switches[s].SecondNode},{j}", -1));
                }
            }
        }

        return oracle.Solve();
    }

    /// <summary>Fast limit: capacitors are constant voltages of zero average current, resistances carry charge / duty.</summary>
    public static SteadyStateOracle Fast(Converter converter, Mode? mode = null)
    {
        SteadyStateOracle oracle = new(converter, mode ?? converter.Modes[0]);
        oracle.AddCommon();
        for (int i = 0; i < converter.Capacitors.Count; i++)
        {
            oracle.Add(0, [.. Enumerable.Range(0, oracle._phases).Select(j => ($"q{i},{j}", 1.0))]);
        }

        for (int j = 0; j < oracle._phases; j++)
        {
            double duty = converter.Phases[j].Duty.ToDouble();
            for (int i = 0; i < converter.Capacitors.Count; i++)
            {
                Capacitor c = converter.Capacitors[i];
                oracle.Add(0, ($"u{c.PositiveNode},{j}", 1), ($"u{c.BottomNode},{j}", -1), ($"v{i}", -1), ($"q{i},{j}", -c.EsrOhms / duty));
            }

            for (int s = 0; s < converter.Switches.Count; s++)
            {
                if (oracle.IsClosed(s, j))
                {
                    Switch x = converter.Switches[s];
                    oracle.Add(0, ($"u{x.FirstNode},{j}", 1), ($"u{x.SecondNode},{j}", -1), ($"s{s},{j}", -x.Ohms / duty));
                }
            }
        }

        return oracle.Solve();
    }

    /// <summary>Kirchhoff's voltage law alone: constant capacitor voltages, no flow at all.</summary>
    public static SteadyStateOracle Unloaded(Converter converter)
    {
        SteadyStateOracle oracle = new(converter, converter.Modes[0]);
        for (int j = 0; j < oracle._phases; j++)
        {
            oracle.AddPotentials(j);
            for (int i = 0; i < converter.Capacitors.Count; i++)
            {
                Capacitor c = converter.Capacitors[i];
                oracle.Add(0, ($"u{c.PositiveNode},{j}", 1), ($"u{c.BottomNode},{j}", -1), ($"v{i}", -1));
            }

            for (int s = 0; s < converter.Switches.Count; s++)
            {
                if (oracle.IsClosed(s, j))
                {
                    oracle.Add(0, ($"u{converter.Switches[s].FirstNode},{j}", 1), ($"u{converter.Switches[s].SecondNode},{j}", -1));
                }
            }
        }

        oracle.AddAverageOutput();
        return oracle.Solve();
    }

    /// <summary>Kirchhoff's current law and charge balance alone: some flow that delivers one unit.</summary>
    public static SteadyStateOracle AnyFlow(Converter converter)
    {
        SteadyStateOracle oracle = new(converter, converter.Modes[0]);
        for (int j = 0; j < oracle._phases; j++)
        {
            foreach (string node in converter.Nodes)
            {
                oracle.AddCurrentLaw(node, j);
            }
        }

        oracle.AddLoad();
        for (int i = 0; i < converter.Capacitors.Count; i++)
        {
            oracle.Add(0, [.. Enumerable.Range(0, oracle._phases).Select(j => ($"q{i},{j}", 1.0))]);
        }

        return oracle.Solve();
    }

    private bool IsClosed(int index, int phase) => _mode.ClosedPhases[index].Contains(phase + 1);

    private void AddCommon()
    {
        for (int j = 0; j < _phases; j++)
        {
            foreach (string node in _converter.Nodes)
            {
                AddCurrentLaw(node, j);
            }

            AddPotentials(j);
        }

        AddLoad();
        AddAverageOutput();
    }

    private void AddPotentials(int phase)
    {
        Add(0, ($"u{Converter.ReferenceNode},{phase}", 1));
        Add(1, ($"u{_converter.InputNode},{phase}", 1));
        if (_converter.Load == LoadKind.Stiff)
        {
            Add(0, ($"u{_converter.OutputNode},{phase}", 1), ("output", -1));
        }
    }

    private void AddLoad()
    {
        if (_converter.Load == LoadKind.Stiff)
        {
            Add(1, [.. Enumerable.Range(0, _phases).Select(j => ($"out{j}", 1.0))]);
            return;
        }

        for (int j = 0; j < _phases; j++)
        {
            Add(_converter.Phases[j].Duty.ToDouble(), ($"out{j}", 1));
        }
    }

    private void AddAverageOutput()
    {
        if (_converter.Load == LoadKind.Current)
        {
            Add(0, [("output", -1), .. Enumerable.Range(0, _phases).Select(j => ($"u{_converter.OutputNode},{j}", _converter.Phases[j].Duty.ToDouble()))]);
        }
    }

    private void AddCurrentLaw(string node, int phase)
    {
        if (node == Converter.ReferenceNode)
        {
            return;
        }

        List<(string, double)> terms = [];
        for (int i = 0; i < _converter.Capacitors.Count; i++)
        {
            Capacitor c = _converter.Capacitors[i];
            terms.Add(($"q{i},{phase}", (c.PositiveNode == node ? 1 : 0) - (c.BottomNode == node ? 1 : 0)));
        }

        for (int s = 0; s < _converter.Switches.Count; s++)
        {
            if (IsClosed(s, phase))
            {
                Switch x = _converter.Switches[s];
                terms.Add(($"s{s},{phase}", (x.FirstNode == node ? 1 : 0) - (x.SecondNode == node ? 1 : 0)));
            }
        }

        terms.Add(($"in{phase}", node == _converter.InputNode ? -1 : 0));
        terms.Add(($"out{phase}", node == _converter.OutputNode ? 1 : 0));
        Add(0, [.. terms]);
    }

    private void Add(double right, params (string Name, double Factor)[] terms)
    {
        List<(int, double)> own = [];
        foreach ((string name, double factor) in terms)
        {
            if (!_unknown.TryGetValue(name, out int index))
            {
                _unknown.Add(name, index = _unknown.Count);
            }

            own.Add((index, factor));
        }

        _equations.Add((own, right));
    }

    // Potentials of floating parts are free, so the least solution in the sense of least squares is taken.
    private SteadyStateOracle Solve()
    {
        Matrix<double> matrix = Matrix<double>.Build.Dense(_equations.Count, _unknown.Count);
        Vector<double> right = Vector<double>.Build.Dense(_equations.Count);
        for (int e = 0; e < _equations.Count; e++)
        {
            right[e] = _equations[e].Right;
            foreach ((int unknown, double factor) in _equations[e].Terms)
            {
                matrix[e, unknown] += factor;
            }
        }

        var svd = matrix.Svd();
        Vector<double> Least(Vector<double> demand)
        {
            Vector<double> inner = svd.U.TransposeThisAndMultiply(demand);
            return svd.VT.TransposeThisAndMultiply(Vector<double>.Build.Dense(
                _unknown.Count, k => k < svd.S.Count && svd.S[k] > 1e-11 * svd.S[0] ? inner[k] / svd.S[k] : 0));
        }

        // one step of refinement
        _solution = Least(right);
        _solution += Least(right - (matrix * _solution));
        Residual = ((matrix * _solution) - right).InfinityNorm();
        return this;
    }
}
