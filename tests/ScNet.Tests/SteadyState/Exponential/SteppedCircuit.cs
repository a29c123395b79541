using MathNet.Numerics.LinearAlgebra;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>
/// The two-port of a circuit by small steps of the implicit midpoint rule on its nodal equations, as they are written
/// down by hand, with the errors of two step widths extrapolated: no tree, no elimination, no exponential.
/// </summary>
/// <remarks>Unknowns of a step: node voltages and the currents of sources, capacitors and inductors at its middle.</remarks>
internal static class SteppedCircuit
{
    // Every squaring doubles the rounding of a state that does not move (a current round two inductors, the difference of
    // capacitors side by side, which this rule turns over in every step): 2^-53 becomes 2^-41, 5e-13, in twelve. States that
    // come back within some hundred periods are far above.
    private const double Still = 1e-9;

    /// <summary>Ratio, impedance, current ratio and input conductance.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="frequencyHz">The frequency.</param>
    /// <param name="halvings">Each phase takes two to this power of steps, and twice as many.</param>
    public static (double Ratio, double Ohms, double CurrentRatio, double Siemens) Measure(Circuit circuit, double frequencyHz, int halvings)
    {
        Matrix<double> averages = ((4 * Averages(circuit, frequencyHz, halvings + 1)) - Averages(circuit, frequencyHz, halvings)) / 3;
        (double inByInput, double inByLoad, double outByInput, double outByLoad) = (averages[0, 0], averages[0, 1], averages[1, 0], averages[1, 1]);
        if (circuit.Load == LoadKind.Current)
        {
            return (outByInput, -outByLoad, inByLoad, inByInput);
        }

        double ratio = -outByInput / outByLoad;
        return (ratio, -1 / outByLoad, inByLoad / outByLoad, inByInput + (inByLoad * ratio));
    }

    // rows: input current, output current or voltage; columns: per volt of input, per volt of output or ampere of load
    private static Matrix<double> Averages(Circuit circuit, double frequencyHz, int halvings)
    {
        int n = circuit.Capacitors.Count + circuit.Inductors.Count;
        Matrix<double> period = Matrix<double>.Build.DenseIdentity(n + 4);
        for (int j = 0; j < circuit.Duties.Length; j++)
        {
            Matrix<double> step = Step(circuit, j + 1, Math.ScaleB(circuit.Duties[j] / frequencyHz, -halvings));
            for (int k = 0; k < halvings; k++)
            {
                step *= step;
            }

            period = step * period;
        }

        Matrix<double> sums = period.SubMatrix(n + 2, 2, n, 2);
        if (n > 0)
        {
            // states that nothing moves keep any value
            Matrix<double> change = Matrix<double>.Build.DenseIdentity(n) - period.SubMatrix(0, n, 0, n);
            sums += period.SubMatrix(n + 2, 2, 0, n) * NodalNetwork.PseudoInverse(change, Still) * period.SubMatrix(0, n, n, 2);
        }

        return sums * frequencyHz;
    }

    // on capacitor voltages, inductor currents, both inputs, and the integrals of what is observed
    private static Matrix<double> Step(Circuit circuit, int phase, double time)
    {
        int nodes = circuit.NodeCount, c = circuit.Capacitors.Count, l = circuit.Inductors.Count, n = c + l;
        bool isStiff = circuit.Load == LoadKind.Stiff;
        int input = nodes, output = nodes + 1, first = nodes + 2, size = first + n;
        Matrix<double> left = Matrix<double>.Build.Dense(size, size), right = Matrix<double>.Build.Dense(size, n + 2);
        left[0, 0] = 1;
        foreach ((int a, int b, double ohms, int[] phases) in circuit.Resistors.Where(r => r.Phases.Contains(phase)))
        {
            Current(a, b, row => { left[row.Node, a] += row.Sign / ohms; left[row.Node, b] -= row.Sign / ohms; });
        }

        // sources: the input's current out of it, the output's into it
        left[input, 1] = 1;
        right[input, n] = 1;
        left[1, input] = -1;
        left[2, output] = 1;
        left[output, isStiff ? 2 : output] = 1;
        right[output, n + 1] = 1;
        for (int k = 0; k < n; k++)
        {
            bool isCapacitor = k < c;
            (int a, int b) = isCapacitor ? (circuit.Capacitors[k].First, circuit.Capacitors[k].Second) : (circuit.Inductors[k - c].First, circuit.Inductors[k - c].Second);
            int own = first + k;
            Current(a, b, row => left[row.Node, own] += row.Sign);
            left[own, a] += 1;
            left[own, b] -= 1;
            left[own, own] -= isCapacitor ? time / 2 / circuit.Capacitors[k].Farads : circuit.Inductors[k - c].Ohms + (2 * circuit.Inductors[k - c].Henries / time);
            right[own, k] = isCapacitor ? 1 : -2 * circuit.Inductors[k - c].Henries / time;
        }

        Matrix<double> middle = NodalNetwork.PseudoInverse(left) * right;
        Matrix<double> step = Matrix<double>.Build.DenseIdentity(n + 4);
        for (int column = 0; column < n + 2; column++)
        {
            for (int k = 0; k < n; k++)
            {
                step[k, column] += k < c ? time / circuit.Capacitors[k].Farads * middle[first + k, column]
                    : 2 * (middle[first + k, column] - (column == k ? 1 : 0));
            }

            step[n + 2, column] = time * middle[input, column];
            step[n + 3, column] = time * middle[isStiff ? output : 2, column];
        }

        return step;

        // the laws of current at both ends; the reference node's is left out
        void Current(int a, int b, Action<(int Node, int Sign)> add)
        {
            foreach ((int node, int sign) in new[] { (a, 1), (b, -1) }.Where(end => end.Item1 != 0))
            {
                add((node, sign));
            }
        }
    }
}
