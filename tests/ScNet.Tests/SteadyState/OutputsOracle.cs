using MathNet.Numerics.LinearAlgebra;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// What the input and several outputs see of one another, as it would be measured on the nodal equations: mean voltages and
/// currents of the periodic state, for a volt at the input, a volt or an ampere at the main output, an ampere at each other.
/// </summary>
internal sealed class OutputsOracle
{
    private readonly Converter _converter;
    private readonly bool _isStiff;
    private readonly int _states;
    private readonly int _ports;
    private readonly (double Duty, Matrix<double> Rates)[] _phases;
    private readonly Matrix<double> _conserved;

    public OutputsOracle(Converter converter, Mode mode)
    {
        _converter = converter;
        _isStiff = converter.Load == LoadKind.Stiff;
        _ports = 2 + converter.FurtherOutputs.Count;
        NodalNetwork[] drives = [.. Enumerable.Range(0, _ports).Select(u => NodalNetwork.Of(
            converter, mode, u == 1 ? 1 : 0, u == 0 ? 1 : 0, u == 1 ? 1 : 0, [.. converter.FurtherOutputs.Select((_, k) => u == k + 2 ? 1.0 : 0)]))];
        _states = drives[0].StateCount;
        _phases = [.. drives[0].Phases.Select((p, j) => (p.Duty, Augmented([.. drives.Select(d => d.Phases[j])])))];
        _conserved = PeriodicOracle.Conserved(drives[0]);
    }

    /// <summary>Rows: input current, then each output's voltage; columns: input voltage, then each output's load current.</summary>
    public Matrix<double> ByExponential(double frequencyHz)
    {
        int n = _states;
        Matrix<double> period = Matrix<double>.Build.DenseIdentity(n + (2 * _ports));
        foreach ((double duty, Matrix<double> rates) in _phases)
        {
            period = MatrixExponential.Of(rates * (duty / frequencyHz)) * period;
        }

        Matrix<double> means = period.SubMatrix(n + _ports, _ports, n, _ports);
        if (n > 0)
        {
            // charges that no phase can change keep any value: zero is chosen
            Matrix<double> change = Matrix<double>.Build.DenseIdentity(n) - period.SubMatrix(0, n, 0, n) + _conserved;
            means += period.SubMatrix(n + _ports, _ports, 0, n) * change.Solve(period.SubMatrix(0, n, n, _ports));
        }

        means *= frequencyHz;
        if (!_isStiff)
        {
            return means;
        }

        // the output's current by its voltage, turned round: P maps (V_in, V_0, …) to (V_in, I_0, …)
        Matrix<double> turned = Matrix<double>.Build.DenseIdentity(_ports);
        turned.SetRow(1, means.Row(1));
        means.SetRow(1, Vector<double>.Build.Dense(_ports, u => u == 1 ? 1 : 0));
        return means * turned.Inverse();
    }

    // The state, a constant per port, and the integrals of what every port shows.
    private Matrix<double> Augmented(NodalNetwork.PhaseEquations[] drives)
    {
        int n = _states;
        Matrix<double> matrix = Matrix<double>.Build.Dense(n + (2 * _ports), n + (2 * _ports));
        for (int u = 0; u < _ports; u++)
        {
            NodalNetwork.PhaseEquations own = drives[u];
            for (int i = 0; i < n; i++)
            {
                matrix[i, n + u] = own.B[i];
                for (int k = 0; k < n; k++)
                {
                    matrix[i, k] = own.A[i, k];
                }
            }

            for (int port = 0; port < _ports; port++)
            {
                (Vector<double> row, double constant) = Shown(own, port);
                matrix[n + _ports + port, n + u] = constant;
                for (int i = 0; i < n; i++)
                {
                    matrix[n + _ports + port, i] = row[i];
                }
            }
        }

        return matrix;
    }

    private (Vector<double> Row, double Constant) Shown(NodalNetwork.PhaseEquations phase, int port)
    {
        if (port < 2)
        {
            return port == 0 ? (phase.InputC, phase.InputD) : (phase.C, phase.D);
        }

        FurtherOutput output = _converter.FurtherOutputs[port - 2];
        int first = _converter.Nodes.PositionOf(output.Node), second = _converter.Nodes.PositionOf(output.ReturnNode);
        (Matrix<double> rows, Vector<double> constant) = phase.Potentials;
        return (rows.Row(first) - rows.Row(second), constant[first] - constant[second]);
    }
}
