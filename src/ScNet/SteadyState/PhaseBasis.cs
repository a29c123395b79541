using System.Numerics;
using ScNet.Numerics;

namespace ScNet.SteadyState;

/// <summary>
/// The functions of time of which every waveform within one phase is a sum: 1, t/τ and, per exponential
/// mode, its shape ψ and the integral Ψ of its shape. Their values on a grid fine enough to separate all
/// time constants are kept, so that extremes of many waveforms cost only products.
/// </summary>
/// <remarks>All is worked out on first use. Cost: grid times · modes for the values, modes² for the products of shapes.</remarks>
internal sealed class PhaseBasis
{
    private const int PointsPerDecade = 6;
    private const int EvenPoints = 24;

    private readonly Lazy<double[]> _grid;
    private readonly Lazy<double[]> _shapes;
    private readonly Lazy<double[]> _slopes;
    private readonly Lazy<double[]> _integrals;
    private readonly Lazy<double[]> _overlaps;

    public PhaseBasis(double[] rates, double durationSeconds)
    {
        Rates = rates;
        Duration = durationSeconds;
        _grid = new(() => Times(rates, durationSeconds));
        _shapes = new(() => Values(ModalFunctions.Shape));
        _slopes = new(() => Values(ModalFunctions.ShapeByTime));
        _integrals = new(() => Values(ModalFunctions.ShapeIntegral));
        _overlaps = new(Products);
    }

    /// <summary>The rate of each mode in 1/s.</summary>
    public double[] Rates { get; }

    /// <summary>The length of the phase in seconds.</summary>
    public double Duration { get; }

    /// <summary>Times in seconds from the start of the phase, ascending, both ends included.</summary>
    public double[] Grid => _grid.Value;

    /// <summary>ψ of every mode at a grid point.</summary>
    public ReadOnlySpan<double> ShapesAt(int point) => Row(_shapes.Value, point);

    /// <summary>The derivative of ψ of every mode at a grid point, in 1/s.</summary>
    public ReadOnlySpan<double> SlopesAt(int point) => Row(_slopes.Value, point);

    /// <summary>Ψ of every mode at a grid point, in seconds.</summary>
    public ReadOnlySpan<double> IntegralsAt(int point) => Row(_integrals.Value, point);

    /// <summary>The integrals of the products of a mode's ψ with that of every mode over the phase, in seconds.</summary>
    public ReadOnlySpan<double> Overlaps(int mode) => Row(_overlaps.Value, mode);

    /// <summary>Σ weight · ψ(t), a weight per mode.</summary>
    public double Shapes(ReadOnlySpan<double> weights, double time) => Sum(weights, time, ModalFunctions.Shape, ModalFunctions.Shape);

    /// <summary>The derivative of <see cref="Shapes"/> by time.</summary>
    public double Slopes(ReadOnlySpan<double> weights, double time) => Sum(weights, time, ModalFunctions.ShapeByTime, ModalFunctions.ShapeByTime);

    /// <summary>Σ weight · Ψ(t), a weight per mode.</summary>
    public double Integrals(ReadOnlySpan<double> weights, double time) => Sum(weights, time, ModalFunctions.ShapeIntegral, ModalFunctions.ShapeIntegral);

    private double Sum(
        ReadOnlySpan<double> weights, double time, Func<Vector<double>, double, double, Vector<double>> several, Func<double, double, double, double> one)
    {
        int k = 0, width = Vector<double>.Count;
        Vector<double> sums = Vector<double>.Zero;
        for (; k <= weights.Length - width; k += width)
        {
            sums += new Vector<double>(weights[k..]) * several(new Vector<double>(Rates, k), Duration, time);
        }

        double sum = Vector.Sum(sums);
        for (; k < weights.Length; k++)
        {
            sum += weights[k] == 0 ? 0 : weights[k] * one(Rates[k], Duration, time);
        }

        return sum;
    }

    private ReadOnlySpan<double> Row(double[] table, int row) => table.AsSpan(row * Rates.Length, Rates.Length);

    private double[] Values(Func<double, double, double, double> function)
    {
        var values = new double[Grid.Length * Rates.Length];
        for (int p = 0; p < Grid.Length; p++)
        {
            for (int k = 0; k < Rates.Length; k++)
            {
                values[(p * Rates.Length) + k] = function(Rates[k], Duration, Grid[p]);
            }
        }

        return values;
    }

    private double[] Products()
    {
        int n = Rates.Length;
        double[] langevin = [.. Rates.Select(r => ModalFunctions.Langevin(0.5 * r * Duration))];
        var products = new double[n * n];
        for (int k = 0; k < n; k++)
        {
            for (int l = 0; l < n; l++)
            {
                products[(k * n) + l] = ModalFunctions.Overlap(Rates[k], Rates[l], Duration, langevin[k], langevin[l]);
            }
        }

        return products;
    }

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
