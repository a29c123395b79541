using Fractions;
using ScNet.Topologies;

namespace ScNet.Testing.Families;

/// <summary>What the literature says of the family; the sources stand at the tests of the families.</summary>
internal static class DoublerFacts
{
    public static FamilyFacts Of(int size, double farads, double ohms)
    {
        int k = size;
        long n = 1L << k;
        Dictionary<string, (Fraction, Fraction)> capacitors = [];
        Dictionary<string, (int, Fraction, Fraction)> switches = [];
        for (int i = 1; i <= k; i++)
        {
            Fraction charge = new(1, 1L << i);
            Fraction voltage = new(1L << (i - 1), n);
            capacitors.Add($"fly{i}", (charge, voltage));
            switches.Add($"high{i}", (1, charge, voltage));
            switches.Add($"boost{i}", (1, -charge, voltage));
            switches.Add($"charge{i}", (2, charge, voltage));
            switches.Add($"ground{i}", (2, -charge, voltage));
        }

        for (int i = 1; i < k; i++)
        {
            capacitors.Add($"dc{i}", (new Fraction(-1, 1L << (i + 1)), new Fraction(1L << i, n)));
        }

        Fraction half = new(1, 2);
        return new FamilyFacts
        {
            N = n,
            StepDown = Doubler.StepDown(k, farads, ohms),
            StepUp = Doubler.StepUp(k, farads, ohms),
            StepDownWithCurrentLoad = Doubler.StepDown(k, farads, ohms, LoadKind.Current),
            StepUpWithCurrentLoad = Doubler.StepUp(k, farads, ohms, LoadKind.Current),
            Capacitors = capacitors,
            Switches = switches,
            High = (new Fraction(1, n), 0),
            Low = (half, half),
            SlowLimit = new Fraction((5 * (n / 2) * (n / 2)) - 2, 3 * n * n),
            FastLimit = new Fraction(8 * ((n * n) - 1), 3 * n * n),
        };
    }
}
