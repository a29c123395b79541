using Fractions;
using ScNet.Topologies;

namespace ScNet.Testing.Families;

/// <summary>What the literature says of the family; the sources stand at the tests of the families.</summary>
internal static class SeriesParallelFacts
{
    public static FamilyFacts Of(int size, double farads, double ohms)
    {
        int n = size + 1;
        Fraction one = new(1, n);
        Dictionary<string, (Fraction, Fraction)> capacitors = [];
        Dictionary<string, (int, Fraction, Fraction)> switches = [];
        for (int k = 1; k < n; k++)
        {
            capacitors.Add($"fly{k}", (one, one));
            switches.Add($"top{k}", (2, one, new Fraction(n - k, n)));
            switches.Add($"bottom{k}", (2, -one, new Fraction(n - k, n)));
        }

        for (int k = 1; k <= n; k++)
        {
            switches.Add($"series{k}", k == 1 ? (1, one, 1 - one) : (1, -one, one));
        }

        return new FamilyFacts
        {
            N = n,
            StepDown = SeriesParallel.StepDown(n, farads, ohms),
            StepUp = SeriesParallel.StepUp(n, farads, ohms),
            StepDownWithCurrentLoad = SeriesParallel.StepDown(n, farads, ohms, LoadKind.Current),
            StepUpWithCurrentLoad = SeriesParallel.StepUp(n, farads, ohms, LoadKind.Current),
            Capacitors = capacitors,
            Switches = switches,
            High = (one, 0),
            Low = (one, 1 - one),
            SlowLimit = new Fraction(n - 1, n * n),
            FastLimit = new Fraction(2 * ((3 * n) - 2), n * n),
        };
    }
}
