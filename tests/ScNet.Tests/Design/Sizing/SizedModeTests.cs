using ScNet.Analysis;
using ScNet.Design;
using ScNet.Design.Sizing;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Sizing;

/// <summary>The impedance of a divider by two and its slopes by hand, above the floor of the frequency and below it.</summary>
/// <remarks>
/// One capacitor in loops of r ohms in the halves of the period: the mean of s coth(s/r) over both, s = 1/(4 C f). What is left of a step after half a period
/// is e = exp(-2 s/r) in either; the charge of a period is 2 C ΔV (1 - e)(1 - e')/(1 - e e'), of which the mean follows.
/// </remarks>
public sealed class SizedModeTests
{
    private const double Floor = 1e4, Ceiling = 1e8, Farads = 2e-9, EsrOhms = 3, WiringOhms = 0.5;

    private static readonly double[] s_ohms = [10, 20, 30, 40];

    private static readonly double[] s_loops = [s_ohms[0] + s_ohms[1] + (2 * WiringOhms) + EsrOhms, s_ohms[2] + s_ohms[3] + (2 * WiringOhms) + EsrOhms];

    private static readonly Interval<double> s_hertz = new(Floor, Ceiling);

    private static readonly SizedMode s_mode = Of(LoadKind.Stiff);

    [Theory]
    [InlineData(1.5)]
    [InlineData(2000)]
    [InlineData(Ceiling / Floor)]
    public void Above_the_floor_the_impedance_is_exact(double factor)
    {
        double sharing = 1 / (4 * Farads * factor * Floor), ohms = s_loops.Average(r => sharing / Math.Tanh(sharing / r));
        Assert.Equal(ohms, s_mode.Ohms(factor * Floor), 1e-12 * ohms);
        Assert.Equal(factor * Floor, s_mode.FrequencyOf(ohms), 1e-11 * factor * Floor);
    }

    // 12500 Ω at the floor, where nothing but charge sharing is seen
    [Fact]
    public void Below_the_floor_it_goes_with_the_time_of_a_cycle()
    {
        double atFloor = 1 / (4 * Farads * Floor);
        Assert.Equal(4 * atFloor, s_mode.Ohms(Floor / 4), 1e-11 * atFloor);
        Assert.Equal(Floor / 4, s_mode.FrequencyOf(4 * atFloor), 1e-11 * Floor);

        // a power of two, so that nothing is rounded
        SizedMode mode = Of(LoadKind.Stiff, 32768);
        Assert.Equal(32768, mode.FrequencyOf(mode.Ohms(32768)));
    }

    [Theory]
    [InlineData(1.1)]
    [InlineData(1.3)]
    [InlineData(1.7)]
    [InlineData(2.3)]
    [InlineData(2.9)]
    [InlineData(3.7)]
    [InlineData(4.9)]
    [InlineData(7.3)]
    public void At_the_floor_the_impedance_is_exact_to_the_last_digit(double megahertz)
    {
        SizedMode mode = Of(LoadKind.Stiff, megahertz * 1e6);
        Assert.Equal(SteadyStateModel.Of(mode.Analysis).Impedance.Ohms(megahertz * 1e6), mode.Ohms(megahertz * 1e6));
    }

    // cycles that are left out save no resistance, unlike slower ones
    [Fact]
    public void Below_a_floor_of_fast_cycles_conduction_goes_with_the_time_too()
    {
        const double High = 3e6;
        SizedMode mode = Of(LoadKind.Stiff, High);
        double sharing = 1 / (4 * Farads * High), ohms = s_loops.Average(r => sharing / Math.Tanh(sharing / r));
        Assert.Equal(5 * ohms, mode.Ohms(High / 5), 1e-11 * ohms);
        Assert.True(s_mode.Ohms(High / 5) < 4.9 * ohms);
    }

    [Fact]
    public void The_ceiling_stands_for_what_no_frequency_reaches()
    {
        Assert.Equal(Ceiling, s_mode.FrequencyOf(s_loops.Average() / 2));
        Assert.Equal(Ceiling, s_mode.FrequencyOf(s_mode.Ohms(Ceiling)));
    }

    // two switches carry all, which no frequency changes
    [Fact]
    public void Where_frequency_regulates_nothing_it_is_the_floor()
    {
        SizedMode through = SizedMode.Of(ModeAnalysis.Of(HalfTasks.Through), HalfTasks.Through, s_hertz, 0);
        Assert.True(through.IsTied);
        Assert.Equal(Floor, through.FrequencyOf(0.5));
        Assert.Equal(Floor, through.FrequencyOf(100));
        Assert.False(s_mode.IsTied);
    }

