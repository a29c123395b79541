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
        TripleSearch search = TripleSearch.Run(capacitors, keepsBeaten: false, threads: 2), whole = TripleSearch.Run(capacitors, keepsBeaten: true, threads: 2);

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

        Assert.Equal((triples, labelled), (search.TripleCount, search.LabelledNetworkCount));
        Assert.Equal(labelled, networks);
        Assert.Equal(all.Keys.Order(), search.Fronts.Keys.Order());
        Assert.All(search.Fronts, f => Assert.Equal(
            all[f.Key].Where(s => !all[f.Key].Any(o => o != s && o.IsWithin(s))).OrderBy(s => s.ChargeVoltage).ThenBy(s => s.HighestVoltage),
            f.Value.Entries.Select(e => e.Sums)));
        Assert.Equal((triples, labelled), (whole.TripleCount, whole.LabelledNetworkCount));
        Assert.Equal(all.Keys.Order(), whole.Fronts.Keys.Order());
        Assert.All(whole.Fronts, f => Assert.Equal(all[f.Key], f.Value.Entries.Select(e => e.Sums).ToHashSet()));
        Assert.Equal(whole.NetworkCount, whole.Fronts.Values.Sum(f => f.Entries.Sum(e => e.Places.Length)));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_number_of_threads_does_not_matter(bool keepsBeaten)
    {
        TripleSearch one = TripleSearch.Run(3, keepsBeaten, threads: 1), many = TripleSearch.Run(3, keepsBeaten, threads: 5);
        Assert.Equal((one.TripleCount, one.NetworkCount, one.LabelledNetworkCount), (many.TripleCount, many.NetworkCount, many.LabelledNetworkCount));
        Assert.Equal(one.Fronts.Keys, many.Fronts.Keys);
        Assert.All(one.Fronts.Keys, ratio =>
        {
            Assert.Equal(one.Fronts[ratio].Entries.Select(e => e.Sums), many.Fronts[ratio].Entries.Select(e => e.Sums));
            Assert.Equal(one.Fronts[ratio].Entries.SelectMany(e => e.Places), many.Fronts[ratio].Entries.SelectMany(e => e.Places));
        });
    }

    [Fact]
    public void Progress_rises_to_the_whole_and_the_search_can_be_stopped()
    {
        System.Collections.Concurrent.ConcurrentBag<double> told = [];
        ThreePhaseAtlas.Of(3, new Told(told.Add));
        Assert.True(told.Count > 10);
        Assert.Equal((true, 1.0), (told.Min() > 0, told.Max()));

        using CancellationTokenSource source = new();
        Assert.ThrowsAny<OperationCanceledException>(() => ThreePhaseAtlas.Of(4, new Told(_ => source.Cancel()), source.Token));
    }

    [Fact]
    public void One_capacitor_has_no_network_of_three_phases()
    {
        ThreePhaseAtlas one = ThreePhaseAtlas.Of(1);
        Assert.Empty(one.Ratios);
        Assert.Empty(one.Front(new Fraction(1, 2)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ThreePhaseAtlas.Of(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => ThreePhaseAtlas.Of(ThreePhaseAtlas.MaximumCapacitorCount + 1));
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
            Assert.Equal(FewestSwitches.Count([.. network.Phases], new SwitchSharing(3)), network.Switches.Count);
        }));
    }

    /// <summary>
    /// Of all networks of two capacitors, from all wirings of all triples of spaces, each counted exactly at every limit of the blocking voltage: those that none beats in capacitors' figures,
    /// switches and their highest voltage are as those shown.
    /// </summary>
    [Fact]
    public void Networks_of_two_capacitors_are_those_that_no_wirings_beat_in_capacitors_and_switches()
    {
        Dictionary<Fraction, HashSet<(TripleSums Sums, int Count, Fraction Voltage)>> all = [];
        foreach ((NetworkSolution solution, Wiring[][] wirings) in TriplesOfTwoCapacitors(onePiece: true))
        {
            Fraction ratio = new Fraction(solution.Voltages[LoopSpace.OutputColumn], solution.Voltages[LoopSpace.InputColumn]).Reduce();
            all.TryAdd(ratio, []);
            foreach (Wiring[] phases in Choices(wirings))
            {
                long[][] potentials = [.. phases.Select(p => NetworkQuantities.TerminalPotentials(p, BranchForest.Of(p), solution))];
                all[ratio].UnionWith(SwitchLimits.Of(phases, SwitchPlan.PermanentGroups(phases), potentials).Steps()
                    .Select(s => (Sums(solution), s.Count, new Fraction(s.Limit, solution.Voltages[LoopSpace.InputColumn]).Reduce())));
            }
        }

        ThreePhaseAtlas atlas = ThreePhaseAtlas.Of(2);
        Assert.Equal(all.Keys.Order(), atlas.Ratios);
        Assert.All(all, networks => Assert.Equal(
            networks.Value.Where(n => !networks.Value.Any(o => o != n && o.Sums.IsWithin(n.Sums) && o.Count <= n.Count && o.Voltage <= n.Voltage)).ToHashSet(),
            atlas.Front(networks.Key).Select(n => (Sums(n), n.Switches.Count, n.Measures.HighestSwitchVoltage.Reduce())).ToHashSet()));
    }

    /// <summary>A floating piece never saves a switch: one that is there already joins it (docs/theory/atlas.md).</summary>
    [Fact]
    public void Wirings_with_floating_pieces_take_no_fewer_switches_than_those_in_one_piece()
    {
        SwitchSharing sharing = new(3);
        int Fewest(Wiring[][] wirings) => Choices(wirings).Min(phases => FewestSwitches.Count(phases, sharing));
        (NetworkSolution, Wiring[][])[] inOnePiece = [.. TriplesOfTwoCapacitors(onePiece: true)], all = [.. TriplesOfTwoCapacitors(onePiece: false)];
        Assert.Equal(inOnePiece.Select(t => Fewest(t.Item2)), all.Select(t => Fewest(t.Item2)));
        Assert.True(all.Sum(t => t.Item2.Sum(w => w.Length)) > inOnePiece.Sum(t => t.Item2.Sum(w => w.Length)));
    }

    [Fact]
    public void All_networks_of_three_capacitors_are_compared_by_their_switches_but_not_those_of_four()
    {
        NetworkMeasure[] ofSwitches = [NetworkMeasure.SwitchCount, NetworkMeasure.HighestSwitchVoltage];
        Assert.Empty(ofSwitches.Except(ThreePhaseAtlas.Of(3).CompleteMeasures));
        TripleSearch unbeaten = TripleSearch.Run(3, keepsBeaten: false, threads: 2), whole = TripleSearch.Run(3, keepsBeaten: true, threads: 2);
        int better = 0;
        foreach ((int, int) ratio in unbeaten.Fronts.Keys.Where((_, i) => i % 5 == 0))
        {
            SearchedNetwork[] some = [.. TripleNetworks.Of([unbeaten], ratio)], all = [.. TripleNetworks.Of([whole], ratio)];
            bool IsWithin(SearchedNetwork one, SearchedNetwork other) =>
                Sums(one).IsWithin(Sums(other)) && one.Switches.Count <= other.Switches.Count && one.Measures.HighestSwitchVoltage <= other.Measures.HighestSwitchVoltage;
            Assert.All(some, n => Assert.Contains(all, a => IsWithin(a, n)));
            Assert.All(all, n => Assert.Single(all, a => IsWithin(a, n)));

            // a limit of the voltage never pays
            Assert.All(all, n => Assert.Null(n.SwitchVoltageLimit));
            better += all.Min(n => n.Switches.Count) < some.Min(n => n.Switches.Count)
                || all.Min(n => n.Measures.HighestSwitchVoltage) < some.Min(n => n.Measures.HighestSwitchVoltage) ? 1 : 0;
        }

        Assert.True(better > 2, $"{better}");
    }

    // unordered, as two equal phases are no network
    internal static IEnumerable<(NetworkSolution Solution, Wiring[][] Wirings)> TriplesOfTwoCapacitors(bool onePiece)
    {
        LoopSpace[] spaces = [.. SpaceList.Of(2).Spaces.Where(s => s.Dimension == 1)];
        ILookup<ulong, Wiring> wirings = AllWirings.Of(2).Where(w => !onePiece || BranchForest.Of(w).PieceCount == 1).ToLookup(w => LoopSpace.Of(w).Key);
        for (int first = 0; first < spaces.Length; first++)
        {
            for (int second = first + 1; second < spaces.Length; second++)
            {
                for (int third = second + 1; third < spaces.Length; third++)
                {
                    LoopSpace[] triple = [spaces[first], spaces[second], spaces[third]];
                    if (NetworkSolution.TrySolve(triple, out NetworkSolution? solution))
                    {
                        yield return (solution, [.. triple.Select(s => wirings[s.Key].ToArray())]);
                    }
                }
            }
        }
    }

    internal static IEnumerable<Wiring[]> Choices(Wiring[][] wirings) =>
        from first in wirings[0] from second in wirings[1] from third in wirings[2] select (Wiring[])[first, second, third];

    private static TripleSums Sums(SearchedNetwork network) => Sums(
        NetworkSolution.TrySolve([.. network.Phases.Select(LoopSpace.Of)], out NetworkSolution? solution) ? solution : throw new InvalidOperationException($"{network}"));

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

    private sealed class Told(Action<double> tell) : IProgress<double>
    {
        public void Report(double value) => tell(value);
    }
}
