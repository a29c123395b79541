using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// The functions of a phase of τ = 0.5 s by their definitions in docs/theory/output-impedance.md,
/// ψ(t) = exp(-λt)/(1 - exp(-λτ)) - 1/(λτ) and Ψ its integral from the start, written down as they stand.
/// </summary>
public sealed class PhaseBasisTests
{
    private const double Seconds = 0.5;

    private static readonly double[] s_rates = [3, 2, 5, 4, 7, 12];
    private static readonly double[] s_weights = [2, -3, 0, 5, 0, 7];
    private static readonly double[] s_times = [0, 0.07, 0.31, 0.5];

    [Fact]
    public void Sums_over_modes_are_those_of_the_definitions()
    {
        PhaseBasis basis = new(s_rates, Seconds);
        foreach (double time in s_times)
        {
            Assert.Equal(Sum(time, Shape), basis.Shapes(s_weights, time), 1e-13);
            Assert.Equal(Sum(time, Slope), basis.Slopes(s_weights, time), 1e-12);
            Assert.Equal(Sum(time, Integral), basis.Integrals(s_weights, time), 1e-13);
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(5)]
    public void Any_number_of_modes_is_summed(int count)
    {
        PhaseBasis basis = new(s_rates[^count..], Seconds);
        double[] weights = s_weights[^count..];
        double expected = Enumerable.Range(0, count).Sum(k => weights[k] * Shape(basis.Rates[k], 0.2));
        Assert.Equal(expected, basis.Shapes(weights, 0.2), 1e-13);
        Assert.Equal(0, basis.Shapes([], 0.2));
    }

    [Fact]
    public void Every_mode_has_its_values_at_every_grid_point()
    {
        PhaseBasis basis = new(s_rates, Seconds);
        for (int p = 0; p < basis.Grid.Length; p++)
        {
            double time = basis.Grid[p];
            AssertNear([.. s_rates.Select(r => Shape(r, time))], basis.ShapesAt(p));
            AssertNear([.. s_rates.Select(r => Slope(r, time))], basis.SlopesAt(p));
            AssertNear([.. s_rates.Select(r => Integral(r, time))], basis.IntegralsAt(p));
        }
    }

    [Fact]
    public void Overlaps_are_the_integrals_of_products_of_shapes()
    {
        PhaseBasis basis = new([3, 2, 12], Seconds);
        for (int k = 0; k < 3; k++)
        {
            double[] expected = [.. basis.Rates.Select(other => Simpson(t => Shape(basis.Rates[k], t) * Shape(other, t)))];
            AssertNear(expected, basis.Overlaps(k));
        }
    }

    [Theory]
    [InlineData(2, new double[0])]
    [InlineData(0.25, new[] { 4.0, 1.0 })]
    [InlineData(6, new[] { 0.15 })]
    public void Without_a_mode_that_falls_in_the_phase_the_grid_is_even(double seconds, double[] rates) =>
        AssertNear([.. Enumerable.Range(0, 25).Select(i => seconds * i / 24)], new PhaseBasis(rates, seconds).Grid);

    // from a fiftieth of the fastest time constant, 0.1 s, six times a decade: 2 ms times 10^(k/6) stays below 1 s up to k = 16
    [Fact]
    public void From_a_fiftieth_of_the_fastest_time_constant_on_six_points_a_decade_are_added()
    {
        double[] even = [.. Enumerable.Range(0, 25).Select(i => i / 24.0)];
        double[] graded = [.. Enumerable.Range(0, 17).Select(k => 2e-3 * Math.Pow(10, k / 6.0))];
        AssertNear([.. even.Concat(graded).Order()], new PhaseBasis([0.1, 10, 1], 1).Grid);
    }

    private static double Sum(double time, Func<double, double, double> function) => s_rates.Zip(s_weights, (rate, weight) => weight * function(rate, time)).Sum();

    private static double Shape(double rate, double time) => (Math.Exp(-rate * time) / (1 - Math.Exp(-rate * Seconds))) - (1 / (rate * Seconds));

    private static double Slope(double rate, double time) => -rate * Math.Exp(-rate * time) / (1 - Math.Exp(-rate * Seconds));

    private static double Integral(double rate, double time) => ((1 - Math.Exp(-rate * time)) / (1 - Math.Exp(-rate * Seconds)) / rate) - (time / (rate * Seconds));

    private static double Simpson(Func<double, double> function)
    {
        const int Steps = 4000;
        double step = Seconds / Steps;
        return step / 3 * Enumerable.Range(0, Steps + 1).Sum(i => (i is 0 or Steps ? 1 : i % 2 == 0 ? 2 : 4) * function(i * step));
    }

    private static void AssertNear(double[] expected, ReadOnlySpan<double> actual)
    {
        Assert.Equal(expected.Length, actual.Length);
        for (int k = 0; k < expected.Length; k++)
        {
            Assert.Equal(expected[k], actual[k], 1e-10 * Math.Max(1, Math.Abs(expected[k])));
        }
    }
}