    // of each loop's half: by s (coth y - y/sinh² y)/2, by r (y/sinh y)²/2 at y = s/r; s goes with 1/C and 1/f, the series resistance with 1/C, and each
    // switch's resistance but its wiring with 1/G
    [Theory]
    [InlineData(Floor)]
    [InlineData(3e6)]
    [InlineData(Ceiling)]
    public void Slopes_are_those_of_the_formula(double hertz)
    {
        double sharing = 1 / (4 * Farads * hertz), ohms = s_loops.Average(r => sharing / Math.Tanh(sharing / r));
        double[] byLoop = [.. s_loops.Select(r => Math.Pow(sharing / r / Math.Sinh(Math.Min(sharing / r, 300)), 2) / 2)];
        double bySharing = s_loops.Select((r, j) => (0.5 / Math.Tanh(sharing / r)) - (byLoop[j] * r / sharing)).Sum();
        (double logOhms, double[] byElement, double byFrequency) = s_mode.ElasticityAt(hertz);
        Assert.Equal(Math.Log(ohms), logOhms, 1e-12);
        Assert.Equal(-sharing * bySharing / ohms, byFrequency, 1e-9);
        Assert.Equal(0, byElement[0], 1e-12);
        Assert.Equal(-((sharing * bySharing) + (EsrOhms * byLoop.Sum())) / ohms, byElement[1], 1e-9);
        Assert.All(s_ohms.Select((r, s) => (r, s)), p => Assert.Equal(-p.r * byLoop[p.s / 2] / ohms, byElement[2 + p.s], 1e-9));
    }

    [Fact]
    public void At_the_floor_slopes_are_found_once() => Assert.Same(s_mode.ElasticityAt(Floor).ByElement, s_mode.ElasticityAt(Floor).ByElement);

    [Fact]
    public void Coefficients_are_those_of_both_limits_and_tell_what_is_used()
    {
        Assert.Equal(0, s_mode.Slow[0]);
        Assert.Equal(0.25, s_mode.Slow[1], 1e-15);
        Assert.Equal(1, s_mode.FastOfCapacitors[1], 1e-15);
        Assert.All(s_mode.FastOfSwitches, k => Assert.Equal(0.5, k, 1e-15));
        Assert.Equal([false, true, true, true, true, true], Enumerable.Range(0, 6).Select(s_mode.Uses));
    }

    // a load that draws its current all the time charges fly steadily: no charge is shared, and its series resistance still carries the load
    [Fact]
    public void The_steady_part_of_a_held_current_shares_no_charge()
    {
        SizedMode soft = Of(LoadKind.Current);
        Assert.Equal(0.25, soft.Analysis.SlowSwitchingLimit.Coefficients[1].ToDouble(), 1e-12);
        Assert.Equal(0, soft.Slow[1], 1e-24);
        Assert.Equal(1, soft.FastOfCapacitors[1], 1e-12);
        Assert.Equal([false, true, true, true, true, true], Enumerable.Range(0, 6).Select(soft.Uses));
    }

    // phases as long as one another do not deliver the shares of a divider by three, so that averages carry no current of its coil
    [Fact]
    public void Where_averages_carry_no_load_coefficients_have_no_bound()
    {
        Converter stage = InductorFed.Behind(Dickson.StepDown(3)).WithDuties([new(1, 2), new(1, 2)]);
        SizedMode mode = SizedMode.Of(ModeAnalysis.Of(stage), stage, s_hertz, 0);
        Assert.All(mode.Slow.Concat(mode.FastOfCapacitors).Concat(mode.FastOfSwitches), k => Assert.Equal(double.PositiveInfinity, k));
    }

    private static SizedMode Of(LoadKind load, double floor = Floor)
    {
        Converter half = Converter.Create("half").Input("vin").Output("vout", load).Capacitor("in", "vin", "gnd").Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2).Build();
        double[] farads = [1e-9, Farads], esr = [0, EsrOhms];
        return SizedMode.Of(ModeAnalysis.Of(half), half.WithValues(farads, [.. s_ohms.Select(r => r + WiringOhms)], esr), new(floor, Ceiling), WiringOhms);
    }
}
