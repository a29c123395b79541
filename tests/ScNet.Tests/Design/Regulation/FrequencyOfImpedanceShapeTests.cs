using ScNet.Analysis;
using ScNet.Design.Regulation;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Regulation;

/// <summary>The inverse of impedances whose logarithm is a polynomial of that of the frequency, so that it has a closed form.</summary>
public sealed class FrequencyOfImpedanceShapeTests
{
    private const double LowestAt = 5;

    private static readonly ModeAnalysis s_analysis = ModeAnalysis.Of(SeriesParallel.StepDown(2, 1e-9, 2));

    private static readonly Interval<double> s_hertz = new(1, Math.Exp(10));

    [Fact]
    public void Of_one_over_the_frequency_it_is_one_over_the_impedance()
    {
        FrequencyOfImpedance frequency = Of(u => -u);
        Assert.All([1.5, 7, 300, 20000], hertz => Assert.Equal(1, frequency.HertzAt(1 / hertz) / hertz, 1e-11));
        Assert.Equal(1, frequency.OhmsAtFloor, 1e-12);
        Assert.Equal(Math.Exp(-10), frequency.LeastOhms, 1e-15);
    }

    /// <summary>ln R = (u - 5)² has every value above zero twice, at 5 - d and 5 + d with d its root; the lower frequency is wanted.</summary>
    [Fact]
    public void Of_a_dip_it_is_on_the_falling_side_however_near_to_the_bottom()
    {
        FrequencyOfImpedance frequency = Of(u => (u - LowestAt) * (u - LowestAt));
        foreach (int step in Enumerable.Range(0, 120))
        {
            double beside = 4.9 * Math.Pow(0.9, step);
            Assert.Equal(LowestAt - beside, Math.Log(frequency.HertzAt(Math.Exp(beside * beside))), 1e-9 + (1e-12 / beside));
        }
    }

    /// <summary>A steep fall to a flat bottom: (1 - u/5)⁸ bends much more strongly than its chord tells.</summary>
    [Fact]
    public void Of_a_steep_fall_to_a_flat_bottom_it_is_where_the_power_has_the_value()
    {
        FrequencyOfImpedance frequency = Of(u => 20 * Math.Pow(1 - (u / LowestAt), 8));
        foreach (int step in Enumerable.Range(1, 60))
        {
            double beside = 0.95 * Math.Pow(0.95, step);
            Assert.Equal(LowestAt * (1 - beside), Math.Log(frequency.HertzAt(Math.Exp(20 * Math.Pow(beside, 8)))), 1e-9 + (1e-13 / Math.Pow(beside, 7)));
        }
    }

    /// <summary>ln R = -(u - 5)⁵/100 is level at 5, from where tangents lead far beyond.</summary>
    [Fact]
    public void After_a_level_stretch_it_is_where_the_power_has_the_value()
    {
        FrequencyOfImpedance frequency = Of(u => -Math.Pow(u - LowestAt, 5) / 100);
        foreach (int step in Enumerable.Range(0, 40))
        {
            double beyond = 0.5 + (0.05 * step);
            Assert.Equal(LowestAt + beyond, Math.Log(frequency.HertzAt(Math.Exp(-Math.Pow(beyond, 5) / 100))), 1e-9);
            Assert.Equal(LowestAt - beyond, Math.Log(frequency.HertzAt(Math.Exp(Math.Pow(beyond, 5) / 100))), 1e-9);
        }
    }

    /// <summary>At the bottom, R = 1, the impedance rises on both sides: no other frequency will do.</summary>
    [Fact]
    public void The_least_impedance_is_at_the_bottom_of_the_dip()
    {
        FrequencyOfImpedance frequency = Of(u => (u - LowestAt) * (u - LowestAt));
        Assert.Equal(1, frequency.LeastOhms);
        Assert.Equal(LowestAt, Math.Log(frequency.HertzAt(1)), 1e-6);
        Assert.Equal(s_hertz.Maximum, frequency.HertzAt(0.999));
    }

    /// <summary>ln R = -(u - 2)(u - 5)(u - 8)/10 falls through 0 at 8 a second time after having risen from 2.8 to above it between 5 and 8.</summary>
    [Fact]
    public void Beyond_a_dip_and_a_rise_it_is_on_the_second_fall()
    {
        FrequencyOfImpedance frequency = Of(Cubic);

        // the first fall ends at 5 - √3: above its value there the first fall has it, below the second
        double bottom = Cubic(LowestAt - Math.Sqrt(3));
        foreach (double place in new[] { 0.5, 1, 2, 2.5 })
        {
            Assert.Equal(place, Math.Log(frequency.HertzAt(Math.Exp(Cubic(place)))), 1e-9);
        }

        foreach (double place in new[] { 8.6, 9, 9.5, 9.9 })
        {
            Assert.True(Cubic(place) < bottom);
            Assert.Equal(place, Math.Log(frequency.HertzAt(Math.Exp(Cubic(place)))), 1e-9);
        }

        static double Cubic(double u) => -(u - 2) * (u - LowestAt) * (u - 8) / 10;
    }

    private static FrequencyOfImpedance Of(Func<double, double> lnOhmsAt) => FrequencyOfImpedance.Of(
        new OutputImpedance(s_analysis, period => Math.Exp(lnOhmsAt(-Math.Log(period))), _ => throw new InvalidOperationException("Expected impedances alone.")), s_hertz);
}
