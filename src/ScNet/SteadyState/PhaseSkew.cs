using ScNet.Numerics;

namespace ScNet.SteadyState;

/// <summary>
/// How the charges of earlier phases move what later ones start from: for every direction
/// Σ_j (Bᵀz)^j · (what has changed of the states up to the middle of phase j, negated).
/// </summary>
/// <remarks>Nothing for two phases. Symbols: docs/theory/output-impedance.md, "One period".</remarks>
internal static class PhaseSkew
{
    /// <summary>Whether there is anything but zeros.</summary>
    public static bool IsNone(int phases, int directions) => phases == 2 || directions == 0;

    /// <summary>Nothing for pairs of directions, and zeros with the particular flow.</summary>
    public static (double[] Square, double[] Particular) None(int directions) => ([], new double[directions]);

    /// <summary>One value per pair of directions, by rows, and one per direction with the particular flow.</summary>
    /// <param name="phases">The modes of each phase.</param>
    /// <param name="duties">The duty of each phase.</param>
    /// <param name="charges">The particular flow in row 0, a direction in every other; one column per exponential mode, phase by phase.</param>
    public static (double[] Square, double[] Particular) Of(PhaseModes[] phases, double[] duties, DenseRows charges)
    {
        int directions = charges.RowCount - 1, first = 0;
        var square = new double[directions * directions];
        var particular = new double[directions];
        // column 0: the particular flow; the others: the directions
        int columns = 1 + directions, states = phases[0].States;
        var before = new double[columns][];
        for (int c = 0; c < columns; c++)
        {
            before[c] = new double[states];
        }

        for (int j = 0; j < phases.Length; j++)
        {
            double[]?[] change = [.. Enumerable.Range(0, columns).Select(c => StateCharge(phases[j], charges.Row(c)[first..], c == 0 ? duties[j] : 0))];
            first += phases[j].Rates.Count(r => r > 0);
            for (int m = 0; m < directions; m++)
            {
                if (change[1 + m] is not { } own)
                {
                    continue;
                }

                for (int c = 0; c < columns; c++)
                {
                    double sum = DenseRows.Dot(own, before[c]) + (change[c] is { } other ? 0.5 * DenseRows.Dot(own, other) : 0);
                    if (c == 0)
                    {
                        particular[m] += sum;
                    }
                    else
                    {
                        square[(m * directions) + c - 1] += sum;
                    }
                }
            }

            for (int c = 0; c < columns; c++)
            {
                DenseRows.AddMultiple(change[c], change[c] is null ? 0 : 1, before[c]);
            }
        }

        return (square, particular);
    }

    // Bᵀq - D J: by how much a flow lowers the states in one phase; null where it has no part in the phase.
    private static double[]? StateCharge(PhaseModes modes, ReadOnlySpan<double> charges, double duty)
    {
        double[]? charge = null;
        int at = 0;

        // what node groups demand, in rows without a rate, has been taken out of the load's drive already
        for (int row = 0; row < modes.ModeCount; row++)
        {
            if (modes.Rates[row] > 0 && charges[at++] is not 0 and var amount)
            {
                DenseRows.AddMultiple(modes.Coupling(row), amount, charge ??= new double[modes.States]);
            }
        }

        if (duty != 0)
        {
            DenseRows.AddMultiple(modes.Load, -duty, charge ??= new double[modes.States]);
        }

        return charge;
    }
}
