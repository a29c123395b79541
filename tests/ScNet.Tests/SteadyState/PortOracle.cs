using MathNet.Numerics.LinearAlgebra;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// What input and output see of each other, as it would be measured on the nodal equations: mean voltages and currents
/// of the periodic state, for a volt at the input and for a volt or an ampere at the output.
/// </summary>
internal sealed class PortOracle
{
    private readonly bool _isStiff;
    private readonly int _states;
    private readonly (double Duty, Matrix<double> Rates)[] _phases;
    private readonly Matrix<double> _conserved;

    public PortOracle(Converter converter, Mode mode)
    {
        _isStiff = converter.Load == LoadKind.Stiff;
        NodalNetwork byInput = NodalNetwork.Of(converter, mode, outputVolts: 0, inputVolts: 1, loadAmperes: 0);
        NodalNetwork byOutput = NodalNetwork.Of(converter, mode, outputVolts: 1, inputVolts: 0, loadAmperes: 1);
        _states = byInput.StateCount;
        _phases = [.. byInput.Phases.Zip(byOutput.Phases, (a, b) => (a.Duty, Augmented(a, b)))];
        _conserved = PeriodicOracle.Conserved(byInput);
    }

    /// <summary>V_out = Voltage · V_in - Ohms · I_out, I_in = Current · I_out + Siemens · V_in.</summary>
    internal sealed record Ports(double Voltage, double Ohms, double Current, double Siemens);

    /// <summary>Every phase by a matrix exponential.</summary>
    public Ports ByExponential(double frequencyHz)
    {
        int n = _states;
        Matrix<double> period = Matrix<double>.Build.DenseIdentity(n + 4);
        foreach ((double duty, Matrix<double> rates) in _phases)
        {
            period = MatrixExponential.Of(rates * (duty / frequencyHz)) * period;
        }

        Matrix<double> means = period.SubMatrix(n + 2, 2, n, 2);
        if (n > 0)
        {
            // charges that no phase can change keep any value: zero is chosen
            Matrix<double> change = Matrix<double>.Build.DenseIdentity(n) - period.SubMatrix(0, n, 0, n) + _conserved;
            means += period.SubMatrix(n + 2, 2, 0, n) * change.Solve(period.SubMatrix(0, n, n, 2));
        }

        means *= frequencyHz;
        if (!_isStiff)
        {
            return new Ports(means[0, 0], -means[0, 1], means[1, 1], means[1, 0]);
        }

        // admittances turned into what is given: I_out = a V_in + b V_out
        double current = means[1, 1] / means[0, 1];
        return new Ports(-means[0, 0] / means[0, 1], -1 / means[0, 1], current, means[1, 0] - (current * means[0, 0]));
    }

    // The state, the two constants at the ports, and the integrals of what output and input show.
    private static Matrix<double> Augmented(NodalNetwork.PhaseEquations byInput, NodalNetwork.PhaseEquations byOutput)
    {
        int n = byInput.B.Count;
        Matrix<double> matrix = Matrix<double>.Build.Dense(n + 4, n + 4);
        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < n; k++)
            {
                matrix[i, k] = byInput.A[i, k];
            }

            (matrix[i, n], matrix[i, n + 1]) = (byInput.B[i], byOutput.B[i]);
            (matrix[n + 2, i], matrix[n + 3, i]) = (byInput.C[i], byInput.InputC[i]);
        }

        (matrix[n + 2, n], matrix[n + 2, n + 1]) = (byInput.D, byOutput.D);
        (matrix[n + 3, n], matrix[n + 3, n + 1]) = (byInput.InputD, byOutput.InputD);
        return matrix;
    }
}
