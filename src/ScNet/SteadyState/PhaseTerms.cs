using ScNet.Numerics;

namespace ScNet.SteadyState;

/// <summary>
/// What the impedance needs to know of a phase: per coordinate of the resistor currents its rate, its charge in the
/// particular flow and in every free direction, and its drive by a load current.
/// </summary>
/// <param name="charges">One row per coordinate.</param>
/// <param name="column">The column of the particular flow; those of the directions follow.</param>
/// <param name="directions">The number of directions.</param>
/// <param name="rates">The rate of each coordinate in 1/s; zero where the current is constant.</param>
/// <param name="ramps">The drive of each coordinate by a load current.</param>
internal sealed class PhaseTerms(DenseRows charges, int column, int directions, double[] rates, double[] ramps)
{
    public int Count => charges.RowCount;

    public double[] Rates => rates;

    public double[] Ramps => ramps;

    public double Particular(int row) => charges[row, column];

    public ReadOnlySpan<double> Directions(int row) => charges.Row(row).Slice(column + 1, directions);

    /// <summary>The terms of a phase that is a set of chains; null where rounding forbids it.</summary>
    public static PhaseTerms? TryOf(LoopChains chains, ResistorFlows flows, int phase)
    {
        DenseRows charges = new(flows.Resistors[phase].Length, 1 + flows.Directions.Count);
        for (int r = 0; r < charges.RowCount; r++)
        {
            charges[r, 0] = flows.Particular[phase][r];
            for (int k = 0; k < flows.Directions.Count; k++)
            {
                charges[r, 1 + k] = flows.Directions[k][phase][r];
            }
        }

        return chains.TryRotate(charges) is { } rates
            ? new PhaseTerms(charges, 0, flows.Directions.Count, rates, new double[charges.RowCount])
            : null;
    }
}
