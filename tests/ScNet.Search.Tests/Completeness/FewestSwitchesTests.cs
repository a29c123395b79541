using CsCheck;
using ScNet.Search.LoopSpaces;
using ScNet.Search.Networks;

namespace ScNet.Search.Tests.Completeness;

/// <summary>The fewest switches of given wirings against every set of pairs of terminals.</summary>
[Trait("Kind", "Law")]
public class FewestSwitchesTests
{
    [Fact]
    public void Three_wirings_of_one_capacitor_take_what_the_smallest_set_of_pairs_has()
    {
        Wiring[] wirings = [.. AllWirings.Of(1)];
        int shared = 0;
        for (int triple = 0; triple < wirings.Length * wirings.Length * wirings.Length; triple += 13)
        {
            shared += Check([wirings[triple % wirings.Length], wirings[triple / wirings.Length % wirings.Length], wirings[triple / wirings.Length / wirings.Length]]);
        }

        Assert.True(shared > 50, $"{shared}");
    }

    [Theory]
    [InlineData(3, 150)]
    [InlineData(4, 60)]
    public void Drawn_wirings_of_two_capacitors_take_what_the_smallest_set_of_pairs_has(int phases, int draws)
    {
        Wiring[] wirings = [.. AllWirings.Of(2)];
        int shared = 0;
        Gen.Int[0, wirings.Length - 1].Array[phases].Holds(drawn => shared += Check([.. drawn.Select(w => wirings[w])]), count: draws);
        Assert.True(shared > 20, $"{shared}");
    }

    [Fact]
    public void The_least_that_is_asked_for_does_not_change_what_is_found()
    {
        Wiring[] wirings = [.. AllWirings.Of(2)];
        SwitchSharing sharing = new(3);
        Gen.Int[0, wirings.Length - 1].Array[3].Holds(
            drawn =>
            {
                Wiring[] phases = [.. drawn.Select(w => wirings[w])];
                int count = FewestSwitches.Count(phases, sharing);
                Assert.Equal(count, FewestSwitches.Count(phases, sharing, count));
                Assert.Equal(count, FewestSwitches.Count(phases, sharing, count + 2));
                Assert.Equal(FewestSwitches.TooMany, FewestSwitches.Count(phases, sharing, count - 1));
            },
            count: 300);
    }

    /// <summary>The layout of fewest switches has as many, and no switch blocks more than every choice of as few must let one block.</summary>
    [Fact]
    public void A_network_in_the_fewest_switches_has_them_at_the_lowest_highest_voltage()
    {
        Wiring[] wirings = [.. AllWirings.Of(2)];
        int networks = 0, fewer = 0;
        for (int triple = 11; triple < wirings.Length * wirings.Length * wirings.Length && networks < 150; triple += 20011)
        {
            Wiring[] phases = [wirings[triple % wirings.Length], wirings[triple / wirings.Length % wirings.Length], wirings[triple / wirings.Length / wirings.Length]];
            if (SearchedNetwork.TryCreate(phases, SwitchLayout.Fewest, out SearchedNetwork? network)
                && SearchedNetwork.TryCreate(phases, SwitchLayout.LowestBlocking, out SearchedNetwork? lowest))
            {
                networks++;
                SearchedNetworkTests.Agree(network);
                Assert.Equal(FewestSwitches.Count(phases, new SwitchSharing(3)), network.Switches.Count);
                Assert.True(network.Measures.HighestSwitchVoltage >= lowest.Measures.HighestSwitchVoltage);
                fewer += network.Switches.Count < lowest.Switches.Count ? 1 : 0;

                // held to the lowest voltage that any switches of the wirings have
                Assert.True(SearchedNetwork.TryCreate(phases, SwitchLayout.Fewest, lowest.Measures.HighestSwitchVoltage, out SearchedNetwork? held));
                SearchedNetworkTests.Agree(held);
                Assert.Equal(lowest.Measures.HighestSwitchVoltage, held.Measures.HighestSwitchVoltage);
                Assert.InRange(held.Switches.Count, network.Switches.Count, lowest.Switches.Count);
            }
        }

        Assert.True(networks > 20 && fewer > 0, $"{networks}, {fewer}");
    }

