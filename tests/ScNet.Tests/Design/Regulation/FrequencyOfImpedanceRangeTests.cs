using ScNet.Analysis;
using ScNet.Design.Regulation;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Regulation;

/// <summary>Impedances and frequencies over many decades, and how many impedances it takes.</summary>
public sealed class FrequencyOfImpedanceRangeTests
{
    private static readonly ModeAnalysis s_analysis = ModeAnalysis.Of(SeriesParallel.StepDown(2, 1e-9, 2));

    [Fact]
    public void A_floor_of_zero_is_no_frequency()
    {
        ArgumentOutOfRangeException thrown = Assert.Throws<ArgumentOutOfRangeException>(() => FrequencyOfImpedance.Of(OutputImpedance.Of(s_analysis), new(0, 1e6)));
        Assert.Equal(("frequencyHz", 0.0), (thrown.ParamName, thrown.ActualValue));
    }

    /// <summary>R = f⁻²⁰ over 28 decades: the logarithm goes from 645 to -645 and has rounding of its own.</summary>
    [Fact]
    public void However_steeply_it_falls_it_is_where_the_power_has_the_value()
    {
        FrequencyOfImpedance frequency = Of(u => -20 * u, new(1e-14, 1e14));
        Assert.All(Enumerable.Range(0, 200), k =>
        {
            double lnHertz = -32 + (0.32 * k);
            Assert.Equal(lnHertz, Math.Log(frequency.HertzAt(Math.Exp(-20 * lnHertz))), 1e-11);
        });
    }

    /// <summary>ln R of a millionth is known to 1e-10 of itself at best, since R is 1 and its rounding 1e-16; of R it is enough.</summary>
    [Fact]
    public void Next_to_one_ohm_it_takes_no_more_impedances_than_elsewhere()
    {
        int count = 0;
        FrequencyOfImpedance frequency = Of(
            u =>
            {
                count++;
                return 1e-6 * Math.Exp(-0.1 * u);
            },
            new(1, 1e4));
        Assert.InRange(count, 1, 100);
        Assert.Equal(1, frequency.LeastOhms, 1e-6);
    }

    private static FrequencyOfImpedance Of(Func<double, double> lnOhmsAt, Interval<double> hertz) => FrequencyOfImpedance.Of(
        new OutputImpedance(s_analysis, period => Math.Exp(lnOhmsAt(-Math.Log(period))), _ => throw new InvalidOperationException("Expected impedances alone.")), hertz);
}
