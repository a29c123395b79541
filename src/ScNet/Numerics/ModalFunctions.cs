using System.Numerics;

namespace ScNet.Numerics;

/// <summary>
/// The scalar functions of one exponential mode over one phase, each accurate to rounding for every
/// product of rate and duration from zero to infinity.
/// </summary>
/// <remarks>
/// Symbols as in docs/theory/output-impedance.md: rate λ in 1/s, duration τ in s, x = λτ/2.
/// L(x) = coth x - 1/x (Langevin's function) carries all of them, so that no difference of nearly
/// equal numbers is ever taken.
/// </remarks>
internal static class ModalFunctions
{
    // Below this the series is exact to rounding; above, coth x - 1/x loses no more than four bits.
    private const double SeriesLimit = 0.5;

    // Below this, differences of L(x)/x are taken term by term; above, no more than five bits are lost.
    private const double DifferenceLimit = 2;
    private const int DifferenceTerms = 42;

    // L(x) = Σ c_n x^(2n+1) with c_n = 2^(2n+2) B_(2n+2) / (2n+2)!
    private static readonly double[] s_langevin =
    [
        1.0 / 3, -1.0 / 45, 2.0 / 945, -1.0 / 4725, 2.0 / 93555, -1382.0 / 638512875, 4.0 / 18243225,
        -3617.0 / 162820783125, 87734.0 / 38979295480125, -349222.0 / 1531329465290625,
    ];

    // 1 / (k+2)!
    private static readonly double[] s_second =
    [
        1.0 / 2, 1.0 / 6, 1.0 / 24, 1.0 / 120, 1.0 / 720, 1.0 / 5040, 1.0 / 40320, 1.0 / 362880, 1.0 / 3628800, 1.0 / 39916800,
        1.0 / 479001600, 1.0 / 6227020800, 1.0 / 87178291200,
    ];

    /// <summary>L(x) = coth x - 1/x, from 0 at 0 to 1 at infinity.</summary>
    public static double Langevin(double x)
    {
        if (x < SeriesLimit)
        {
            // the hot path of a frequency sweep: Horner's rule without a delegate
            double y = x * x, sum = 0;
            for (int n = s_langevin.Length - 1; n >= 0; n--)
            {
                sum = (sum * y) + s_langevin[n];
            }

            return x * sum;
        }

        return (1 / Math.Tanh(x)) - (1 / x);
    }

    /// <summary>L(x) of several arguments at once; coth x is (1 + e) / (1 - e) with e = exp(-2x).</summary>
    public static Vector<double> Langevin(Vector<double> x)
    {
        Vector<double> y = x * x, sum = Vector<double>.Zero;
        for (int n = s_langevin.Length - 1; n >= 0; n--)
        {
            sum = Vector.FusedMultiplyAdd(sum, y, new Vector<double>(s_langevin[n]));
        }

        Vector<double> isSmall = Vector.LessThan(x, new Vector<double>(SeriesLimit)).As<long, double>();
        Vector<double> e = Vector.Exp(-2 * x), one = Vector<double>.One;
        return Vector.ConditionalSelect(isSmall, x * sum, ((one + e) / (one - e)) - (one / x));
    }

    /// <summary>L'(x) = 1/x² - 1/sinh² x, from 1/3 at 0 to 0 at infinity.</summary>
    public static double LangevinDerivative(double x)
    {
        if (x < SeriesLimit)
        {
            return Series(x * x, (n, c) => ((2 * n) + 1) * c);
        }

        double inverseSinh = x > 350 ? 0 : 1 / Math.Sinh(x);
        return (1 / (x * x)) - (inverseSinh * inverseSinh);
    }

    /// <summary>
    /// The integral of ψ² over a phase, L(x) / (2λ) in seconds: what a mode dissipates beyond a constant
    /// current of the same charge, per square of its drive. τ/12 at rate zero.
    /// </summary>
    public static double Excess(double rate, double duration) => rate > 0
        ? Langevin(0.5 * rate * duration) / (2 * rate)
        : duration / 12;

    /// <summary>The derivative of <see cref="Excess"/> by the duration: L'(x) / 4, without a unit.</summary>
    public static double ExcessByDuration(double rate, double duration) => LangevinDerivative(0.5 * rate * duration) / 4;

    /// <summary>The integral of ψ_k ψ_l over a phase, in seconds.</summary>
    public static double Overlap(double rate, double otherRate, double duration) =>
        Overlap(rate, otherRate, duration, Langevin(0.5 * rate * duration), Langevin(0.5 * otherRate * duration));

