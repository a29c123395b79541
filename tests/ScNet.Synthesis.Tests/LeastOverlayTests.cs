using Fractions;
using ScNet.Analysis;
using ScNet.Design.Choice;
using ScNet.Design.Requirements;
using ScNet.Netlists;
using ScNet.Reconfiguration;
using ScNet.Topologies;
using DesignCandidates = ScNet.Design.Choice.Candidates;

namespace ScNet.Synthesis.Tests;

/// <summary>Given networks laid over one another: never more switches than the heuristic's, and none fewer.</summary>
public class LeastOverlayTests
{
    private static readonly LeastOverlay s_least = new();

    public static TheoryData<string> Sets => new("1/2 1/3", "1/3 2/3", "1/2 1/3 2/3", "1/3 2/5", "1/4 3/4", "1/5 1/4", "1/2 3/5", "2/5 3/5");

    [Theory]
    [MemberData(nameof(Sets))]
    public void The_heuristic_never_has_fewer_switches(string ratios)
    {
        Converter[] networks = [.. Requests.Ratios(ratios).Select(Divider)];
        Overlay heuristic = Overlay.Of("overlay", networks), least = s_least.Lay("overlay", networks);
        Assert.True(least.IsProvedLeast);
        Assert.True(least.SwitchCount <= heuristic.SwitchCount, $"{least.SwitchCount} against {heuristic.SwitchCount}");
        Assert.Equal(heuristic.SeparateSwitchCount, least.SeparateSwitchCount);
        Assert.Equal(networks.Select(n => n.Name), least.Converter.Modes.Select(m => m.Name));
        Assert.Equal(Requests.Ratios(ratios), ConverterAnalysis.Of(least.Converter).Results.Select(m => m.Ratio.ToFraction()));
    }

    // all maps of the second network's capacitors and all sets of pairs of terminals, judged by what they join
    [Theory]
    [InlineData("1/2 1/3")]
    [InlineData("1/3 2/3")]
    public void No_set_of_fewer_pairs_joins_every_group(string ratios)
    {
        Converter[] networks = [.. Requests.Ratios(ratios).Select(Divider)];
        int least = s_least.Lay("overlay", networks).SwitchCount;
        OverlayGroups[] groups = [.. networks.Select(OverlayGroups.Of)];
        List<int[]> joined = [];
        new OverlayMappings([.. groups.Select(g => g.CapacitorCount)]).Visit(maps =>
            joined.Add([.. groups.SelectMany((g, i) => g.Renamed(maps[i])).SelectMany(p => p).Select(g => g.Aggregate(0, (set, t) => set | (1 << t)))]));
        (int, int)[] pairs = [.. from second in Enumerable.Range(1, 6) from first in Enumerable.Range(0, second) select (first, second)];
        Assert.DoesNotContain(joined, blocks => Subsets(pairs, least - 1).Any(set => blocks.All(b => Joins(b, set))));
        Assert.Contains(joined, blocks => Subsets(pairs, least).Any(set => blocks.All(b => Joins(b, set))));
    }

    [Fact]
    public void A_choice_takes_gears_with_the_least_switches_where_it_is_told_to()
    {
        Requirement requirement = RequirementReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", "core-requirement.toml")).GetRequirement()
            with
        { Candidates = [new CandidateRequest { Families = ["fraction"], Sizes = new(2, 4), AreGears = true, Ratios = [new(1, 3), new(1, 2), new(2, 3)] }] };
        Candidate heuristic = Assert.Single(DesignCandidates.Of(requirement).All), least = Assert.Single(DesignCandidates.Of(requirement, overlays: s_least).All);
        Assert.Equal(3, least.Analysis!.Modes.Count);
        Assert.True(least.Analysis.Converter.Switches.Count <= heuristic.Analysis!.Converter.Switches.Count);

        Counting counting = new();
        _ = DesignCandidates.Of(requirement, overlays: counting);
        Assert.Equal(1, counting.Count);
    }

    [Fact]
    public void Without_the_effort_for_a_proof_the_heuristic_answers()
    {
        Converter[] networks = [Divider(new(1, 3)), Divider(new(2, 5))];
        Overlay found = new LeastOverlay(1e-9).Lay("overlay", networks);
        Assert.False(found.IsProvedLeast);
        Assert.Equal(NetlistWriter.ToToml(Overlay.Of("overlay", networks).Converter), NetlistWriter.ToToml(found.Converter));
        Assert.Throws<ArgumentOutOfRangeException>(() => new LeastOverlay(0));
    }

    private static Converter Divider(Fraction ratio) => FractionalDivider.Of((int)ratio.Numerator, (int)ratio.Denominator);

    private static IEnumerable<(int, int)[]> Subsets((int, int)[] pairs, int count, int from = 0)
    {
        if (count == 0)
        {
            yield return [];
            yield break;
        }

        for (int p = from; p <= pairs.Length - count; p++)
        {
            foreach ((int, int)[] rest in Subsets(pairs, count - 1, p + 1))
            {
                yield return [pairs[p], .. rest];
            }
        }
    }

    private static bool Joins(int block, (int First, int Second)[] set)
    {
        int reached = block & -block;
        for (int before = 0; before != reached;)
        {
            before = reached;
            foreach ((int first, int second) in set)
            {
                int ends = (1 << first) | (1 << second);
                reached |= (ends & ~block) == 0 && (ends & reached) != 0 ? ends : 0;
            }
        }

        return reached == block;
    }

    private sealed class Counting : IOverlayMethod
    {
        public int Count { get; private set; }

        public Overlay Lay(string name, IReadOnlyList<Converter> networks, IProgress<double>? progress = null, CancellationToken cancellationToken = default)
        {
            Count++;
            return OverlayHeuristic.Default.Lay(name, networks, progress, cancellationToken);
        }
    }
}
