namespace ScNet.SteadyState;

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

    // L(x) = Σ c_n x^(2n+1) with c_n = 2^(2n+2) B_(2n+2) / (2n+2)!
    private static readonly double[] s_langevin =
    [
        1.0 / 3, -1.0 / 45, 2.0 / 945, -1.0 / 4725, 2.0 / 93555, -1382.0 / 638512875, 4.0 / 18243225,
        -3617.0 / 162820783125, 87734.0 / 38979295480125, -349222.0 / 1531329465290625,
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
    public static double Overlap(double rate, double otherRate, double duration) => rate + otherRate > 0
        ? (Langevin(0.5 * rate * duration) + Langevin(0.5 * otherRate * duration)) / (2 * (rate + otherRate))
        : duration / 12;

    /// <summary>
    /// The integral of ψ_k(t) ψ_l(τ - t) over a phase, in seconds: minus half the divided difference of
    /// L(λτ/2) between the two rates.
    /// </summary>
    public static double ReversedOverlap(double rate, double otherRate, double duration) =>
        -0.5 * DividedDifference(
            rate,
            otherRate,
            r => Langevin(0.5 * r * duration),
            r => 0.5 * duration * LangevinDerivative(0.5 * r * duration));

    /// <summary>The divided difference of <see cref="Excess"/> between two rates, in s².</summary>
    public static double ExcessDifference(double rate, double otherRate, double duration) =>
        DividedDifference(rate, otherRate, r => Excess(r, duration), r => ExcessByRate(r, duration));

    /// <summary>
    /// ψ(t) = exp(-λt) / (1 - exp(-λτ)) - 1/(λτ): the shape of a mode's current about its mean, without a
    /// unit; 1/2 - t/τ at rate zero. Its integral over the phase is zero.
    /// </summary>
    public static double Shape(double rate, double duration, double time)
    {
        double x = rate * duration;
        if (x < SeriesLimit)
        {
            return BernoulliShape(x, time / duration);
        }

        return (Math.Exp(-rate * time) / -ExpMinusOne(-x)) - (1 / x);
    }

    /// <summary>The derivative of <see cref="Shape"/> by time, in 1/s.</summary>
    public static double ShapeByTime(double rate, double duration, double time)
    {
        double x = rate * duration;
        return x > 0 ? -rate * Math.Exp(-rate * time) / -ExpMinusOne(-x) : -1 / duration;
    }

    /// <summary>The integral of <see cref="Shape"/> from the start of the phase, in seconds; zero at both ends.</summary>
    public static double ShapeIntegral(double rate, double duration, double time)
    {
        double x = rate * duration, s = time / duration;
        if (x < SeriesLimit)
        {
            return duration * BernoulliShapeIntegral(x, s);
        }

        return ((ExpMinusOne(-rate * time) / ExpMinusOne(-x)) - s) / rate;
    }

    private static double ExcessByRate(double rate, double duration)
    {
        double x = 0.5 * rate * duration;
        if (x < SeriesLimit)
        {
            // the derivative of (τ/4) L(x)/x by λ is (τ²/8) (L/x)'
            double slope = x > 0 ? Series(x * x, (n, c) => 2 * n * c) / x : 0;
            return duration * duration / 8 * slope;
        }

        return duration * duration / 8 * ((LangevinDerivative(x) / x) - (Langevin(x) / (x * x)));
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

    // Five Gauss points of the derivative where the rates are close, the plain quotient where they are not.
    private static double DividedDifference(double a, double b, Func<double, double> function, Func<double, double> derivative)
    {
        if (Math.Abs(a - b) > 0.1 * Math.Max(a, b))
        {
            return (function(a) - function(b)) / (a - b);
        }

        ReadOnlySpan<double> points = [0, 0.5384693101056831, 0.9061798459386640];
        ReadOnlySpan<double> weights = [0.5688888888888889, 0.4786286704993665, 0.2369268850561891];
        double middle = 0.5 * (a + b), half = 0.5 * (a - b);
        double sum = weights[0] * derivative(middle);
        for (int i = 1; i < points.Length; i++)
        {
            sum += weights[i] * (derivative(middle + (half * points[i])) + derivative(middle - (half * points[i])));
        }

        return 0.5 * sum;
    }

    // ψ as a series in x = λτ with s = t/τ: e^{-xs}/(1-e^{-x}) - 1/x = Σ B_n(1-s) x^(n-1) / n!, Bernoulli polynomials.
    private static double BernoulliShape(double x, double s)
    {
        double u = 1 - s, sum = 0, power = 1;
        for (int n = 1; n < s_bernoulli.Length; n++)
        {
            sum += Bernoulli(n, u) * power / s_factorial[n];
            power *= x;
        }

        return sum;
    }

    // The integral over s from 0 of the same: Σ (B_{n+1}(1) - B_{n+1}(1-s)) x^(n-1) / (n+1)!
    private static double BernoulliShapeIntegral(double x, double s)
    {
        double sum = 0, power = 1;
        for (int n = 1; n < s_bernoulli.Length - 1; n++)
        {
            sum += (Bernoulli(n + 1, 1) - Bernoulli(n + 1, 1 - s)) * power / s_factorial[n + 1];
            power *= x;
        }

        return sum;
    }

    private static readonly double[] s_bernoulli =
    [
        1, -1.0 / 2, 1.0 / 6, 0, -1.0 / 30, 0, 1.0 / 42, 0, -1.0 / 30, 0, 5.0 / 66, 0, -691.0 / 2730, 0, 7.0 / 6, 0, -3617.0 / 510,
    ];

    private static readonly double[] s_factorial = Factorials(s_bernoulli.Length + 1);

    private static double Bernoulli(int n, double u)
    {
        // B_n(u) = Σ binomial(n, k) B_k u^(n-k), by Horner's rule
        double value = 0;
        for (int k = 0; k <= n; k++)
        {
            value = (value * u) + (s_factorial[n] / (s_factorial[k] * s_factorial[n - k]) * s_bernoulli[k]);
        }

        return value;
    }

    private static double[] Factorials(int count)
    {
        var factorials = new double[count];
        factorials[0] = 1;
        for (int n = 1; n < count; n++)
        {
            factorials[n] = n * factorials[n - 1];
        }

        return factorials;
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
