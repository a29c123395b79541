using Fractions;
using ScNet.Topologies;

namespace ScNet.Testing.Families;

/// <summary>What the literature says of the family; the sources stand at the tests of the families.</summary>
internal static class DicksonFacts
{
    public static FamilyFacts Of(int size, double farads, double ohms)
    {
        int n = size + 1;
        Fraction one = new(1, n);
        int odd = n / 2;
        int even = (n - 1) / 2;
        Dictionary<string, (Fraction, Fraction)> capacitors = [];
        Dictionary<string, (int, Fraction, Fraction)> switches = [];
        for (int k = 1; k < n; k++)
        {
            capacitors.Add($"fly{k}", ((n - k) % 2 == 1 ? one : -one, new Fraction(k, n)));
        }

        for (int k = 1; k <= n; k++)
        {
            switches.Add($"s{k}", ((n - k) % 2 == 0 ? 1 : 2, one, k == 1 || k == n ? one : 2 * one));
        }

        // The capacitors of fly(n-1)'s parity are lifted onto the low node in phase 1.
        int oddLifted = n % 2 == 0 ? 1 : 2;
        switches.Add("oddlow", (oddLifted, new Fraction(-odd, n), one));
        switches.Add("oddgnd", (3 - oddLifted, new Fraction(-odd, n), one));
        if (n > 2)
        {
            switches.Add("evenlow", (3 - oddLifted, new Fraction(-even, n), one));
            switches.Add("evengnd", (oddLifted, new Fraction(-even, n), one));
        }

        return new FamilyFacts
        {
            N = n,
            StepDown = Dickson.StepDown(n, farads, ohms),
            StepUp = Dickson.StepUp(n, farads, ohms),
            StepDownWithCurrentLoad = Dickson.StepDown(n, farads, ohms, LoadKind.Current),
            StepUpWithCurrentLoad = Dickson.StepUp(n, farads, ohms, LoadKind.Current),
            Capacitors = capacitors,
            Switches = switches,
            High = (one, 0),
            Low = (new Fraction((n + 1) / 2, n), new Fraction(n / 2, n)),
            SlowLimit = new Fraction(n - 1, n * n),
            FastLimit = new Fraction(2 * (n + (2 * odd * odd) + (2 * even * even)), n * n),
        };
    }
}
