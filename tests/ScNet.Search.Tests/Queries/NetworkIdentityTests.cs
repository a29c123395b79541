using ScNet.Search.LoopSpaces;
using ScNet.Search.Queries;
using ScNet.Topologies;

namespace ScNet.Search.Tests.Queries;

public class NetworkIdentityTests
{
    private static readonly Lazy<Atlas> s_four = new(() => Atlas.Of(4));

    public static TheoryData<string, int[], bool> Members => new()
    {
        { "series-parallel", [2], false }, { "series-parallel", [3], false }, { "series-parallel", [4], false }, { "series-parallel", [5], false },
        { "series-parallel", [2], true }, { "series-parallel", [3], true }, { "series-parallel", [4], true }, { "series-parallel", [5], true },
        { "ladder", [2], false }, { "ladder", [3], false }, { "ladder", [2], true }, { "ladder", [3], true },
        { "dickson", [3], false }, { "dickson", [4], false }, { "dickson", [5], false }, { "dickson", [3], true }, { "dickson", [4], true }, { "dickson", [5], true },
        { "fibonacci", [1], false }, { "fibonacci", [2], false }, { "fibonacci", [3], false }, { "fibonacci", [4], false }, { "fibonacci", [4], true },
        { "doubler", [1], false }, { "doubler", [2], false }, { "doubler", [1], true }, { "doubler", [2], true },
        { "inverter", [1], false }, { "inverter", [2], false }, { "inverter", [2], true }, { "fraction", [2, 5], false }, { "recursive", [2, 3], false },
    };

    /// <summary>A member of a family with its capacitors renamed and turned and its phases exchanged is still told, and keeps its name.</summary>
    [Theory]
    [MemberData(nameof(Members))]
    public void A_family_is_recognised_however_it_is_numbered(string name, int[] numbers, bool isStepUp)
    {
        Family family = FamilyCatalogue.Named(name).First(f => f.Accepts(numbers));
        Converter member = family.Build(numbers, new FamilyOptions(isStepUp));
        string words = string.Join(' ', [name, .. numbers, .. isStepUp ? ["--step-up"] : Array.Empty<string>()]);
        Wiring[] phases = [ConverterWiring.Of(member, 1), ConverterWiring.Of(member, 2)];
        Assert.True(SearchedNetwork.TryCreate(phases, SwitchLayout.LowestBlocking, out SearchedNetwork? network));
        NetworkIdentity identity = NetworkIdentity.Of(network);
        Assert.Contains(words, identity.Families);
        CapacitorMap[] maps = [.. CapacitorMap.All(network.CapacitorCount)];
        foreach (CapacitorMap map in maps.Where((_, i) => i % Math.Max(1, maps.Length / 6) == 0))
        {
            Assert.True(SearchedNetwork.TryCreate([phases[1].Moved(map), phases[0].Moved(map)], SwitchLayout.LowestBlocking, out SearchedNetwork? moved));
            NetworkIdentity same = NetworkIdentity.Of(moved);
            Assert.Equal(identity.Name, same.Name);
            Assert.Equal(identity.Families, same.Families);
        }
    }

    /// <summary>The form against the plain definition: the least over all renamings, turns and orders.</summary>
    [Fact]
    public void The_form_is_equal_for_networks_that_become_one_another_and_for_no_others()
    {
        Dictionary<(ulong, ulong), string> seen = [];
        HashSet<string> forms = [];
        foreach (SearchedNetwork network in EveryNetwork.Upto2.Where(n => n.CapacitorCount == 2))
        {
            LoopSpace[] spaces = [.. network.Phases.Select(LoopSpace.Of)];
            string form = string.Join(' ', PhasesForm.Of(spaces).Keys.ToArray());
            (ulong, ulong) plain = CapacitorMap.All(2)
                .SelectMany(map => Enumerable.Range(0, 2).Select(p => (Key(network.Phases[p].Moved(map)), Key(network.Phases[1 - p].Moved(map))))).Min();
            Assert.Equal(form, seen.TryGetValue(plain, out string? known) ? known : seen[plain] = form);
            forms.Add(form);
        }

        Assert.Equal(seen.Count, forms.Count);
        Assert.Equal(31, forms.Count);

        static ulong Key(Wiring wiring) => LoopSpace.Of(wiring).Key;
    }

    /// <summary>No two networks of the atlas share a name, which would overwrite one netlist by another.</summary>
    [Fact]
    public void Names_of_the_atlas_are_all_different()
    {
        string[] names = [.. s_four.Value.Ratios.SelectMany(s_four.Value.Front).Select(n => new FoundNetwork(n).Name)];
        Assert.Equal(names.Length, names.Distinct(StringComparer.OrdinalIgnoreCase).Count());
        Assert.All(names, n => Assert.Matches("^(minus-)?[0-9]+(-[0-9]+)?-c[1-4]-s[0-9]+-([bcdfghjklmnpqrstvwxz][aeiou]){3}$", n));
    }

    [Fact]
    public void Networks_that_differ_in_wiring_or_switches_have_names_of_their_own()
    {
        IGrouping<string, SearchedNetwork>[] named = [.. EveryNetwork.Upto2.GroupBy(n => new FoundNetwork(n).Name)];
        Assert.All(named, same => Assert.Single(same.Select(n => (n.Ratio, n.Measures)).Distinct()));
    }

    /// <summary>Where a family measures as well as any, its own network answers.</summary>
    [Theory]
    [InlineData("1/3", 3, "ladder 3")]
    [InlineData("3", 3, "ladder 3 --step-up")]
    [InlineData("1/5", 3, "fibonacci 3")]
    [InlineData("1/4", 3, "series-parallel 4")]
    [InlineData("1/2", 1, "doubler 1")]
    public void Families_stand_in_the_answers(string ratio, int capacitors, string family) => Assert.Contains(
        family, AtlasAnswer.Of(new AtlasQuery(Fractions.Fraction.FromString(ratio, System.Globalization.CultureInfo.InvariantCulture)) { CapacitorCount = capacitors }).Networks.SelectMany(n => n.Families));
}
