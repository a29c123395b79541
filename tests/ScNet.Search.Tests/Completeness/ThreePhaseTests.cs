using System.Globalization;
using Fractions;
using ScNet.Search.LoopSpaces;
using ScNet.Search.Networks;
using ScNet.Search.Triples;

namespace ScNet.Search.Tests.Completeness;

/// <summary>Networks of three phases against all ordered triples of loop spaces, and what they can do that two phases cannot.</summary>
public class ThreePhaseTests
{
    public static IEnumerable<object[]> Sizes => AtlasCampaign.UpTo(2, 3, [[2, 3375, 4032], [3, 185120, 2080128]]);

    public static IEnumerable<object[]> Shown => AtlasCampaign.UpTo(2, 4, [[2], [3], [4]]);

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_walk_finds_every_network_and_every_front_of_capacitor_figures(int capacitors, long triples, long labelled)
    {
        IReadOnlyList<LoopSpaceOrbit> orbits = LoopSpaceOrbits.Of(capacitors).Orbits;
        TripleWalk walk = new(PlacedSpaces.Of(orbits, capacitors), capacitors);
        walk.Run(orbits, CancellationToken.None);

        long networks = 0;
        Dictionary<(int, int), HashSet<TripleSums>> all = [];
        LoopSpace[] spaces = [.. SpaceList.Of(capacitors).Spaces.Where(s => s.Dimension > 0)];
        foreach (LoopSpace first in spaces)
        {
            foreach (LoopSpace second in spaces.Where(s => first.Dimension + s.Dimension <= capacitors))
            {
                foreach (LoopSpace third in spaces.Where(s => first.Dimension + second.Dimension + s.Dimension == capacitors + 1))
                {
                    if (NetworkSolution.TrySolve([first, second, third], out NetworkSolution? solution))
                    {
                        networks++;
                        Fraction ratio = new Fraction(solution.Voltages[LoopSpace.OutputColumn], solution.Voltages[LoopSpace.InputColumn]).Reduce();
                        (int, int) key = ((int)ratio.Numerator, (int)ratio.Denominator);
                        all.TryAdd(key, []);
                        all[key].Add(Sums(solution));
                    }
                }
            }
        }

        Assert.Equal((triples, labelled), (walk.TripleCount, walk.LabelledNetworkCount));
        Assert.Equal(labelled, networks);
        Assert.Equal(all.Keys.Order(), walk.Fronts.Keys.Order());
        Assert.All(walk.Fronts, f => Assert.Equal(
            all[f.Key].Where(s => !all[f.Key].Any(o => o != s && o.IsWithin(s))).OrderBy(s => s.ChargeVoltage).ThenBy(s => s.Charge),
            f.Value.Entries.Keys.OrderBy(s => s.ChargeVoltage).ThenBy(s => s.Charge)));
    }

    [Theory]
    [InlineData(2, "-3 -1/3 1/4 3/4 4/3 4")]
    [InlineData(3, "-7 -6 -5 -5/2 -5/3 -4/3 -3/4 -3/5 -2/5 -1/5 -1/6 -1/7 1/8 1/7 1/6 2/7 3/8 3/7 4/7 5/8 5/7 5/6 6/7 7/8 8/7 7/6 6/5 7/5 8/5 7/4 7/3 8/3 7/2 6 7 8")]
    public void Three_phases_make_ratios_that_two_cannot(int capacitors, string further)
    {
        HashSet<Fraction> two = [.. MadeAtlases.Of(capacitors).Ratios];
        IEnumerable<Fraction> three = ThreePhaseAtlas.Of(capacitors).Ratios.Where(r => !two.Contains(r));
        Assert.Equal(further.Split(' ').Select(r => Fraction.FromString(r, CultureInfo.InvariantCulture)), three);
    }

    [Theory]
    [MemberData(nameof(Shown))]
    public void Every_network_shown_is_that_of_the_ordinary_analysis(int capacitors)
    {
        ThreePhaseAtlas atlas = ThreePhaseAtlas.Of(capacitors);
        Assert.All(atlas.Ratios, ratio => Assert.All(atlas.Front(ratio), network =>
        {
            Assert.Equal(ratio, network.Ratio);
            SearchedNetworkTests.Agree(network);
            Assert.True(network.Switches.Count >= TripleWirings.FewestSwitches(network.Phases));
        }));
    }

    // every set of three trees' worth of joins, by brute force over which pairs of terminals get a switch
    [Fact]
    public void Bound_on_switches_is_below_what_any_switches_of_small_wirings_need()
    {
        Wiring[] wirings = [.. AllWirings.Of(1).Where(w => BranchForest.Of(w).PieceCount == 1)];
        (int First, int Second)[] pairs = [.. from first in Enumerable.Range(0, 5) from second in Enumerable.Range(first + 1, 4 - first) select (first, second)];
        int met = 0;
        for (int triple = 0; triple < wirings.Length * wirings.Length * wirings.Length; triple += 41)
        {
            Wiring[] phases = [wirings[triple % wirings.Length], wirings[triple / wirings.Length % wirings.Length], wirings[triple / wirings.Length / wirings.Length]];
            int[] groups = SwitchPlan.PermanentGroups(phases);
            int least = Enumerable.Range(0, 1 << pairs.Length)
                .Where(set => phases.All(phase => Makes(phase, groups, [.. pairs.Where((_, p) => (set >> p & 1) != 0)])))
                .Min(set => System.Numerics.BitOperations.PopCount((uint)set));
            int bound = TripleWirings.FewestSwitches(phases);
            Assert.True(bound <= least, $"{bound} > {least} for {string.Join(" | ", phases.AsEnumerable())}");
            met += bound == least ? 1 : 0;
        }

        Assert.True(met > 10, $"{met}");
    }

    // switches that join a phase's ends in it, beside what is joined for good, make the phase
    private static bool Makes(Wiring phase, int[] groups, (int First, int Second)[] switches)
    {
        int[] piece = [.. groups];
        foreach ((int first, int second) in switches.Where(s => phase.Joins(s.First, s.Second)))
        {
            int old = piece[second], kept = piece[first];
            piece = [.. piece.Select(p => p == old ? kept : p)];
        }

        return piece.Distinct().Count() == phase.NodeCount;
    }

    private static TripleSums Sums(NetworkSolution solution)
    {
        int[] capacitors = [.. Enumerable.Range(LoopSpace.FirstCapacitorColumn, solution.Voltages.Count - LoopSpace.FirstCapacitorColumn)];
        long[] moved = [.. capacitors.Select(c => solution.Charges.Sum(phase => Math.Abs(phase[c])))];
        long delivered = 2 * solution.OutputCharge;
        return new TripleSums(
            (double)capacitors.Zip(moved, (c, q) => q * Math.Abs(solution.Voltages[c])).Sum() / (delivered * Math.Abs(solution.Voltages[LoopSpace.OutputColumn])),
            (double)capacitors.Max(c => Math.Abs(solution.Voltages[c])) / solution.Voltages[LoopSpace.InputColumn],
            (double)moved.Sum() / delivered);
    }
}
