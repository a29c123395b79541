using ScNet.Numerics;

namespace ScNet.SteadyState;

/// <summary>
/// By how much of each rotated direction the particular flow has to change until it drives the capacitors
/// independently of it in the slow limit.
/// </summary>
/// <remarks>
/// Symbols: docs/theory/output-impedance.md. Where rates lie many orders apart the amount of a fast direction would
/// otherwise have to take off what the particular flow holds of it, and what is left for the slow directions would drown in
/// its rounding. Cost: directions · modes.
/// </remarks>
internal static class FastShift
{
    // The particular flow is freed of what is faster than this fraction of the fastest direction: no more is needed,
    // and a direction that moves no capacitor has impulses of mere rounding.
    private const double Slow = 1e-13;

    // How many times the constant currents of the particular flow may dissipate more for it: what high frequencies
    // would have to take off again.
    private const double LargestGrowth = 1e3;

    /// <summary>One amount per rotated direction.</summary>
    /// <param name="rotation">The directions; zeros come out where they were too many to rotate.</param>
    /// <param name="directions">How many they are.</param>
    /// <param name="rates">The rate of each mode in 1/s.</param>
    /// <param name="drives">The drive of each mode by the particular flow; shifted along.</param>
    /// <param name="currents">What the particular flow dissipates as constant currents.</param>
    public static double[] Of(DirectionRotation rotation, int directions, double[] rates, double[] drives, double currents)
    {
        var shift = new double[directions];
        if (!rotation.IsOrthogonal)
        {
            return shift;
        }

        double[] root = [.. rates.Select(Math.Sqrt)];
        double[] impulses = [.. Enumerable.Range(0, directions).Select(k => DenseRows.Dot(rotation.SlowDrives(k), rotation.SlowDrives(k)))];
        double fastest = impulses.DefaultIfEmpty().Max();

        // twice over, since slow directions gain by what the first pass has made small
        for (int pass = 0; pass < 2; pass++)
        {
            for (int k = 0; k < directions; k++)
            {
                ReadOnlySpan<double> own = rotation.SlowDrives(k);
                double drive = 0;
                for (int r = 0; r < own.Length; r++)
                {
                    drive += own[r] / root[r] * drives[r];
                }

                if (impulses[k] > Slow * fastest && drive * drive <= LargestGrowth * currents * impulses[k] * impulses[k])
                {
                    double amount = -drive / impulses[k];
                    shift[k] += amount;
                    for (int r = 0; r < own.Length; r++)
                    {
                        drives[r] += amount * root[r] * own[r];
                    }
                }
            }
        }

        return shift;
    }
}
