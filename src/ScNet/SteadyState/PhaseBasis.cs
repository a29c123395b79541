using ScNet.Numerics;

namespace ScNet.SteadyState;

/// <summary>
/// The functions of time of which every waveform within one phase is a sum: 1, t/τ and, per exponential
/// mode, its shape ψ and the integral Ψ of its shape. Their values on a grid fine enough to separate all
/// time constants are kept, so that extremes of many waveforms cost only products.
/// </summary>
internal sealed class PhaseBasis
{
    private const int PointsPerDecade = 6;
    private const int EvenPoints = 24;

    private readonly double[] _shapes;
    private readonly double[] _slopes;

    public PhaseBasis(double[] rates, double durationSeconds)
    {
        Rates = rates;
        Duration = durationSeconds;
        Grid = Times(rates, durationSeconds);
        _shapes = new double[Grid.Length * rates.Length];
        _slopes = new double[Grid.Length * rates.Length];
        for (int p = 0; p < Grid.Length; p++)
        {
            for (int k = 0; k < rates.Length; k++)
            {
                _shapes[(p * rates.Length) + k] = ModalFunctions.Shape(rates[k], durationSeconds, Grid[p]);
                _slopes[(p * rates.Length) + k] = ModalFunctions.ShapeByTime(rates[k], durationSeconds, Grid[p]);
            }
        }
    }

    /// <summary>The rate of each mode in 1/s.</summary>
    public double[] Rates { get; }

    /// <summary>The length of the phase in seconds.</summary>
    public double Duration { get; }

    /// <summary>Times in seconds from the start of the phase, ascending, both ends included.</summary>
    public double[] Grid { get; }

    /// <summary>ψ of every mode at a grid point.</summary>
    public ReadOnlySpan<double> ShapesAt(int point) => _shapes.AsSpan(point * Rates.Length, Rates.Length);

    /// <summary>The derivative of ψ of every mode at a grid point, in 1/s.</summary>
    public ReadOnlySpan<double> SlopesAt(int point) => _slopes.AsSpan(point * Rates.Length, Rates.Length);

    private static double[] Times(double[] rates, double duration)
    {
        SortedSet<double> times = [0, duration];
        for (int i = 1; i < EvenPoints; i++)
        {
            times.Add(duration * i / EvenPoints);
        }

        double fastest = rates.Length == 0 ? 0 : rates.Max();
        if (fastest * duration > 1)
        {
            double step = Math.Pow(10, 1.0 / PointsPerDecade);
            for (double time = 0.02 / fastest; time < duration; time *= step)
            {
                times.Add(time);
            }
        }

        return [.. times];
    }
}
