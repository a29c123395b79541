using CsCheck;
using ScNet.Numerics;

namespace ScNet.Tests.Numerics;

/// <summary>
/// Every function of a mode against its literal definition in 640 binary places, from products of rate
/// and duration of 1e-12 up to 1e6.
/// </summary>
[Trait("Kind", "Law")]
public sealed class ModalFunctionsTests
{
    private const double Tolerance = 1e-13;

    // a phase of 0.37 s, so that neither rates nor durations are round
    private const double Duration = 0.37;

    private const int Iterations = 3000;

    private static readonly Gen<double> s_argument = Gen.Double[-12, 6].Select(e => Math.Pow(10, e));

    private static readonly Gen<double> s_rate = s_argument.Select(x => x / Duration);

    // from equal to the last digit through a tenth and a half to many decades apart
    private static readonly Gen<(double A, double B)> s_rates = Gen.OneOf(
        Gen.Select(s_rate, s_rate),
        Gen.Select(s_rate, Gen.Double[-17, 0.5], (a, e) => (a, a * (1 + Math.Pow(10, e)))),
        Gen.Select(s_rate, Gen.Double[-17, -0.1], (a, e) => (a, a * (1 - Math.Pow(10, e)))));

    [Fact]
    public void The_oracle_knows_e()
    {
        Assert.Equal(1 / Math.E, (double)BigReal.Exp(-1), 1e-16);
        Assert.Equal(Math.Exp(-300), (double)BigReal.Exp(-300), 1e-13 * Math.Exp(-300));
        Assert.Equal(-0.1, (double)(BigReal)(-0.1));
        Assert.Equal(1 - 1e-40, (double)(BigReal.Exp(-1e-40) + 0), 1e-16);
    }

    [Fact]
    public void Langevin_is_accurate() => s_argument.Holds(x => AssertNear(Langevin(x), ModalFunctions.Langevin(x)), count: Iterations);

    [Fact]
    public void Its_derivative_is_accurate() => s_argument.Holds(x =>
    {
        BigReal e = BigReal.Exp(-2 * (BigReal)x), y = x;
        AssertNear((1 / (y * y)) - (4 * e / ((1 - e) * (1 - e))), ModalFunctions.LangevinDerivative(x));
    }, count: Iterations);

    [Fact]
    public void Excess_and_its_derivative_are_accurate() => s_rate.Holds(rate =>
    {
        BigReal x = (BigReal)rate * Duration / 2, e = BigReal.Exp(-2 * x);
        AssertNear(Langevin(x) / (2 * (BigReal)rate), ModalFunctions.Excess(rate, Duration));
        AssertNear(((1 / (x * x)) - (4 * e / ((1 - e) * (1 - e)))) / 4, ModalFunctions.ExcessByDuration(rate, Duration));
    }, count: Iterations);

    [Fact]
    public void Overlap_is_accurate() => s_rates.Holds((a, b) =>
    {
        // the integral of two decaying exponentials less the mean of each
        BigReal ea = Decay(a), eb = Decay(b), sum = (BigReal)a + b;
        BigReal expected = ((1 - (ea * eb)) / (sum * (1 - ea) * (1 - eb))) - (1 / ((BigReal)a * b * Duration));
        AssertNear(expected, ModalFunctions.Overlap(a, b, Duration));
    }, count: Iterations);

    [Fact]
    public void Reversed_overlap_is_accurate() => s_rates.Holds((a, b) =>
    {
        // the integral of a decaying exponential and one that decays backwards in time, less the means
        BigReal ea = Decay(a), eb = Decay(b), product = (1 - ea) * (1 - eb);
        BigReal integral = a == b ? Duration * ea / product : (eb - ea) / (((BigReal)a - b) * product);
        AssertNear(integral - (1 / ((BigReal)a * b * Duration)), ModalFunctions.ReversedOverlap(a, b, Duration));
    }, count: Iterations);

