using Fractions;
using ScNet.Design.Requirements.Toml;
using ScNet.Netlists.Toml;

namespace ScNet.Tests.Design.Requirements;

/// <summary>The values of one table: what comes of each, whether the table stays sound, and how many mistakes are told.</summary>
public sealed class RequirementTableTests
{
    [Fact]
    public void Items_of_an_array_are_all_of_the_kind_that_is_expected_or_none_of_them_counts()
    {
        Expect("families = [\"ladder\", \"dickson\"]", t => Assert.Equal(["ladder", "dickson"], t.Texts("families", "names")));
        Expect("families = [\"ladder\", 5]", t => Assert.Empty(t.Texts("families", "names")), mistakeCount: 1);
        Expect("families = []", t => Assert.Empty(t.Texts("families", "names")), mistakeCount: 1);
        Expect("ratios = [\"1/2\", 0.25]", t => Assert.Equal([new(1, 2), new Fraction(1, 4)], t.Exacts("ratios", "ratios")));
        Expect("ratios = [\"1/2\", true]", t => Assert.Empty(t.Exacts("ratios", "ratios")), mistakeCount: 1);
        Expect("ratios = []", t => Assert.Empty(t.Exacts("ratios", "ratios")), mistakeCount: 1);
        Expect("ratios = 0.5", t => Assert.Empty(t.Exacts("ratios", "ratios")), mistakeCount: 1);
    }

    [Fact]
    public void A_flag_is_true_only_where_it_says_so()
    {
        Expect("gears = true", t => Assert.True(t.Flag("gears")));
        Expect("gears = false", t => Assert.False(t.Flag("gears")));
        Expect("gears = 1", t => Assert.False(t.Flag("gears")), mistakeCount: 1);
        Expect("sizes = 1", t => Assert.False(t.Flag("gears")));
    }

    [Fact]
    public void Whole_numbers_go_from_1_to_the_largest_that_is_allowed()
    {
        Expect("sizes = 1", t => Assert.Equal(1, t.Whole("sizes", 7)));
        Expect("sizes = 20", t => Assert.Equal(20, t.Whole("sizes", 7, maximum: 20)));
        Expect("sizes = 21", t => Assert.Equal(7, t.Whole("sizes", 7, maximum: 20)), mistakeCount: 1);
        Expect("sizes = 0", t => Assert.Equal(7, t.Whole("sizes", 7)), mistakeCount: 1);
        Expect("sizes = true", t => Assert.Equal(7, t.Whole("sizes", 7)), mistakeCount: 1);
        Expect("gears = true", t => Assert.Equal(7, t.Whole("sizes", 7)));
        Expect("sizes = [2, 20]", t => Assert.Equal(new Interval<int>(2, 20), t.WholeRange("sizes", maximum: 20)));
        Expect("sizes = [2, 21]", t => Assert.False(t.WholeRange("sizes", maximum: 20).IsDetermined), mistakeCount: 1);
    }

    [Fact]
    public void Pairs_are_arrays_of_two_finite_numbers()
    {
        Expect("ratios = [[1, 2], [3, 4.5]]", t => Assert.Equal([(1, 2), (3, 4.5)], t.Pairs("ratios", "pairs")!.Select(p => (p.First, p.Second))));
        Expect("ratios = [[1, 2], [3, \"4\"]]", t => Assert.Null(t.Pairs("ratios", "pairs")), mistakeCount: 1);
        Expect("ratios = [[1, 2], [inf, 4]]", t => Assert.Null(t.Pairs("ratios", "pairs")), mistakeCount: 1);
        Expect("ratios = [[1, 2], [3]]", t => Assert.Null(t.Pairs("ratios", "pairs")), mistakeCount: 1);
        Expect("ratios = 5", t => Assert.Null(t.Pairs("ratios", "pairs")), mistakeCount: 1);
        Expect("sizes = 5", t => Assert.Null(t.Pairs("ratios", "pairs")));
    }

    [Fact]
    public void What_should_be_tables_and_is_a_value_is_told_once()
    {
        Expect("sizes = 5", t => Assert.Null(t.Tables("sizes", TableShape.Load, "load", "tables")), mistakeCount: 1);
        Expect("sizes = 5", t => Assert.Null(t.Table("sizes", TableShape.Load)), mistakeCount: 1);
        Expect("sizes = 5", t => Assert.Empty(t.NamedTables("sizes", TableShape.Control, "kind")), mistakeCount: 1);
        Expect("sizes = 5", t => Assert.Empty(t.NamedTables("ratios", TableShape.Control, "kind")));
    }

    private static void Expect(string text, Action<RequirementTable> read, int mistakeCount = 0)
    {
        DiagnosticList findings = new("a.toml");
        RequirementTable table = new(TomlDocument.Read(text, RequirementKeys.Format, findings)!.Value.Root, TableShape.Candidate, "the table", findings, isComplete: true);
        read(table);
        Assert.Equal((mistakeCount, mistakeCount == 0), (findings.Findings().Count, table.IsSound));
    }
}
