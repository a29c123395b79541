using System.Collections.Concurrent;
using System.Numerics;
using CsCheck;
using Fractions;
using ScNet.Analysis;
using ScNet.Topologies;

namespace ScNet.Tests.Topologies;

/// <summary>
/// With k capacitors, the output's counted, a two-phase converter has a ratio p/q in lowest terms with
/// |p| and |q| at most F(k + 1), where F(1) = F(2) = 1, F(3) = 2, F(4) = 3, F(5) = 5. Source: M. S.
/// Makowski and D. Maksimovic, "Performance limits of switched-capacitor DC-DC converters", PESC 1995
/// (from memory).
/// </summary>
[Trait("Kind", "Law")]
public sealed class ReachableRatiosTests
{
    // Draw: which place each terminal is switched to, see RandomNetworks.Place.
    private const int PlaceCount = 5;

    [Theory]
    [InlineData(1, 2, 5000, 4)]
    [InlineData(2, 3, 8000, 8)]
    [InlineData(3, 5, 8000, 15)]
    public void No_random_two_phase_network_exceeds_the_Fibonacci_bound(int flying, int bound, int draws, int distinct)
    {
        ConcurrentDictionary<Fraction, int> seen = new();
        Gen<int[]> places = Gen.Int[0, PlaceCount - 1].Array[4 * flying];
        Draws(flying, places).Holds(
            drawn =>
            {
                if (AnalysisOf(drawn) is not { } analysis)
                {
                    return;
                }

                Fraction ratio = analysis.Ratio.ToFraction().Reduce();
                Assert.True(
                    BigInteger.Abs(ratio.Numerator) <= bound && ratio.Denominator <= bound,
                    $"{ratio} with {flying} flying capacitors.");
                seen.AddOrUpdate(ratio, 1, (_, count) => count + 1);
            },
            count: draws);
        string found = string.Join(", ", seen.OrderBy(s => s.Key).Select(s => $"{s.Key}: {s.Value}"));
        Assert.True(seen.Values.Sum() >= 400, found);
        Assert.True(seen.Count >= distinct, found);
        Assert.True(seen.Keys.Any(r => BigInteger.Max(BigInteger.Abs(r.Numerator), r.Denominator) == bound), found);
    }

    [Theory]
    [InlineData(1, 2)]
    [InlineData(2, 3)]
    [InlineData(3, 5)]
    [InlineData(4, 8)]
    [InlineData(5, 13)]
    public void The_Fibonacci_family_reaches_the_bound_both_ways(int flying, int bound)
    {
        Assert.Equal(bound, FamilyTests.Analyse(Fibonacci.StepUp(flying)).Ratio);
        Assert.Equal(Quantity.Exact(1, bound), FamilyTests.Analyse(Fibonacci.StepDown(flying)).Ratio);
    }

    // Half the draws are free; the others start from an extreme network, each terminal drawn anew with a chance of 1 in 5.
    private static Gen<int[]> Draws(int flying, Gen<int[]> places) => Gen.OneOf(
        places,
        from start in Gen.Bool
        from drawn in places
        from redraw in Gen.Int[0, 4].Array[4 * flying]
        select Extreme(flying, start).Select((place, t) => redraw[t] == 0 ? drawn[t] : place).ToArray());

    // The Fibonacci network of that many capacitors: places 3 and 4 join a capacitor to the one below it.
    private static int[] Extreme(int flying, bool stepUp)
    {
        (int low, int high) = stepUp ? (1, 2) : (2, 1);
        int[] places = new int[4 * flying];
        for (int i = 1; i <= flying; i++)
        {
            // The last stage is lifted in the first phase, the one before it in the second, and so on.
            int lifted = (flying - i) % 2;
            Set(lifted, i, top: i == flying ? high : Joint(i), bottom: i == 1 ? low : Joint(i - 2));
            Set(1 - lifted, i, top: i == 1 ? low : Joint(i - 1), bottom: 0);
        }

        return places;

        // The place of stage i's lifted top plate, where stage i + 1 is charged.
        int Joint(int i) => i <= 0 ? low : 3 + (i % 2);

        void Set(int phase, int stage, int top, int bottom)
        {
            places[(phase * 2 * flying) + (2 * (stage - 1))] = top;
            places[(phase * 2 * flying) + (2 * (stage - 1)) + 1] = bottom;
        }
    }

    private static ModeAnalysis? AnalysisOf(int[] places)
    {
        int flying = places.Length / 4;
        double[] ones = [.. Enumerable.Repeat(1.0, places.Length)];
        Fraction half = new(1, 2);
        return LawSample.Try(RandomNetworks.Place(places, [half, half], ones[..flying], ones)).Analysis;
    }
}
