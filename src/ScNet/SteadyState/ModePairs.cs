using ScNet.Numerics;

namespace ScNet.SteadyState;

/// <summary>
/// What two modes of one phase have to do with one another in a derivative: the products of their drives,
/// forwards and reversed, with the overlap of their shapes and the divided difference of their excess.
/// Worked out once, so that an element costs products only.
/// </summary>
/// <remarks>Symbols: docs/theory/output-impedance.md, "Sensitivities". Cost: modes² functions, then modes² products per element.</remarks>
internal sealed class ModePairs
{
    private readonly PhaseModes _modes;
    private readonly Lazy<double[]> _overlaps;
    private readonly Lazy<double[]> _differences;

    /// <summary>Prepares the pairs of one phase.</summary>
    /// <param name="modes">The phase.</param>
    /// <param name="forward">The drive of each mode.</param>
    /// <param name="reversed">The drive of each mode with the phases in the opposite order.</param>
    /// <param name="duration">The length of the phase in seconds.</param>
    public ModePairs(PhaseModes modes, double[] forward, double[] reversed, double duration)
    {
        _modes = modes;
        Excess = new double[modes.ModeCount];
        for (int k = modes.FirstMode; k < Excess.Length; k++)
        {
            Excess[k] = ModalFunctions.Excess(modes.Rates[k], duration);
        }

        _overlaps = new(() => Weighted(ModalFunctions.ReversedOverlap));
        _differences = new(() => Weighted(ModalFunctions.ExcessDifference));

        double[] Weighted(Func<double, double, double, double> function)
        {
            int n = modes.ModeCount;
            var weighted = new double[n * n];
            for (int k = modes.FirstMode; k < n; k++)
            {
                for (int l = modes.FirstMode; l <= k; l++)
                {
                    double value = (forward[k] == 0 && reversed[k] == 0) || (forward[l] == 0 && reversed[l] == 0) ? 0
                        : function(modes.Rates[k], modes.Rates[l], duration);
                    weighted[(k * n) + l] = reversed[k] * forward[l] * value;
                    weighted[(l * n) + k] = reversed[l] * forward[k] * value;
                }
            }

            return weighted;
        }
    }

    /// <summary>The excess of each mode; zero for what node groups fix.</summary>
    public double[] Excess { get; }

    /// <summary>Σ a_k a_l ŵ_k w_l N_kl for the share of an element in each mode.</summary>
    public double OverlapProduct(double[] share) => Product(_overlaps.Value, share);

    /// <summary>Σ c_k c_l ŵ_k w_l ε[λ_k, λ_l] for the change of a voltage with each mode.</summary>
    public double ExcessProduct(double[] change) => Product(_differences.Value, change);

    private double Product(double[] pairs, double[] factors)
    {
        int n = factors.Length;
        double sum = 0;
        for (int k = _modes.FirstMode; k < n; k++)
        {
            sum += factors[k] == 0 ? 0 : factors[k] * DenseRows.Dot(pairs.AsSpan(k * n, n), factors);
        }

        return sum;
    }
}