    /// <summary>The same with L(λτ/2) of both rates at hand, for many pairs.</summary>
    public static double Overlap(double rate, double otherRate, double duration, double langevin, double otherLangevin) =>
        rate + otherRate > 0 ? (langevin + otherLangevin) / (2 * (rate + otherRate)) : duration / 12;

    /// <summary>
    /// The integral of ψ_k(t) ψ_l(τ - t) over a phase, in seconds: minus half the divided difference of
    /// L(λτ/2) between the two rates.
    /// </summary>
    public static double ReversedOverlap(double rate, double otherRate, double duration)
    {
        double x = 0.5 * rate * duration, y = 0.5 * otherRate * duration;
        double difference;
        if (AreClose(x, y))
        {
            // Gauss points of the derivative
            difference = Mean(LangevinDerivative, x, y);
        }
        else if (Math.Min(x, y) < SeriesLimit)
        {
            difference = (Langevin(x) - Langevin(y)) / (x - y);
        }
        else
        {
            // L tends to 1, so the differences of 1/x and of coth x are written down each
            double low = Math.Min(x, y), apart = Math.Abs(x - y);
            double hyperbolic = -2 * Math.Exp(-2 * low) * ExpMinusOne(-2 * apart) / (ExpMinusOne(-2 * x) * ExpMinusOne(-2 * y));
            difference = (1 / x / y) - (hyperbolic / apart);
        }

        return -0.25 * duration * difference;
    }

    /// <summary>The divided difference of <see cref="Excess"/> between two rates, in s².</summary>
    public static double ExcessDifference(double rate, double otherRate, double duration)
    {
        // Excess is (τ/4) L(x)/x
        double x = 0.5 * rate * duration, y = 0.5 * otherRate * duration;
        double difference = Math.Max(x, y) < DifferenceLimit ? (x + y) * SquareDifference(x * x, y * y)
            : AreClose(x, y) ? Mean(SlopeOfRatio, x, y)
            : (LangevinRatio(x) - LangevinRatio(y)) / (x - y);
        return 0.125 * duration * duration * difference;
    }

    /// <summary>
    /// ψ(t) = exp(-λt) / (1 - exp(-λτ)) - 1/(λτ): the shape of a mode's current about its mean, without a
    /// unit; 1/2 - t/τ at rate zero. Its integral over the phase is zero.
    /// </summary>
    public static double Shape(double rate, double duration, double time)
    {
        double x = rate * duration;
        if (x < SeriesLimit)
        {
            // e^{-y} = 1 - y φ(y) and φ(y) = 1 - y χ(y), so that the poles at zero cancel on paper
            double s = time / duration, second = Second(x);
            return (second - (s * (1 - (x * s * Second(x * s))))) / (1 - (x * second));
        }

        return (Math.Exp(-rate * time) / -ExpMinusOne(-x)) - (1 / x);
    }

    /// <summary>The derivative of <see cref="Shape(double, double, double)"/> by time, in 1/s.</summary>
    public static double ShapeByTime(double rate, double duration, double time)
    {
        double x = rate * duration;
        return x > 0 ? -rate * Math.Exp(-rate * time) / -ExpMinusOne(-x) : -1 / duration;
    }

    /// <summary>The integral of <see cref="Shape(double, double, double)"/> from the start of the phase, in seconds; zero at both ends.</summary>
    public static double ShapeIntegral(double rate, double duration, double time)
    {
        double x = rate * duration, s = time / duration;
        if (x < SeriesLimit)
        {
            double second = Second(x);
            return duration * s * (second - (s * Second(x * s))) / (1 - (x * second));
        }

        return ((ExpMinusOne(-rate * time) / ExpMinusOne(-x)) - s) / rate;
    }

    /// <summary><see cref="Shape(double, double, double)"/> of several modes at once.</summary>
    public static Vector<double> Shape(Vector<double> rate, double duration, double time)
    {
        Vector<double> x = rate * duration, one = Vector<double>.One;
        double s = time / duration;
        Vector<double> second = Second(x), series = (second - (s * (one - (s * x * Second(s * x))))) / (one - (x * second));
        Vector<double> large = (Vector.Exp(-time * rate) / (one - Vector.Exp(-x))) - (one / x);
        return Vector.ConditionalSelect(IsSmall(x), series, large);
    }

