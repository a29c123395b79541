using Fractions;
using ScNet.Topologies;

namespace ScNet.Testing.Families;

/// <summary>What the literature says of the family; the sources stand at the tests of the families.</summary>
internal static class LadderFacts
{
    public static FamilyFacts Of(int size, double farads, double ohms)
    {
        int n = size + 1;
        Fraction one = new(1, n);
        Dictionary<string, (Fraction, Fraction)> capacitors = [];
        Dictionary<string, (int, Fraction, Fraction)> switches = [];
        for (int k = 1; k < n; k++)
        {
            capacitors.Add($"fly{k}", (new Fraction(n - k, n), one));
        }

        for (int k = 1; k < n - 1; k++)
        {
            capacitors.Add($"dc{k}", (new Fraction(-(n - k - 1), n), one));
        }

        for (int k = 1; k <= n; k++)
        {
            Fraction charge = k == 1 ? new Fraction(-(n - 1), n) : one;
            switches.Add($"s{(2 * k) - 1}", (2, charge, one));
            switches.Add($"s{2 * k}", (1, charge, one));
        }

        return new FamilyFacts
        {
            N = n,
            StepDown = Ladder.StepDown(n, farads, ohms),
            StepUp = Ladder.StepUp(n, farads, ohms),
            StepDownWithCurrentLoad = Ladder.StepDown(n, farads, ohms, LoadKind.Current),
            StepUpWithCurrentLoad = Ladder.StepUp(n, farads, ohms, LoadKind.Current),
            Capacitors = capacitors,
            Switches = switches,
            High = (one, 0),
            Low = (one, 1 - one),
            SlowLimit = new Fraction((n - 1) * ((2 * n * n) - (4 * n) + 3), 3 * n * n),
            FastLimit = new Fraction(4 * (n - 1), n),
        };
    }
}
