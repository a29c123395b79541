using CsCheck;
using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// The exact impedance against the nodal equations of random networks, solved by matrix exponentials:
/// redundant and parallel capacitors, series resistances, two to four phases, both kinds of load.
/// </summary>
[Trait("Kind", "Law")]
public sealed class MatrixExponentialTests
{
    // Reached: see docs/performance.md; the oracle itself loses digits where a period is short against the slowest time constant.
    private const double Tolerance = 1e-8;

    private static readonly double[] s_timesCorner = [0.03, 0.3, 1, 3, 30];

    [Fact]
    public void A_known_exponential_is_met()
    {
        // exp of t·[[0, -1], [1, 0]] is a rotation by t
        var matrix = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.DenseOfArray(new double[,] { { 0, -20 }, { 20, 0 } });
        var result = MatrixExponential.Of(matrix);
        Assert.Equal(Math.Cos(20), result[0, 0], 1e-13);
        Assert.Equal(Math.Sin(20), result[1, 0], 1e-13);
    }

    [Theory]
    [InlineData(LoadKind.Stiff)]
    [InlineData(LoadKind.Current)]
    public void Networks_with_consistent_voltages_agree(LoadKind load) =>
        Check(ConsistentNetworks.Gen(load).Select(s => s.Converter), 700);

    [Fact]
    public void Networks_of_any_kind_agree() => Check(RandomNetworks.Any.Select(s => s.Build()), 500);

    private static void Check(Gen<Converter> converters, int iterations)
    {
        int compared = 0;
        converters.Holds(
            converter =>
            {
                if (ModeAnalysis.Try(converter, converter.Modes[0]).Analysis is not { } analysis)
                {
                    return;
                }

                OutputImpedance impedance = OutputImpedance.Of(analysis);
                // where no capacitor matters the slow limit is rounding
                double corner = impedance.CornerFrequencyHz > 1e-9 ? impedance.CornerFrequencyHz : 1;
                foreach (double frequencyHz in s_timesCorner.Select(t => t * corner))
                {
                    double expected = PeriodicOracle.Of(analysis).ByExponential(frequencyHz), actual = impedance.Ohms(frequencyHz);
                    Assert.True(
                        Math.Abs(expected - actual) <= Tolerance * expected,
                        $"At {frequencyHz:R} Hz expected {expected:R}, but got {actual:R} ({Math.Abs(expected - actual) / expected:e1}).");
                    Interlocked.Increment(ref compared);
                }
            },
            count: iterations,
            print: converter => NetworkSketch.Of(converter).ToString());
        Assert.True(compared >= iterations / 2, $"Only {compared} impedances of {iterations} networks were compared.");
    }
}
