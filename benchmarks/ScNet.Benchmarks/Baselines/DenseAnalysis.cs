using MathNet.Numerics.LinearAlgebra;

namespace ScNet.Benchmarks.Baselines;

/// <summary>
/// The analysis that a user would otherwise write: Kirchhoff's laws and charge balance as dense
/// matrices over the contracted nodes of every phase. Flows are indexed by phase first: phase ·
/// elements + element.
/// </summary>
public sealed class DenseAnalysis
{
    private DenseAnalysis(DenseNetwork network, double[] branches)
    {
        BranchCharges = branches;
        SwitchCharges = DenseSwitches.Charges(network, branches);
        (Ratio, BlockingVoltages) = DenseVoltages.Of(network);
        int capacitors = network.Farads.Length;
        for (int phase = 0; phase < network.PhaseCount; phase++)
        {
            for (int i = 0; i < capacitors; i++)
            {
                double charge = branches[(phase * network.Branches.Length) + i];
                SlowOhmsAtOneHertz += charge * charge / (2 * network.Farads[i]);
            }

            for (int s = 0; s < network.Switches.Length; s++)
            {
                double charge = SwitchCharges[(phase * network.Switches.Length) + s];
                FastOhms += charge * charge * network.Ohms[s] / network.Duties[phase];
            }
        }
    }

    /// <summary>Output voltage per volt of input.</summary>
    public double Ratio { get; }

    /// <summary>Charge into the first terminal of every branch, per unit of output charge.</summary>
    public double[] BranchCharges { get; }

    /// <summary>Charge through every switch from its first terminal to its second.</summary>
    public double[] SwitchCharges { get; }

    /// <summary>Voltage across every switch, first terminal minus second, per volt of input.</summary>
    public double[] BlockingVoltages { get; }

    /// <summary>Slow-switching limit in ohms at 1 Hz.</summary>
    public double SlowOhmsAtOneHertz { get; }

    /// <summary>Fast-switching limit in ohms.</summary>
    public double FastOhms { get; }

    /// <summary>Takes the flow from the null space of the equations.</summary>
    public static DenseAnalysis ByNullSpace(DenseNetwork network)
    {
        Vector<double> flow = Equations(network, extraRows: 0).Kernel()[0];
        double delivered = 0;
        for (int phase = 0; phase < network.PhaseCount; phase++)
        {
            delivered += flow[OutputColumn(network, phase)];
        }

        return new DenseAnalysis(network, (flow / delivered).ToArray());
    }

    /// <summary>Adds the equation that one unit of charge is delivered, and solves.</summary>
    public static DenseAnalysis BySolution(DenseNetwork network)
    {
        Matrix<double> equations = Equations(network, extraRows: 1);
        int last = equations.RowCount - 1;
        for (int phase = 0; phase < network.PhaseCount; phase++)
        {
            equations[last, OutputColumn(network, phase)] = 1;
        }

        Vector<double> demand = Vector<double>.Build.Dense(equations.RowCount);
        demand[last] = 1;
        return new DenseAnalysis(network, equations.Solve(demand).ToArray());
    }

    private static int OutputColumn(DenseNetwork network, int phase) =>
        (phase * network.Branches.Length) + network.Farads.Length;

    // Kirchhoff's current law at every contracted node but the reference, and the balance of every capacitor.
    private static Matrix<double> Equations(DenseNetwork network, int extraRows)
    {
        int branches = network.Branches.Length, capacitors = network.Farads.Length;
        (int[] Group, int Count)[] contracted = [.. Enumerable.Range(0, network.PhaseCount).Select(network.Contract)];
        int rows = contracted.Sum(c => c.Count - 1) + capacitors + extraRows;
        Matrix<double> matrix = Matrix<double>.Build.Dense(rows, branches * network.PhaseCount);
        int start = capacitors;
        for (int phase = 0; phase < network.PhaseCount; phase++)
        {
            for (int b = 0; b < branches; b++)
            {
                int column = (phase * branches) + b;
                int first = contracted[phase].Group[network.Branches[b].First];
                int second = contracted[phase].Group[network.Branches[b].Second];
                if (b < capacitors)
                {
                    matrix[b, column] = 1;
                }

                if (first > 0)
                {
                    matrix[start + first - 1, column] += 1;
                }

                if (second > 0)
                {
                    matrix[start + second - 1, column] -= 1;
                }
            }

            start += contracted[phase].Count - 1;
        }

        return matrix;
    }
}
