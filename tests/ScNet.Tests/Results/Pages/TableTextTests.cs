using ScNet.Results.Pages;

namespace ScNet.Tests.Results.Pages;

public sealed class TableTextTests
{
    private static readonly PageColumn[] s_columns = [new("name", false), new("ohms", true), new("kind", false)];

    [Fact]
    public void Words_align_left_and_figures_right_also_with_wide_letters() => Assert.Equal(
        """
        T

        name  ohms  kind
        電荷     1  a
        s1     -20  [b]

        """.ReplaceLineEndings("\n"),
        Text(["電荷", "1", "a"], ["s1", "-20", "[b]"]));

    [Fact]
    public void A_long_cell_of_words_goes_on_below_itself_and_nothing_is_cut() => Assert.Equal(
        """
        T

        name  ohms  kind
        a        1  one two three four five six
                    seven eight nine ten eleven
        b        2  x

        """.ReplaceLineEndings("\n"),
        Text(["a", "1", "one two three four five six seven eight nine ten eleven"], ["b", "2", "x"]));

    [Fact]
    public void A_name_longer_than_a_line_is_broken_and_all_of_it_is_there()
    {
        string name = string.Concat(Enumerable.Range(0, 500).Select(i => (char)('a' + (i % 26))));
        string[] lines = Text([name, "1", "a"]).Split('\n');
        Assert.All(lines, line => Assert.InRange(line.Length, 0, 40));
        Assert.Equal(name, string.Concat(lines.Skip(3).Select(line => line.Split(' ')[0])));
    }

    [Fact]
    public void A_table_too_wide_goes_on_in_pieces_with_the_names_and_keeps_groups_together()
    {
        Page page = new("T", [new PageTable(
            string.Empty,
            [new("name", false), new("kind", false), .. Enumerable.Range(1, 3).Select(i => new PageColumn($"charge {i}", true, Group: "charge")), .. Enumerable.Range(1, 5).Select(i => new PageColumn($"blocks {i}", true, Group: "blocks"))],
            [["s1", "p", "1", "2", "3", "4", "5", "6", "7", "8"], ["s2", "p", "1", "2", "3", "4", "5", "6", "7", "8"]])]);
        Assert.Equal(
            """
            T

            name  kind  charge 1  charge 2  charge 3
            s1    p            1         2         3
            s2    p            1         2         3

            name  blocks 1  blocks 2  blocks 3
            s1           4         5         6
            s2           4         5         6

            name  blocks 4  blocks 5
            s1           7         8
            s2           7         8

            """.ReplaceLineEndings("\n"),
            page.ToText(40));
    }

    [Fact]
    public void A_cell_of_several_lines_stays_on_one() =>
        Assert.Contains(@"a\u000D\u000Ab\u0009c\u2028d\u001B[0m", Text(["a\r\nb\tc\u2028d\u001b[0m", "1", "a"], 100), StringComparison.Ordinal);

    private static string Text(params string[][] rows) => new Page("T", [new PageTable(string.Empty, s_columns, rows.Select(r => r.Select(c => new PageCell(c))))]).ToText(40);

    private static string Text(string[] row, int width) => new Page("T", [new PageTable(string.Empty, s_columns, [row.Select(c => new PageCell(c))])]).ToText(width);
}