    [Fact]
    public void Excess_difference_is_accurate() => s_rates.Holds((a, b) =>
    {
        if (a != b)
        {
            BigReal first = Langevin((BigReal)a * Duration / 2) / (2 * (BigReal)a);
            BigReal second = Langevin((BigReal)b * Duration / 2) / (2 * (BigReal)b);
            AssertNear((first - second) / ((BigReal)a - b), ModalFunctions.ExcessDifference(a, b, Duration));
        }
    }, count: Iterations);

    [Fact]
    public void Excess_difference_of_equal_rates_is_the_derivative() => s_rate.Holds(rate =>
    {
        // by the chain rule on L(λτ/2) / (2λ)
        BigReal l = rate, x = l * Duration / 2, e = BigReal.Exp(-2 * x);
        BigReal slope = (1 / (x * x)) - (4 * e / ((1 - e) * (1 - e)));
        AssertNear((slope * Duration / (4 * l)) - (Langevin(x) / (2 * l * l)), ModalFunctions.ExcessDifference(rate, rate, Duration));
    }, count: Iterations);

    [Fact]
    public void Shapes_are_accurate() => Gen.Select(s_rate, Gen.OneOf(Gen.Double[0, 1], Gen.Const(0.0), Gen.Const(1.0))).Holds((rate, part) =>
    {
        double time = part * Duration, x = rate * Duration;
        BigReal l = rate, whole = 1 - Decay(rate), left = BigReal.Exp(-(l * time));
        BigReal shape = (left / whole) - (1 / (l * Duration));
        BigReal slope = -l * left / whole;
        BigReal integral = ((1 - left) / (whole * l)) - ((BigReal)time / (l * Duration));

        // both pass through zero within the phase, so the scale is what they reach elsewhere in it
        double scale = Math.Max(Math.Abs((double)shape), Math.Min(0.5, 1 / x));
        Assert.Equal((double)shape, ModalFunctions.Shape(rate, Duration, time), Tolerance * scale);
        Assert.Equal((double)integral, ModalFunctions.ShapeIntegral(rate, Duration, time), Tolerance * Math.Min(Duration / 8, 1 / rate));

        // the product of rate and time is rounded, which an exponential magnifies
        Assert.Equal((double)slope, ModalFunctions.ShapeByTime(rate, Duration, time), ((Tolerance + (2e-16 * rate * time)) * Math.Abs((double)slope)) + 1e-150);
    }, count: Iterations);

    [Fact]
    public void A_rate_of_zero_is_the_limit_of_small_rates()
    {
        const double Small = 1e-9;
        Assert.Equal(ModalFunctions.Excess(Small, Duration), ModalFunctions.Excess(0, Duration), 1e-15);
        Assert.Equal(ModalFunctions.ExcessByDuration(Small, Duration), ModalFunctions.ExcessByDuration(0, Duration), 1e-15);
        Assert.Equal(ModalFunctions.Overlap(Small, Small, Duration), ModalFunctions.Overlap(0, 0, Duration), 1e-15);
        Assert.Equal(ModalFunctions.ReversedOverlap(Small, Small, Duration), ModalFunctions.ReversedOverlap(0, 0, Duration), 1e-15);
        Assert.Equal(0, ModalFunctions.ExcessDifference(0, 0, Duration));
        AssertNear(ModalFunctions.ExcessDifference(Small, 3, Duration), ModalFunctions.ExcessDifference(0, 3, Duration), 1e-8);
        for (int k = 0; k <= 4; k++)
        {
            double time = k * Duration / 4;
            Assert.Equal(0.5 - (k / 4.0), ModalFunctions.Shape(0, Duration, time), 1e-15);
            Assert.Equal(-1 / Duration, ModalFunctions.ShapeByTime(0, Duration, time), 1e-15);
            Assert.Equal(Duration * k / 4.0 * (1 - (k / 4.0)) / 2, ModalFunctions.ShapeIntegral(0, Duration, time), 1e-16);
        }
    }

