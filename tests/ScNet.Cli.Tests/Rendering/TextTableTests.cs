using ScNet.Cli.Rendering;

namespace ScNet.Cli.Tests.Rendering;

public sealed class TextTableTests
{
    [Fact]
    public void Words_align_left_and_figures_right_also_with_wide_letters()
    {
        Assert.Equal(
            """
              name  ohms  kind
              電荷     1  a
              s1     -20  [b]

            """.ReplaceLineEndings("\n"),
            Write(["電荷", "1", "a"], ["s1", "-20", "[b]"]));
    }

    [Fact]
    public void A_long_cell_is_neither_wrapped_nor_cut()
    {
        string name = string.Join(' ', Enumerable.Repeat("word", 1000));
        string[] lines = Write([name, "1", "a"]).Split('\n');
        Assert.Equal(3, lines.Length);
        Assert.Equal($"  {name}     1  a", lines[1]);
    }

    [Fact]
    public void A_cell_of_several_lines_stays_on_one()
    {
        Assert.Contains(@"a\u000D\u000Ab\u0009c\u2028d\u001B[0m", Write(["a\r\nb\tc\u2028d\u001b[0m", "1", "a"]), StringComparison.Ordinal);
    }

    private static string Write(params string[][] rows)
    {
        TextTable table = new TextTable(indent: "  ").Words("name").Figures("ohms").Words("kind");
        foreach (string[] row in rows)
        {
            table.Row(row);
        }

        using StringWriter output = new() { NewLine = "\n" };
        table.Write(output);
        return output.ToString();
    }
}
