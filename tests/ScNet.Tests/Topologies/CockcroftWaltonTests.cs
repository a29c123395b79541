using Fractions;
using ScNet.Topologies;

namespace ScNet.Tests.Topologies;

/// <summary>
/// Source of the voltages (2/N per capacitor) and of the charges that add up along a column, from memory:
/// J. D. Cockcroft and E. T. S. Walton, Proc. Royal Society A 136, 1932.
/// </summary>
public sealed class CockcroftWaltonTests : FamilyTests
{
    internal override FamilyFacts Facts(int size, double farads, double ohms)
    {
        int k = size;
        int n = k + 1;
        int odd = (k + 1) / 2;
        int even = k / 2;
        Fraction one = new(1, n);
        Dictionary<string, (Fraction, Fraction)> capacitors = [];
        Dictionary<string, (int, Fraction, Fraction)> switches = [];
        for (int i = 1; i <= k; i++)
        {
            int sign = (k - i) % 2 == 0 ? 1 : -1;
            capacitors.Add($"fly{i}", (new Fraction(sign * (((k - i) / 2) + 1), n), i == 1 ? one : 2 * one));
        }

        for (int i = 1; i <= n; i++)
        {
            switches.Add($"s{i}", ((n - i) % 2 == 0 ? 1 : 2, one, i == 1 || i == n ? one : 2 * one));
        }

        int oddLifted = k % 2 == 1 ? 1 : 2;
        switches.Add("oddlow", (oddLifted, new Fraction(-odd, n), one));
        switches.Add("oddgnd", (3 - oddLifted, new Fraction(-odd, n), one));
        if (k > 1)
        {
            switches.Add("evenlow", (3 - oddLifted, new Fraction(-even, n), one));
            switches.Add("evengnd", (oddLifted, new Fraction(-even, n), one));
        }

        return new FamilyFacts
        {
            N = n,
            StepDown = CockcroftWalton.StepDown(k, farads, ohms),
            StepUp = CockcroftWalton.StepUp(k, farads, ohms),
            StepDownWithCurrentLoad = CockcroftWalton.StepDown(k, farads, ohms, LoadKind.Current),
            StepUpWithCurrentLoad = CockcroftWalton.StepUp(k, farads, ohms, LoadKind.Current),
            Capacitors = capacitors,
            Switches = switches,
            High = (one, 0),
            Low = (new Fraction((n + 1) / 2, n), new Fraction(n / 2, n)),
            SlowLimit = new Fraction(Squares(odd) + Squares(even), n * n),
            FastLimit = new Fraction(2 * (n + (2 * odd * odd) + (2 * even * even)), n * n),
        };
    }

    [Theory]
    [InlineData(2)]
    [InlineData(6)]
    [InlineData(11)]
    public void No_capacitor_holds_more_than_two_steps_where_Dicksons_hold_up_to_all_but_one(int stages)
    {
        Fraction step = new(1, stages + 1);
        Assert.Equal(2 * step, Analyse(CockcroftWalton.StepDown(stages)).IdealPoint.CapacitorVoltages.Max(v => v.ToFraction()));
        Assert.Equal(stages * step, Analyse(Dickson.StepDown(stages + 1)).IdealPoint.CapacitorVoltages.Max(v => v.ToFraction()));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(9)]
    public void Every_switch_has_the_stress_of_Dicksons(int stages) => Assert.Equal(
        Analyse(Dickson.StepUp(stages + 1)).BlockingVoltages.Peaks, Analyse(CockcroftWalton.StepUp(stages)).BlockingVoltages.Peaks);

    private static int Squares(int m) => m * (m + 1) * ((2 * m) + 1) / 6;
}
