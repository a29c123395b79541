using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>A small ring on a hump, so fast that it turns many times from one sample to the next: exp(-a t) - exp(-b t) + cos(ω t)/10 over 2 s.</summary>
public sealed class TurnsOfRingsTests
{
    private const double Seconds = 2;

    // samples lie 1/32 s apart; the hump is highest at ln(b/a) / (b - a), that is at 8.52, 12.41, 12.88 and 12.97 of these: before and behind the nearest
    [Theory]
    [InlineData(0.1, 20, 1001)]
    [InlineData(1, 5.3, 995)]
    [InlineData(1, 5, 985)]
    [InlineData(1, 5, 987)]
    [InlineData(2, 3, 993)]
    public void The_highest_place_of_the_highest_turn_is_found_before_and_behind_the_nearest_sample(double decay, double faster, double turnsPerSecond)
    {
        double rate = 2 * Math.PI * turnsPerSecond;
        double[] tops = [.. Enumerable.Range(1, (int)turnsPerSecond).Select(k => Top(k / turnsPerSecond))];
        AssertTop(Wave(decay, faster, rate, 1).Extremes().Greatest);
        AssertTop(-Wave(decay, faster, rate, -1).Extremes().Least);

        // that of the highest turn or of one beside it, where the hump has lost less than 10⁻⁵, and just its highest place
        void AssertTop(double found)
        {
            Assert.InRange(found, tops.Max() - 1e-5, tops.Max() + 1e-12);
            Assert.Contains(tops, top => Math.Abs(top - found) < 1e-12);
        }

        // by Newton's iteration on the slope, from where the ring alone is highest
        double Top(double time)
        {
            for (int step = 0; step < 5; step++)
            {
                double slope = (faster * Math.Exp(-faster * time)) - (decay * Math.Exp(-decay * time)) - (0.1 * rate * Math.Sin(rate * time));
                double bend = (decay * decay * Math.Exp(-decay * time)) - (faster * faster * Math.Exp(-faster * time)) - (0.1 * rate * rate * Math.Cos(rate * time));
                time -= slope / bend;
            }

            return Math.Exp(-decay * time) - Math.Exp(-faster * time) + (0.1 * Math.Cos(rate * time));
        }
    }

    // cosine and sine of the ring, two decays, and one input that does nothing
    private static ExponentialWaveform Wave(double decay, double faster, double rate, int sign)
    {
        PhaseEquations<DoubleDouble> equations = new(
            1, Fine([0, -rate, 0, 0, 0, rate, 0, 0, 0, 0, 0, 0, -decay, 0, 0, 0, 0, 0, -faster, 0]), [], [], new DoubleDouble[5], [], [], [], []);
        return new(PhaseTrajectory.From(equations, Fine([1, 0, 1, 1, 1]), DoubleDouble.Of(Seconds)), Fine([0.1 * sign, 0, sign, -sign, 0]));
    }

    private static DoubleDouble[] Fine(double[] values) => Array.ConvertAll(values, DoubleDouble.Of);
}