    /// <summary><see cref="ShapeByTime(double, double, double)"/> of several modes at once.</summary>
    public static Vector<double> ShapeByTime(Vector<double> rate, double duration, double time)
    {
        Vector<double> x = rate * duration, one = Vector<double>.One, fallen = Vector.Exp(-time * rate);
        return Vector.ConditionalSelect(
            IsSmall(x), fallen / (duration * ((x * Second(x)) - one)), -rate * fallen / (one - Vector.Exp(-x)));
    }

    /// <summary><see cref="ShapeIntegral(double, double, double)"/> of several modes at once; accurate to rounding of the largest value in the phase.</summary>
    public static Vector<double> ShapeIntegral(Vector<double> rate, double duration, double time)
    {
        Vector<double> x = rate * duration, one = Vector<double>.One;
        double s = time / duration;
        Vector<double> second = Second(x), series = duration * s * (second - (s * Second(s * x))) / (one - (x * second));
        Vector<double> large = (((one - Vector.Exp(-time * rate)) / (one - Vector.Exp(-x))) - new Vector<double>(s)) / rate;
        return Vector.ConditionalSelect(IsSmall(x), series, large);
    }

    private static Vector<double> IsSmall(Vector<double> x) => Vector.LessThan(x, new Vector<double>(SeriesLimit)).As<long, double>();

    private static bool AreClose(double x, double y) => Math.Min(x, y) >= 0.9 * Math.Max(x, y);

    // L(x)/x, from 1/3 at 0
    private static double LangevinRatio(double x) => x > 0 ? Langevin(x) / x : 1.0 / 3;

    // (L(x)/x)', negative; for arguments that are not small
    private static double SlopeOfRatio(double x) => (LangevinDerivative(x) - (Langevin(x) / x)) / x;

    // The divided difference of L(x)/x by x²: Σ c_n (p^n - q^n) / (p - q), the quotient of powers as a sum of products.
    private static double SquareDifference(double p, double q)
    {
        double sum = 0, powers = 1, power = 1;
        for (int n = 1; n < DifferenceTerms; n++)
        {
            sum += s_difference[n] * powers;
            power *= q;
            powers = (powers * p) + power;
        }

        return sum;
    }

    // Σ term(n, c_n) y^n
    private static double Series(double y, Func<int, double, double> term)
    {
        double sum = 0;
        for (int n = s_langevin.Length - 1; n >= 0; n--)
        {
            sum = (sum * y) + term(n, s_langevin[n]);
        }

        return sum;
    }

    // The mean of a function between two close arguments by five Gauss points.
    private static double Mean(Func<double, double> function, double x, double y)
    {
        ReadOnlySpan<double> points = [0, 0.5384693101056831, 0.9061798459386640];
        ReadOnlySpan<double> weights = [0.5688888888888889, 0.4786286704993665, 0.2369268850561891];
        double middle = 0.5 * (x + y), half = 0.5 * (x - y);
        double sum = weights[0] * function(middle);
        for (int i = 1; i < points.Length; i++)
        {
            sum += weights[i] * (function(middle + (half * points[i])) + function(middle - (half * points[i])));
        }

        return 0.5 * sum;
    }

    // c_n as above, and from there on (-1)^n 2 ζ(2n+2) / π^(2n+2), the zeta function by its first terms.
    private static readonly double[] s_difference =
    [
        .. s_langevin,
        .. Enumerable.Range(s_langevin.Length, DifferenceTerms - s_langevin.Length).Select(n =>
            (n % 2 == 0 ? 2 : -2) * (1 + Math.Pow(2, -(2 * n) - 2) + Math.Pow(3, -(2 * n) - 2) + Math.Pow(4, -(2 * n) - 2)) * Math.Pow(Math.PI, -(2 * n) - 2)),
    ];

    // χ(y) = (1 - φ(y)) / y = Σ (-y)^k / (k+2)! with φ(y) = (1 - e^{-y}) / y, from 1/2 at 0, for small arguments
    private static double Second(double y)
    {
        double sum = 0;
        for (int k = s_second.Length - 1; k >= 0; k--)
        {
            sum = s_second[k] - (y * sum);
        }

        return sum;
    }

    private static Vector<double> Second(Vector<double> y)
    {
        Vector<double> sum = Vector<double>.Zero;
        for (int k = s_second.Length - 1; k >= 0; k--)
        {
            sum = new Vector<double>(s_second[k]) - (y * sum);
        }

        return sum;
    }

    // e^y - 1 without cancellation, after W. Kahan's device (from memory).
    private static double ExpMinusOne(double y)
    {
        double u = Math.Exp(y);
        if (u == 1)
        {
            return y;
        }

        double difference = u - 1;
        return difference == -1 ? -1 : difference * y / Math.Log(u);
    }
}