    [Fact]
    public void Extreme_arguments_stay_finite()
    {
        foreach (double rate in new[] { 5e-324, 1e-300, 1e-160, 1e160, 1e290 })
        {
            foreach (double duration in new[] { 1e-9, 1.0, 1e9 })
            {
                Assert.True(double.IsFinite(ModalFunctions.Excess(rate, duration)), $"Excess({rate}, {duration})");
                Assert.True(double.IsFinite(ModalFunctions.ExcessByDuration(rate, duration)), $"ExcessByDuration({rate}, {duration})");
                Assert.True(double.IsFinite(ModalFunctions.Overlap(rate, 1, duration)), $"Overlap({rate}, 1, {duration})");
                Assert.True(double.IsFinite(ModalFunctions.ReversedOverlap(rate, 1, duration)), $"ReversedOverlap({rate}, 1, {duration})");
                Assert.True(double.IsFinite(ModalFunctions.ExcessDifference(rate, rate, duration)), $"ExcessDifference({rate}, {rate}, {duration})");
                Assert.True(double.IsFinite(ModalFunctions.ExcessDifference(rate, 1, duration)), $"ExcessDifference({rate}, 1, {duration})");
                Assert.True(double.IsFinite(ModalFunctions.Shape(rate, duration, duration / 3)), $"Shape({rate}, {duration})");
                Assert.True(double.IsFinite(ModalFunctions.ShapeByTime(rate, duration, duration / 3)), $"ShapeByTime({rate}, {duration})");
                Assert.True(double.IsFinite(ModalFunctions.ShapeIntegral(rate, duration, duration / 3)), $"ShapeIntegral({rate}, {duration})");
            }
        }
    }

    [Fact]
    public void Many_modes_at_once_are_as_accurate_as_one() =>
        Gen.Select(s_rate.Array[1, 70], s_argument, Gen.Double[0.05, 0.95]).Holds((rates, period, duty) =>
        {
            double[] duties = [.. rates.Select((_, r) => r % 2 == 0 ? duty : 1 - duty)];
            double[] excess = AllAtOnce(rates, duties, period);
            for (int r = 0; r < rates.Length; r++)
            {
                BigReal x = (BigReal)rates[r] * duties[r] * period / 2;
                AssertNear(Langevin(x) / (2 * (BigReal)rates[r]), excess[r]);
            }
        });

    [Theory]
    [InlineData(5e-324)]
    [InlineData(1e-160)]
    [InlineData(1e290)]
    public void Many_modes_at_once_stay_finite_at_extremes(double rate)
    {
        foreach (double period in new[] { 1e-60, 1.0, 1e60 })
        {
            Assert.True(double.IsFinite(AllAtOnce([rate], [0.5], period)[0]), $"{rate}, {period}");
        }
    }

    private static double[] AllAtOnce(double[] rates, double[] duties, double period)
    {
        ModalExcess modes = new(rates, duties);
        var turn = new double[ModalExcess.Turn];
        List<double> all = [];
        for (int first = 0; first < rates.Length; first += turn.Length)
        {
            modes.Evaluate(period, first, turn);
            all.AddRange(turn);
        }

        return [.. all.Take(rates.Length)];
    }

    private static BigReal Decay(double rate) => BigReal.Exp(-((BigReal)rate * Duration));

    private static BigReal Langevin(BigReal x)
    {
        BigReal e = BigReal.Exp(-2 * x);
        return ((1 + e) / (1 - e)) - (1 / x);
    }

    private static void AssertNear(BigReal expected, double actual, double tolerance = Tolerance)
    {
        double value = (double)expected;
        Assert.True(
            Math.Abs(value - actual) <= tolerance * Math.Abs(value),
            $"Expected {value:R}, but got {actual:R} ({Math.Abs((value - actual) / value):e1}).");
    }
}
