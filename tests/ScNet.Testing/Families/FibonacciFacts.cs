using System.Numerics;
using Fractions;
using ScNet.Topologies;

namespace ScNet.Testing.Families;

/// <summary>What the literature says of the family; the sources stand at the tests of the families.</summary>
internal static class FibonacciFacts
{
    // F(0) = 0, F(1) = F(2) = 1
    private static readonly int[] s_f = [0, 1, 1, 2, 3, 5, 8, 13, 21, 34, 55, 89, 144, 233, 377, 610, 987, 1597, 2584, 4181, 6765, 10946, 17711];

    public static FamilyFacts Of(int size, double farads, double ohms)
    {
        int k = size;
        BigInteger n = s_f[k + 2];
        Dictionary<string, (Fraction, Fraction)> capacitors = [];
        Dictionary<string, (int, Fraction, Fraction)> switches = [];
        for (int i = 1; i <= k; i++)
        {
            bool boostedFirst = (k - i) % 2 == 0;
            Fraction charge = new(s_f[k - i + 1], n);
            capacitors.Add($"fly{i}", (boostedFirst ? charge : -charge, new Fraction(s_f[i + 1], n)));
            switches.Add($"charge{i}", (boostedFirst ? 2 : 1, new Fraction(s_f[k - i + 2], n), new Fraction(s_f[i + 1], n)));
            switches.Add($"ground{i}", (boostedFirst ? 2 : 1, -charge, new Fraction(s_f[i], n)));
            switches.Add($"boost{i}", (boostedFirst ? 1 : 2, -charge, new Fraction(s_f[i + 1], n)));
        }

        switches.Add("high", (1, new Fraction(1, n), new Fraction(s_f[k], n)));
        Fraction charged = new(s_f[k + 1], n);
        Fraction boosted = new(s_f[k], n);
        return new FamilyFacts
        {
            N = new Fraction(n),
            StepDown = Fibonacci.StepDown(k, farads, ohms),
            StepUp = Fibonacci.StepUp(k, farads, ohms),
            StepDownWithCurrentLoad = Fibonacci.StepDown(k, farads, ohms, LoadKind.Current),
            StepUpWithCurrentLoad = Fibonacci.StepUp(k, farads, ohms, LoadKind.Current),
            Capacitors = capacitors,
            Switches = switches,
            High = (new Fraction(1, n), 0),
            Low = k % 2 == 1 ? (boosted, charged) : (charged, boosted),
            SlowLimit = new Fraction((BigInteger)s_f[k] * s_f[k + 1], n * n),
            FastLimit = new Fraction(2 * (BigInteger)s_f[k + 1] * (n + (2 * s_f[k])), n * n),
        };
    }
}
