using Fractions;
using ScNet.Results.Pages;
using ScNet.Search.Pages;
using ScNet.Search.Shards;
using ScNet.Search.Tests.Shards;

namespace ScNet.Search.Tests.Pages;

/// <summary>What a notebook and a report show of a search.</summary>
public class ShownAnswersTests
{
    private static readonly Atlas s_two = Atlas.Of(2);
    private static readonly AtlasAnswer s_third = AtlasAnswer.Of(new AtlasQuery(new Fraction(1, 3)) { CapacitorCount = 2 }, s_two);
    private static readonly AtlasAnswer s_none = AtlasAnswer.Of(new AtlasQuery(new Fraction(1, 7)) { CapacitorCount = 2 }, s_two);

    [Fact]
    public void Every_type_of_result_and_every_list_of_it_shows_as_a_page()
    {
        using ShardFolder shards = new();
        ShardRun part = ShardRun.Of(new AtlasShard(1, 1, 1), shards.Parts);
        object[] roots = [part, shards.Merge(), ThreePhaseAtlas.Of(2), s_two, s_third, s_none, s_two.Front(new Fraction(1, 2)), CapacitorMap.All(2).First()];
        IReadOnlyDictionary<Type, List<object>> found = ShownTypes.Reached(roots, typeof(Atlas).Assembly);
        Assert.Empty(ShownTypes.ThatShouldShow(typeof(Atlas).Assembly).Except(found.Keys));
        string faults = string.Join('\n', found.Where(f => ShownTypes.ThatShouldShow(f.Key.Assembly).Contains(f.Key)).SelectMany(f => ShownTypes.Faults(f.Key, f.Value[0])));
        Assert.True(faults.Length == 0, faults);
    }

    [Fact]
    public void An_answer_shows_as_its_page()
    {
        Assert.Equal(FindPage.Of(s_third).ToText(), ResultPage.Of(s_third)!.ToText());
        Assert.True(FindPage.Of(s_third).IsComplete);
        PageTable table = FindPage.Of(s_third).Blocks.OfType<PageTable>().First();
        Assert.Equal(s_third.Networks.Select(n => n.Name), table.Rows.Select(r => r[0].Text));
        Assert.Equal(s_third.Networks.Select(n => (double?)(double)n.Network.Measures.PlateSwing), table.Rows.Select(r => r[9].SortValue));
        Assert.Equal(s_third.Networks[^1].Name, FindPage.Of(s_third, order: [s_third.Networks.Count - 1]).Blocks.OfType<PageTable>().First().Rows[0][0].Text);
    }

    [Fact]
    public void A_network_shows_its_measures_capacitors_and_switches()
    {
        SearchedNetwork half = AtlasAnswer.Of(new AtlasQuery(new Fraction(1, 2)) { CapacitorCount = 1 }).Networks[0].Network;
        PageBlock[] blocks = [.. ResultPage.Of(half)!.Blocks];
        Assert.Equal("4", Assert.IsType<PageFigures>(blocks[0]).Figures.Single(f => f.Name == "Number of switches").Value);
        Assert.Equal(["c1", "1/2", "1/2", "-1/2"], Assert.IsType<PageTable>(blocks[1]).Rows[0].Select(c => c.Text));
        Assert.All(Assert.IsType<PageTable>(blocks[2]).Rows, r => Assert.Equal("1/2", r[4].Text));
    }

    [Fact]
    public void None_shows_its_statement_and_is_not_complete()
    {
        Page page = FindPage.Of(s_none);
        Assert.False(page.IsComplete);
        Assert.Equal([s_none.Statement, .. s_none.Reasons], Assert.IsType<PageRemarks>(Assert.Single(page.Blocks)).Lines);
    }

    [Fact]
    public void Headings_lead_to_columns_of_the_table() =>
        Assert.Equal(FindTable.Columns, FindPage.Columns.Select(c => c.Key));

    /// <summary>No list that is handed out can be cast to one that can be changed, and many threads may ask at once.</summary>
    [Fact]
    public void An_answer_cannot_be_changed_and_serves_many_threads()
    {
        Assert.Throws<NotSupportedException>(() => ((IList<FoundNetwork>)s_third.Networks).Clear());
        Assert.Throws<NotSupportedException>(() => ((IList<string>)s_none.Reasons).Clear());
        Assert.All(s_third.Networks, n => Assert.Throws<NotSupportedException>(() => ((IList<string>)n.Families).Clear()));
        AtlasAnswer fresh = AtlasAnswer.Of(s_third.Query, s_two);
        string[] names = [.. Enumerable.Range(0, 64).AsParallel().Select(i => fresh.Networks[i % fresh.Networks.Count].Name)];
        Assert.Equal(s_third.Networks.Select(n => n.Name).Order(), names.Distinct().Order());
    }

    [Theory]
    [InlineData("")]
    [InlineData("sv-SE")]
    [InlineData("fa-IR")]
    public void Names_and_texts_are_the_same_in_every_culture(string culture)
    {
        using CultureScope scope = new(culture);
        AtlasAnswer answer = AtlasAnswer.Of(new AtlasQuery(new Fraction(-1, 2)) { CapacitorCount = 2, HighestSwitchVoltage = new Fraction(3, 2), MostSwitches = 7 }, s_two);
        Assert.Equal("-1/2 by up to 2 flying capacitors, every switch at or below 3/2 times the input, at most 7 switches", answer.Query.ToString());
        Assert.All(answer.Networks, n => Assert.StartsWith("minus-1-2-c2-s", n.Name, StringComparison.Ordinal));
    }
}