    /// <summary>The steps say for every limit how few switches block no more, as sets of pairs within the limit do.</summary>
    [Fact]
    public void Every_limit_of_the_voltage_takes_what_the_smallest_set_of_pairs_within_it_has()
    {
        int networks = 0, limits = 0;
        foreach ((NetworkSolution solution, Wiring[][] wirings) in ThreePhaseTests.TriplesOfTwoCapacitors(onePiece: true).Where((_, i) => i % 9 == 0))
        {
            foreach (Wiring[] phases in ThreePhaseTests.Choices(wirings).Where((_, i) => i % 50 == 0))
            {
                networks++;
                long[][] potentials = [.. phases.Select(p => NetworkQuantities.TerminalPotentials(p, BranchForest.Of(p), solution))];
                int[] groups = SwitchPlan.PermanentGroups(phases);
                IReadOnlyList<(int Count, long Limit)> told = SwitchLimits.Of(phases, groups, potentials).Steps();
                foreach (long limit in Pairs(phases, groups).Select(p => SwitchLimits.Blocking(phases, potentials, p.First, p.Second)).Distinct())
                {
                    (int First, int Second)[] within = [.. Pairs(phases, groups).Where(p => SwitchLimits.Blocking(phases, potentials, p.First, p.Second) <= limit)];
                    Assert.Equal(BySets(phases, groups, within), told.LastOrDefault(s => s.Limit <= limit).Count);
                    limits++;
                }
            }
        }

        Assert.True(networks > 50 && limits > networks, $"{networks}, {limits}");
    }

    // one where switches are shared, none where not
    private static int Check(Wiring[] phases)
    {
        int alone = phases.Sum(p => p.TerminalCount - p.NodeCount), count = FewestSwitches.Count(phases, new SwitchSharing(phases.Length));
        int[] groups = SwitchPlan.PermanentGroups(phases);
        Assert.Equal(BySets(phases, groups, Pairs(phases, groups)), count);
        return count < alone ? 1 : 0;
    }

    private static (int First, int Second)[] Pairs(Wiring[] phases, int[] groups) =>
    [
        .. from second in Enumerable.Range(0, groups.Length)
           from first in Enumerable.Range(0, second)
           where groups[first] == first && groups[second] == second && phases.Any(p => p.Joins(first, second))
           select (first, second),
    ];

    // sets of pairs by size, the first that makes every phase; 0 where all together do not
    private static int BySets(Wiring[] phases, int[] groups, (int First, int Second)[] pairs)
    {
        if (!phases.All(p => Makes(p, groups, pairs)))
        {
            return 0;
        }

        int size = 0;
        while (!Sets(pairs, size, 0).Any(set => phases.All(p => Makes(p, groups, set))))
        {
            size++;
        }

        return size;
    }

    private static IEnumerable<(int First, int Second)[]> Sets((int First, int Second)[] pairs, int size, int from)
    {
        if (size == 0)
        {
            yield return [];
            yield break;
        }

        for (int pair = from; pair + size <= pairs.Length; pair++)
        {
            foreach ((int, int)[] rest in Sets(pairs, size - 1, pair + 1))
            {
                yield return [pairs[pair], .. rest];
            }
        }
    }

    // switches that join a phase's ends in it, beside what is joined for good, make the phase
    private static bool Makes(Wiring phase, int[] groups, (int First, int Second)[] switches)
    {
        int[] piece = [.. groups];
        foreach ((int first, int second) in switches)
        {
            int old = piece[second], kept = piece[first];
            for (int t = 0; t < piece.Length && old != kept && phase.Joins(first, second); t++)
            {
                piece[t] = piece[t] == old ? kept : piece[t];
            }
        }

        return piece.Distinct().Count() == phase.NodeCount;
    }
}
