namespace ScNet.Numerics;

/// <summary>
/// Functions of one variable as polynomials on pieces, all sampled together, so that asking them again costs a few
/// multiplications.
/// </summary>
/// <remarks>
/// A piece goes through <see cref="Degree"/> + 1 Chebyshev points of the second kind, its ends among them, and is halved until its
/// last coefficients have fallen to the tolerance. Values and slopes by Clenshaw's recurrence (C. W. Clenshaw, Mathematics of
/// Computation 9, 1955, from memory). Safe on many threads.
/// </remarks>
internal sealed class ChebyshevPieces
{
    /// <summary>The degree of each piece.</summary>
    public const int Degree = 16;

    // a piece shorter than this share of the whole is taken as it is: there the function is not smooth
    private const double ShortestShare = 1.0 / 1024;

    private static readonly double[] s_points = [.. Enumerable.Range(0, Degree + 1).Select(k => -Math.Cos(Math.PI * k / Degree))];

    private readonly int _width;
    private readonly double[] _starts;
    private readonly double[] _ends;
    private readonly double[] _coefficients;
    private readonly double[] _places;
    private readonly double[] _samples;

    private ChebyshevPieces(int width, List<(double Start, double End, double[] Samples)> pieces)
    {
        _width = width;
        _starts = [.. pieces.Select(p => p.Start)];
        _ends = [.. pieces.Select(p => p.End)];
        _samples = [.. pieces.SelectMany(p => p.Samples)];
        _places = [.. pieces.SelectMany(p => s_points.Select(t => PlaceOf(t, p.Start, p.End)))];
        _coefficients = [.. pieces.SelectMany(p => Enumerable.Range(0, width).SelectMany(c => Coefficients(p.Samples, width, c)))];
    }

    /// <summary>The number of pieces.</summary>
    public int Count => _starts.Length;

    /// <summary>The places that were sampled, rising, <see cref="Degree"/> + 1 of each piece.</summary>
    public ReadOnlySpan<double> Places => _places;

    /// <summary>Samples functions and finds the pieces.</summary>
    /// <param name="width">The number of functions.</param>
    /// <param name="sample">Writes all of them at a place.</param>
    /// <param name="ends">Where pieces must end, rising, the outermost ends among them: between two of these every function is smooth.</param>
    /// <param name="tolerance">What is left over, in proportion to the largest magnitude of each function on the piece or to one, the larger of both where <paramref name="isAbsolute"/>.</param>
    /// <param name="isAbsolute">Whether the tolerance is never less than itself.</param>
    public static ChebyshevPieces Of(int width, Action<double, Span<double>> sample, IReadOnlyList<double> ends, double tolerance, bool isAbsolute)
    {
        double shortest = (ends[^1] - ends[0]) * ShortestShare;
        List<(double, double, double[])> pieces = [];
        for (int k = 0; k + 1 < ends.Count; k++)
        {
            Add(ends[k], ends[k + 1]);
        }

        return new ChebyshevPieces(width, pieces);

        void Add(double start, double end)
        {
            var samples = new double[(Degree + 1) * width];
            for (int k = 0; k <= Degree; k++)
            {
                sample(PlaceOf(s_points[k], start, end), samples.AsSpan(k * width, width));
            }

            if (end - start <= shortest || Enumerable.Range(0, width).All(c => IsResolved(Coefficients(samples, width, c), tolerance, isAbsolute)))
            {
                pieces.Add((start, end, samples));
                return;
            }

            double middle = start + (0.5 * (end - start));
            Add(start, middle);
            Add(middle, end);
        }
    }

    /// <summary>A function at a place that was sampled.</summary>
    /// <param name="place">The position in <see cref="Places"/>.</param>
    /// <param name="function">The function.</param>
    public double Sample(int place, int function) => _samples[(place * _width) + function];

    /// <summary>The piece of a place that was sampled.</summary>
    /// <param name="place">The position in <see cref="Places"/>.</param>
    public static int PieceOf(int place) => place / (Degree + 1);

    /// <summary>A function and its slope at a place.</summary>
    /// <param name="piece">The piece that the place is in.</param>
    /// <param name="function">The function.</param>
    /// <param name="place">The place.</param>
    public (double Value, double Slope) At(int piece, int function, double place)
    {
        ReadOnlySpan<double> c = Coefficients(piece, function);
        double scale = 2 / (_ends[piece] - _starts[piece]), t = ((place - _starts[piece]) * scale) - 1;
        double b = 0, before = 0, slope = 0, slopeBefore = 0;
        for (int k = Degree; k >= 1; k--)
        {
            (slope, slopeBefore) = ((2 * ((t * slope) + b)) - slopeBefore, slope);
            (b, before) = ((2 * t * b) - before + c[k], b);
        }

        return ((t * b) - before + c[0], ((t * slope) + b - slopeBefore) * scale);
    }

    /// <summary>A function at a place.</summary>
    /// <inheritdoc cref="At"/>
    public double ValueAt(int piece, int function, double place)
    {
        ReadOnlySpan<double> c = Coefficients(piece, function);
        double t = (2 * (place - _starts[piece]) / (_ends[piece] - _starts[piece])) - 1, b = 0, before = 0;
        for (int k = Degree; k >= 1; k--)
        {
            (b, before) = ((2 * t * b) - before + c[k], b);
        }

        return (t * b) - before + c[0];
    }

    private ReadOnlySpan<double> Coefficients(int piece, int function) =>
        _coefficients.AsSpan(((piece * _width) + function) * (Degree + 1), Degree + 1);

    private static double PlaceOf(double point, double start, double end) =>
        point == 1 ? end : start + (0.5 * (1 + point) * (end - start));

    private static bool IsResolved(double[] coefficients, double tolerance, bool isAbsolute)
    {
        double largest = coefficients.Max(Math.Abs), left = Math.Max(Math.Abs(coefficients[^1]), Math.Abs(coefficients[^2]));
        return left <= tolerance * (isAbsolute ? Math.Max(1, largest) : largest);
    }

    // The discrete cosine transform, written out: the ends count half.
    private static double[] Coefficients(double[] samples, int width, int function)
    {
        var coefficients = new double[Degree + 1];
        for (int m = 0; m <= Degree; m++)
        {
            double sum = 0;
            for (int k = 0; k <= Degree; k++)
            {
                // the point of k is -cos(kπ/n) = cos((n - k)π/n)
                double cosine = Math.Cos(Math.PI * (m * (Degree - k) % (2 * Degree)) / Degree);
                sum += (k is 0 or Degree ? 0.5 : 1) * samples[(k * width) + function] * cosine;
            }

            coefficients[m] = sum * (m is 0 or Degree ? 1.0 : 2.0) / Degree;
        }

        return coefficients;
    }
}
