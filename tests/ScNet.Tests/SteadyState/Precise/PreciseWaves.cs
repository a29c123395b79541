using ScNet.Tests.Numerics;

namespace ScNet.Tests.SteadyState.Precise;

/// <summary>
/// The waveforms of a mode at an operating point: the state with the inputs behind it at the start of every phase, and the
/// integral of its products, W = ∫ z zᵀ, phase by phase.
/// </summary>
/// <remarks>
/// W' = A W + W Aᵀ + z₀ z₀ᵀ, by its series over a short time, then doubled: W(2t) = W(t) + Φ(t) W(t) Φ(t)ᵀ.
/// </remarks>
internal sealed class PreciseWaves
{
    private const int LargestTerm = 200;

    private readonly int _inputAt;
    private readonly BigReal _frequencyHz;
    private readonly BigReal _inputVolts;
    private readonly BigMatrix[] _products;

    private PreciseWaves(PreciseNetwork network, PrecisePeriod period, BigReal[] inputs)
    {
        int n = network.StateCount, p = network.InputCount;
        (_inputAt, _frequencyHz, _inputVolts) = (n, period.FrequencyHz, inputs[0]);
        BigMatrix given = new(p, 1);
        for (int k = 0; k < p; k++)
        {
            given[k, 0] = inputs[k];
        }

        Starts = [.. period.Instants().Select(instant => instant * given)];
        _products = [.. network.Phases.Select((phase, j) => Products(phase.Rates.Above(new BigMatrix(p, n + p)).Times(phase.Duty / period.FrequencyHz), Starts[j]).Times(phase.Duty / period.FrequencyHz))];
    }

    /// <summary>State and inputs at the start of every phase, then at the end of the last.</summary>
    public BigMatrix[] Starts { get; }

    /// <summary>The waveforms for given inputs.</summary>
    /// <param name="network">The network.</param>
    /// <param name="period">Its period.</param>
    /// <param name="inputs">Input voltage, not zero; output voltage or load current; further load currents.</param>
    public static PreciseWaves Of(PreciseNetwork network, PrecisePeriod period, params BigReal[] inputs) => new(network, period, inputs);

    /// <summary>The mean square over the period of a signal that is a row over state and inputs in every phase.</summary>
    public BigReal MeanSquare(Func<int, BigMatrix> row) =>
        _frequencyHz * _products.Select((w, j) => (row(j) * w * row(j).Transposed())[0, 0]).Aggregate((a, b) => a + b);

    /// <summary>The mean over the period of such a signal: the input voltage is one of the constant factors.</summary>
    public BigReal Mean(Func<int, BigMatrix> row) =>
        _frequencyHz * _products.Select((w, j) => (row(j) * w)[0, _inputAt]).Aggregate((a, b) => a + b) / _inputVolts;

    // over a phase whose length is one
    private static BigMatrix Products(BigMatrix rates, BigMatrix start)
    {
        int squarings = rates.Squarings();
        BigReal step = BigReal.Scale(BigReal.One, -squarings);
        BigMatrix across = rates.Transposed(), map = rates.Times(step).Series(), square = start * start.Transposed(), term = square.Times(step), sum = term;
        for (int k = 2; k < LargestTerm && !term.IsDust; k++)
        {
            term = ((rates * term) + (term * across)).Times(step / k);
            sum += term;
        }

        for (int k = 0; k < squarings; k++)
        {
            sum += map * sum * map.Transposed();
            map *= map;
        }

        return sum;
    }
}
