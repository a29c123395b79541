using System.Numerics;

namespace ScNet.Numerics;

/// <summary>
/// <see cref="ModalFunctions.Excess"/> of many exponential modes at once, for one period after the other: what does
/// not depend on the period is worked out, and several modes share each processor instruction.
/// </summary>
/// <remarks>As accurate as the function for a single mode. Cost: one exponential per mode, no allocation.</remarks>
internal sealed class ModalExcess
{
    /// <summary>How many modes are evaluated in a turn; a multiple of what an instruction holds.</summary>
    public const int Turn = 32;

    // λD/2 and 2λ, padded to a whole number of instructions by modes whose excess is zero
    private readonly double[] _halfExponent;
    private readonly double[] _twiceRate;

    /// <summary>Prepares the modes.</summary>
    /// <param name="rates">The rate of each mode in 1/s; positive.</param>
    /// <param name="duties">The share of the period that the phase of each mode takes.</param>
    public ModalExcess(ReadOnlySpan<double> rates, ReadOnlySpan<double> duties)
    {
        int width = Vector<double>.Count;
        int padded = (rates.Length + width - 1) / width * width;
        _halfExponent = new double[padded];
        _twiceRate = new double[padded];
        _twiceRate.AsSpan().Fill(1);
        for (int r = 0; r < rates.Length; r++)
        {
            _halfExponent[r] = 0.5 * rates[r] * duties[r];
            _twiceRate[r] = 2 * rates[r];
        }
    }

    /// <summary>The excess in seconds of the modes from a multiple of <see cref="Turn"/> on, up to so many.</summary>
    /// <param name="period">The period in seconds.</param>
    /// <param name="first">The first mode.</param>
    /// <param name="excess">Receives the values; as long as <see cref="Turn"/>, of which more than there are modes may be written.</param>
    public void Evaluate(double period, int first, Span<double> excess)
    {
        int count = Math.Min(Turn, _halfExponent.Length - first);
        ReadOnlySpan<double> exponents = _halfExponent.AsSpan(first, count), rates = _twiceRate.AsSpan(first, count);
        Vector<double> duration = new(period);
        for (int r = 0; r < count; r += Vector<double>.Count)
        {
            (ModalFunctions.Langevin(new Vector<double>(exponents[r..]) * duration) / new Vector<double>(rates[r..])).CopyTo(excess[r..]);
        }
    }
}
