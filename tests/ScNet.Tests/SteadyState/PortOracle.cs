using MathNet.Numerics.LinearAlgebra;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// What input and output see of each other, as it would be measured on the nodal equations: mean voltages and currents
/// of the periodic state, once for a volt at the input and once for a volt or an ampere at the output.
/// </summary>
internal sealed class PortOracle
{
    private readonly Converter _converter;
    private readonly Mode _mode;

    public PortOracle(Converter converter, Mode mode)
    {
        _converter = converter;
        _mode = mode;
    }

    /// <summary>V_out = Voltage · V_in - Ohms · I_out, I_in = Current · I_out + Siemens · V_in.</summary>
    internal sealed record Ports(double Voltage, double Ohms, double Current, double Siemens);

    /// <summary>Every phase by a matrix exponential.</summary>
    public Ports ByExponential(double frequencyHz)
    {
        (double ownOutput, double ownInput) = Means(frequencyHz, inputVolts: 1, output: 0);
        (double byOutput, double inputByOutput) = Means(frequencyHz, inputVolts: 0, output: 1);
        if (_converter.Load == LoadKind.Current)
        {
            return new Ports(ownOutput, -byOutput, inputByOutput, ownInput);
        }

        // admittances turned into what is given: I_out = a V_in + b V_out
        double current = inputByOutput / byOutput;
        return new Ports(-ownOutput / byOutput, -1 / byOutput, current, ownInput - (current * ownOutput));
    }

    private (double Output, double Input) Means(double frequencyHz, double inputVolts, double output)
    {
        NodalNetwork network = NodalNetwork.Of(_converter, _mode, output, inputVolts, output);
        int n = network.StateCount;
        Matrix<double> period = Matrix<double>.Build.DenseIdentity(n + 3);
        foreach (NodalNetwork.PhaseEquations phase in network.Phases)
        {
            period = MatrixExponential.Of(Augmented(phase) * (phase.Duty / frequencyHz)) * period;
        }

        double atOutput = period[n + 1, n], atInput = period[n + 2, n];
        if (n > 0)
        {
            // charges that no phase can change keep any value: zero is chosen
            Matrix<double> change = Matrix<double>.Build.DenseIdentity(n) - period.SubMatrix(0, n, 0, n) + PeriodicOracle.Conserved(network);
            Vector<double> start = change.Solve(period.Column(n, 0, n));
            atOutput += period.Row(n + 1, 0, n) * start;
            atInput += period.Row(n + 2, 0, n) * start;
        }

        return (atOutput * frequencyHz, atInput * frequencyHz);
    }

    // The state, the constant one and the integrals of what is observed.
    private static Matrix<double> Augmented(NodalNetwork.PhaseEquations phase)
    {
        int n = phase.B.Count;
        Matrix<double> matrix = Matrix<double>.Build.Dense(n + 3, n + 3);
        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < n; k++)
            {
                matrix[i, k] = phase.A[i, k];
            }

            matrix[i, n] = phase.B[i];
            matrix[n + 1, i] = phase.C[i];
            matrix[n + 2, i] = phase.InputC[i];
        }

        matrix[n + 1, n] = phase.D;
        matrix[n + 2, n] = phase.InputD;
        return matrix;
    }
}
