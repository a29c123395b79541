using MathNet.Numerics.LinearAlgebra;

namespace ScNet.Benchmarks.Baselines;

/// <summary>
/// Kirchhoff's voltage law for every branch in every phase: unknown are the voltages of the capacitors
/// and the output, which all phases share, and the potentials of the contracted nodes of each phase.
/// </summary>
internal static class DenseVoltages
{
    public static (double Ratio, double[] BlockingVoltages) Of(DenseNetwork network)
    {
        int held = network.Branches.Length - 1;
        (int[] Group, int Count)[] contracted = [.. Enumerable.Range(0, network.PhaseCount).Select(network.Contract)];
        Matrix<double> matrix = Matrix<double>.Build.Dense(
            network.Branches.Length * network.PhaseCount, held + contracted.Sum(c => c.Count - 1));
        Vector<double> demand = Vector<double>.Build.Dense(matrix.RowCount);
        var offset = new int[network.PhaseCount];
        int row = 0, column = held;
        for (int phase = 0; phase < network.PhaseCount; phase++)
        {
            // the potential of the reference, contracted node 0, is no unknown
            offset[phase] = column - 1;
            for (int b = 0; b < network.Branches.Length; b++, row++)
            {
                int first = contracted[phase].Group[network.Branches[b].First];
                int second = contracted[phase].Group[network.Branches[b].Second];
                if (first > 0)
                {
                    matrix[row, offset[phase] + first] += 1;
                }

                if (second > 0)
                {
                    matrix[row, offset[phase] + second] -= 1;
                }

                if (b < held)
                {
                    matrix[row, b] = -1;
                }
                else
                {
                    demand[row] = 1;
                }
            }

            column += contracted[phase].Count - 1;
        }

        Vector<double> solution = matrix.Solve(demand);
        var blocking = new double[network.PhaseCount * network.Switches.Length];
        for (int phase = 0; phase < network.PhaseCount; phase++)
        {
            for (int s = 0; s < network.Switches.Length; s++)
            {
                blocking[(phase * network.Switches.Length) + s] =
                    Potential(phase, network.Switches[s].First) - Potential(phase, network.Switches[s].Second);
            }
        }

        return (solution[held - 1], blocking);

        double Potential(int phase, int node) =>
            contracted[phase].Group[node] is var group and > 0 ? solution[offset[phase] + group] : 0;
    }
}
