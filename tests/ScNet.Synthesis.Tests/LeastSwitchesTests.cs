using Fractions;
using ScNet.Reconfiguration;
using ScNet.Search;
using ScNet.Synthesis.Candidates;

namespace ScNet.Synthesis.Tests;

public class LeastSwitchesTests
{
    [Theory]
    [InlineData(1, "1/2")]
    [InlineData(1, "2")]
    [InlineData(1, "-1")]
    [InlineData(1, "1/2 2")]
    [InlineData(1, "1/2 -1")]
    [InlineData(1, "1/2 2 -1")]
    [InlineData(2, "1/2")]
    [InlineData(2, "1/3")]
    [InlineData(2, "1/2 1/3")]
    [InlineData(2, "1/3 1/2 2/3")]
    [InlineData(2, "2 3")]
    [InlineData(2, "3/2 2")]
    public void No_set_of_fewer_switches_makes_the_ratios_and_one_of_as_many_does(int capacitors, string ratios)
    {
        SynthesisResult result = Solved.Of(Requests.Of(capacitors, ratios));
        Assert.Equal(SynthesisOutcome.Proved, result.Outcome);
        EverySetOfSwitches sets = (capacitors == 1 ? EverySetOfSwitches.One : EverySetOfSwitches.Two).Value;
        Assert.Equal(sets.Least(Requests.Ratios(ratios), result.Cost!.Value), result.Cost);
    }

    [Fact]
    public void Going_through_all_sets_of_switches_finds_that_fewer_than_four_make_no_half() =>
        Assert.Null(EverySetOfSwitches.One.Value.Least([new Fraction(1, 2)], 3));

    // Makowski and Maksimovic 1995, from memory: 3k - 2 switches with k counting the output's capacitor, where the
    // ratio is at the Fibonacci bound
    [Theory]
    [InlineData(1, "1/2", 4)]
    [InlineData(2, "1/3", 7)]
    [InlineData(3, "1/5", 10)]
    public void A_ratio_at_the_published_bound_takes_the_published_number_of_switches(int capacitors, string ratio, int switches) =>
        Assert.Equal(switches, SmallestConverter.Find(Requests.Of(capacitors, ratio)).Cost);

    [Fact]
    public void The_heuristic_never_finds_fewer_on_any_two_networks()
    {
        int least = Solved.Of(Requests.Of(2, "1/2 1/3")).Cost!.Value;
        Converter[] halves = Networks(2, new Fraction(1, 2)), thirds = Networks(2, new Fraction(1, 3));
        int[] counts = [.. from half in halves from third in thirds select Overlay.Of("overlay", [half, third]).SwitchCount];
        Assert.True(counts.Length > 1, $"{counts.Length} pairs");
        Assert.All(counts, count => Assert.True(count >= least, $"{count} switches where {least} are proved least"));
        Assert.Equal(least, counts.Min());
    }

    // one network of each kind, with the fewest switches for it alone
    private static Converter[] Networks(int capacitors, Fraction ratio)
    {
        RatioCandidates candidates = RatioCandidates.Of(PhaseSpace.All(capacitors), [ratio], default)[0];
        List<Converter> networks = [];
        foreach ((int first, int second) in Orbits.Representatives(candidates.Groups, candidates.Pairs))
        {
            foreach (Wiring a in candidates.Groups[first].Space.Wirings)
            {
                foreach (Wiring b in candidates.Groups[second].Space.Wirings)
                {
                    if (SearchedNetwork.TryCreate([a, b], SwitchLayout.LowestBlocking, out SearchedNetwork? network))
                    {
                        networks.Add(network.ToConverter(ratio.ToString(System.Globalization.CultureInfo.InvariantCulture)));
                    }
                }
            }
        }

        return [.. networks];
    }
}
