using MathNet.Numerics.LinearAlgebra;

namespace ScNet.Benchmarks.Baselines;

/// <summary>Kirchhoff's current law at the nodes themselves: what the closed switches of a phase carry.</summary>
internal static class DenseSwitches
{
    public static double[] Charges(DenseNetwork network, double[] branchCharges)
    {
        var charges = new double[network.PhaseCount * network.Switches.Length];
        for (int phase = 0; phase < network.PhaseCount; phase++)
        {
            int[] closed = [.. Enumerable.Range(0, network.Switches.Length).Where(s => network.Closed[phase][s])];
            Matrix<double> incidence = Matrix<double>.Build.Dense(network.NodeCount, closed.Length);
            for (int k = 0; k < closed.Length; k++)
            {
                incidence[network.Switches[closed[k]].First, k] = 1;
                incidence[network.Switches[closed[k]].Second, k] = -1;
            }

            Vector<double> demand = Vector<double>.Build.Dense(network.NodeCount);
            for (int b = 0; b < network.Branches.Length; b++)
            {
                double charge = branchCharges[(phase * network.Branches.Length) + b];
                demand[network.Branches[b].First] -= charge;
                demand[network.Branches[b].Second] += charge;
            }

            Vector<double> solution = incidence.QR().Solve(demand);
            for (int k = 0; k < closed.Length; k++)
            {
                charges[(phase * network.Switches.Length) + closed[k]] = solution[k];
            }
        }

        return charges;
    }
}
