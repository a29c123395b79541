using ScNet.Analysis;
using ScNet.Design.Regulation;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Regulation;

/// <summary>An impedance that falls and rises again: its bottom counts wherever it lies between the places that are sampled.</summary>
public sealed class FrequencyOfImpedanceBottomTests
{
    private static readonly ModeAnalysis s_analysis = ModeAnalysis.Of(SeriesParallel.StepDown(2, 1e-9, 2));

    /// <summary>ln R = (u - b)² is zero at its bottom, b, and has the value d² first at b - d.</summary>
    [Fact]
    public void The_least_impedance_is_that_of_the_bottom_and_everything_above_it_is_reached()
    {
        foreach (double bottom in (double[])[0.05, .. Enumerable.Range(0, 40).Select(k => 3 + (0.1 * k))])
        {
            FrequencyOfImpedance frequency = Of(u => (u - bottom) * (u - bottom));
            Assert.Equal(1, frequency.LeastOhms, 1e-11);
            foreach (double beside in new[] { 0.001, 0.01, 0.1, 0.3 }.Where(d => d < bottom))
            {
                Assert.Equal(bottom - beside, Math.Log(frequency.HertzAt(Math.Exp(beside * beside))), 1e-7);
            }
        }
    }

    /// <summary>ln R = -(u - 2)(u - 5)(u - 8)/10 falls to 5 - √3, where 3 (u - 5)² = 9, rises to 5 + √3 and falls again to below where it was.</summary>
    [Fact]
    public void Just_above_the_bottom_it_is_on_the_first_fall_and_just_below_on_the_second()
    {
        FrequencyOfImpedance frequency = Of(Cubic);
        double first = 5 - Math.Sqrt(3);
        Assert.Equal(first - 0.01, Math.Log(frequency.HertzAt(Math.Exp(Cubic(first - 0.01)))), 1e-8);
        double below = Cubic(first) - 1e-6, second = Math.Log(frequency.HertzAt(Math.Exp(below)));
        Assert.InRange(second, 8, 9);
        Assert.Equal(below, Cubic(second), 1e-10);

        static double Cubic(double u) => -(u - 2) * (u - 5) * (u - 8) / 10;
    }

    /// <summary>ln R = (u - 3)² (u - b)²/20 - (u - 3)/5: of its two bottoms the second one is the lower one.</summary>
    [Fact]
    public void Of_two_bottoms_the_second_and_lower_one_is_found_from_its_left()
    {
        foreach (int step in Enumerable.Range(0, 40))
        {
            double beyond = 6 + (0.03 * step);
            double LnOhms(double u) => ((u - 3) * (u - 3) * (u - beyond) * (u - beyond) / 20) - ((u - 3) / 5);
            FrequencyOfImpedance frequency = Of(LnOhms);
            foreach (double beside in new[] { 0.003, 0.03, 0.15 })
            {
                // it is lower there than anywhere before, and still falls
                double place = beyond - beside, value = LnOhms(place);
                Assert.All(Enumerable.Range(0, 100), k => Assert.True(LnOhms(0.01 * k * place) > value));
                Assert.Equal(place, Math.Log(frequency.HertzAt(Math.Exp(value))), 1e-9);
            }
        }
    }

    /// <summary>ln R = ((u - 3)² + 1/5) (u - b)⁴/80 has a dip near 3 and a flat bottom at b, towards which tangents lead far astray.</summary>
    [Fact]
    public void On_the_way_to_a_flat_bottom_beyond_a_dip_it_is_found_all_the_same()
    {
        foreach (int step in Enumerable.Range(0, 20))
        {
            double flat = 6 + (0.07 * step);
            double LnOhms(double u) => (((u - 3) * (u - 3)) + 0.2) * Math.Pow(u - flat, 4) / 80;
            FrequencyOfImpedance frequency = Of(LnOhms);
            foreach (double beside in new[] { 0.02, 0.05, 0.1, 0.2, 0.4 })
            {
                double place = flat - beside, value = LnOhms(place);
                Assert.All(Enumerable.Range(0, 100), k => Assert.True(LnOhms(0.01 * k * place) > value));
                Assert.Equal(place, Math.Log(frequency.HertzAt(Math.Exp(value))), 1e-9 + (1e-12 / Math.Pow(beside, 3)));
            }
        }
    }

    private static FrequencyOfImpedance Of(Func<double, double> lnOhmsAt) => FrequencyOfImpedance.Of(
        new OutputImpedance(s_analysis, period => Math.Exp(lnOhmsAt(-Math.Log(period))), _ => throw new InvalidOperationException("Expected impedances alone.")),
        new(1, Math.Exp(10)));
}
