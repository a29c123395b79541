using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;
using ScNet.Numerics;

namespace ScNet.Analysis;

/// <summary>
/// How much charge takes each of the directions that topology leaves free at low frequency where some of them move the
/// currents of inductors: what an inductor sees averages to nothing while its current is constant.
/// </summary>
/// <remarks>
/// Equations: docs/theory/averages-with-inductors.md, "Currents that topology leaves open". Cost: the cube of the number of
/// directions.
/// </remarks>
internal static class SlowCurrents
{
    // Of the largest singular value of equations between vectors of unit length; less is rounding of none.
    private const double DependentEquation = 1e-12;
    private const int Refinements = 1;

    /// <summary>The amounts of mixtures, added to a given flow, at which every mixture sees no voltage on average.</summary>
    /// <param name="charges">Of each mixture: charge over the root of capacitance, index capacitor · phases + phase.</param>
    /// <param name="steady">The part of it that held currents carry at a steady rate.</param>
    /// <param name="losses">What each mixture dissipates: its entries times the root of resistance over duration. It decides where voltages do not.</param>
    /// <param name="flow">The given flow, in the same three ways; of those that voltages do not decide it is the one of least loss.</param>
    /// <param name="phases">The number of phases.</param>
    public static double[] Amounts(
        SparseVector[] charges, SparseVector[] steady, SparseVector[] losses, (SparseVector Charges, SparseVector Steady) flow, int phases)
    {
        int count = charges.Length;
        double[] scale = Array.ConvertAll(charges, c => c.IsZero ? 1 : 1 / c.Length());
        SparseVector[] sums = Array.ConvertAll(charges, c => VoltageLaw.RunningSums(c, phases));
        Matrix<double> law = Matrix<double>.Build.Dense(count, count, (r, c) => scale[r] * scale[c] * Seen(charges[r], sums[c], steady[c]));
        SparseVector flowSums = VoltageLaw.RunningSums(flow.Charges, phases);
        Vector<double> right = Vector<double>.Build.Dense(count, r => -scale[r] * Seen(charges[r], flowSums, flow.Steady));
        Svd<double> svd = law.Svd();
        int rank = svd.S.Count(s => s > DependentEquation * Math.Max(svd.S[0], 1e-3));
        Vector<double> amounts = Vector<double>.Build.Dense(count);
        for (int pass = 0; pass <= Refinements; pass++)
        {
            Vector<double> rest = right - (law * amounts);
            for (int k = 0; k < rank; k++)
            {
                amounts += svd.VT.Row(k) * (svd.U.Column(k) * rest / svd.S[k]);
            }
        }

        if (rank < count)
        {
            Matrix<double> open = svd.VT.SubMatrix(rank, count - rank, 0, count).Transpose();
            int rows = losses.Max(l => l.IsZero ? 0 : l.Indices[^1] + 1);
            Matrix<double> dissipation = Matrix<double>.Build.Dense(Math.Max(rows, count), count);
            for (int k = 0; k < count; k++)
            {
                for (int e = 0; e < losses[k].Count; e++)
                {
                    dissipation[losses[k].Indices[e], k] = losses[k].Values[e] * scale[k];
                }
            }

            Svd<double> least = (dissipation * open).Svd();
            Vector<double> wanted = -(dissipation * amounts);
            for (int k = 0; k < least.S.Count && least.S[k] > DependentEquation * least.S[0]; k++)
            {
                amounts += open * least.VT.Row(k) * (least.U.Column(k) * wanted / least.S[k]);
            }
        }

        return [.. amounts.Select((a, k) => a * scale[k])];
    }

    // An impulse at the start of a phase and a straight line after it: on average the voltage is that of the end less half the line.
    private static double Seen(SparseVector charges, SparseVector sums, SparseVector steady) =>
        VoltageLaw.Dot(charges, sums) - (VoltageLaw.Dot(charges, steady) / 2);
}
