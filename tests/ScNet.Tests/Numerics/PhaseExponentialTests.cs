using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using ScNet.Numerics;
using ScNet.Tests.SteadyState;

namespace ScNet.Tests.Numerics;

/// <summary>Change and integral over a phase against exponentials of a matrix that holds them too.</summary>
[Trait("Kind", "Law")]
public sealed class PhaseExponentialTests
{
    private const int States = 3;
    private const int Width = 5;

    private static readonly Gen<double[]> s_generators = Gen.Double[-1, 1].Array[States * Width];

    [Fact]
    public void Plain_precision_agrees_with_the_rational_approximation() => Gen.Select(s_generators, Gen.Double[-9, 1.5]).Holds(
        (values, decade) =>
        {
            double time = Math.Pow(10, decade);
            double[] generator = Damped(values);
            (double[] change, double[] integral) = Run(generator, time, v => new PlainReal(v));
            (double[,] expectedChange, double[,] expectedIntegral) = Expected(generator, time);
            Compare(expectedChange, change, 1e-12 * (1 + time));
            Compare(expectedIntegral, integral, 1e-12 * (1 + time));
        },
        300);

    /// <summary>Against a hundred digits: as exact as doubles can be told apart.</summary>
    [Fact]
    public void Doubled_precision_is_exact_to_the_last_place() => Gen.Select(s_generators, Gen.Double[-9, 2]).Holds(
        (values, decade) =>
        {
            double time = Math.Pow(10, decade);
            double[] generator = Damped(values);
            (double[] change, double[] _) = Run(generator, time, DoubleDouble.Of);
            BigMatrix big = new(Width, Width);
            for (int k = 0; k < generator.Length; k++)
            {
                big[k / Width, k % Width] = (BigReal)generator[k] * time;
            }

            BigMatrix exact = big.Exponential() - BigMatrix.Identity(Width);
            for (int k = 0; k < generator.Length; k++)
            {
                double expected = (double)exact[k / Width, k % Width];
                Assert.Equal(expected, change[k], 4e-16 * Math.Abs(expected) + 1e-28);
            }
        },
        20);

    [Fact]
    public void A_tiny_time_keeps_all_digits()
    {
        double[] generator = [-1, 0.5, 0, 0, 1, 0.25, -2, 1, 1, 0, 0, -1, -1e-9, 0, 3];
        (double[] change, double[] integral) = Run(generator, 1e-200, v => new PlainReal(v));
        for (int k = 0; k < generator.Length; k++)
        {
            Assert.Equal(generator[k] * 1e-200, change[k], 1e-215);
            Assert.Equal(k / Width == k % Width ? 1e-200 : 0, integral[k], 1e-215);
        }
    }

    // a contraction: less the identity, so that long times do not overflow
    private static double[] Damped(double[] values) => [.. values.Select((v, k) => k / Width == k % Width ? v - 3 : v)];

    private static (double[] Change, double[] Integral) Run<T>(double[] generator, double time, Func<double, T> convert)
        where T : struct, IReal<T>
    {
        T[] values = [.. generator.Select(convert)], change = new T[generator.Length], integral = new T[generator.Length];
        PhaseExponential.Of<T>(States, Width, values, PhaseExponential.Norm<T>(values, States, Width), convert(time), change, integral, new T[PhaseExponential.Room(States, Width)]);
        return ([.. change.Select(v => v.Nearest)], [.. integral.Select(v => v.Nearest)]);
    }

    // states, inputs, and the integrals of both
    private static (double[,] Change, double[,] Integral) Expected(double[] generator, double time)
    {
        Matrix<double> matrix = Matrix<double>.Build.Dense(2 * Width, 2 * Width);
        for (int k = 0; k < generator.Length; k++)
        {
            matrix[k / Width, k % Width] = generator[k] * time;
        }

        for (int k = 0; k < Width; k++)
        {
            matrix[Width + k, k] = time;
        }

        Matrix<double> exponential = MatrixExponential.Of(matrix) - Matrix<double>.Build.DenseIdentity(2 * Width);
        return (exponential.SubMatrix(0, States, 0, Width).ToArray(), exponential.SubMatrix(Width, States, 0, Width).ToArray());
    }

    private static void Compare(double[,] expected, double[] actual, double allowed)
    {
        for (int k = 0; k < actual.Length; k++)
        {
            Assert.Equal(expected[k / Width, k % Width], actual[k], allowed);
        }
    }
}
