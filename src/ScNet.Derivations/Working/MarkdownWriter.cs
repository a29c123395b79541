using System.Text;
using ScNet.Derivations.Expressions;

namespace ScNet.Derivations.Working;

/// <summary>Writes a document as Markdown with pipe tables; equations are plain text in fenced blocks.</summary>
internal static class MarkdownWriter
{
    private const string Special = "\\`*_{}[]<>#|~$&";

    public static string Write(IEnumerable<Block> blocks)
    {
        StringBuilder text = new();
        foreach (Block block in blocks)
        {
            if (text.Length > 0)
            {
                text.Append('\n');
            }

            Write(text, block);
        }

        return text.ToString();
    }

    private static void Write(StringBuilder text, Block block)
    {
        switch (block)
        {
            case Heading heading:
                text.Append('#', heading.Level).Append(' ').Append(Inline(heading.Text)).Append('\n');
                break;
            case Paragraph paragraph:
                text.Append(Inline(paragraph.Text)).Append('\n');
                break;
            case Bullets bullets:
                foreach (Line item in bullets.Items)
                {
                    text.Append("- ").Append(Inline(item)).Append('\n');
                }

                break;
            case Table table:
                Row(text, table.Header.Select(Escape));
                Row(text, table.Header.Select(_ => "---"));
                foreach (IReadOnlyList<Line> row in table.Rows)
                {
                    Row(text, row.Select(Inline));
                }

                break;
            case Equations equations:
                Write(text, equations);
                break;
        }
    }

    private static void Row(StringBuilder text, IEnumerable<string> cells)
    {
        foreach (string cell in cells)
        {
            text.Append("| ").Append(cell).Append(cell.Length > 0 ? " " : string.Empty);
        }

        text.Append("|\n");
    }

    private static void Write(StringBuilder text, Equations equations)
    {
        List<(string Label, string Equation, string Remark)> rows =
            [.. equations.Rows.Select(r => (r.Label, $"{r.Left} = {r.Right}", r.Remark.ToPlainText()))];
        int labelWidth = rows.Max(r => r.Label.Length);
        int equationWidth = rows.Max(r => r.Equation.Length);
        string fence = new('`', Math.Max(3, rows.Max(r => LongestRun($"{r.Equation} {r.Remark}")) + 1));
        text.Append(fence).Append("text\n");
        foreach ((string label, string equation, string remark) in rows)
        {
            string start = labelWidth > 0 ? label.PadRight(labelWidth + 2) : string.Empty;
            text.Append((start + equation.PadRight(equationWidth + 4) + remark).TrimEnd()).Append('\n');
        }

        text.Append(fence).Append('\n');
    }

    private static string Inline(Line line) => string.Concat(line.Spans.Select(s => s.Kind switch
    {
        SpanKind.Name => Code(NameText.Visible(s.Text)),
        SpanKind.Math => Code(s.Math!.ToString()),
        _ => Escape(s.Text),
    }));

    // A bar would end the cell of a table, even within code.
    private static string Code(string text)
    {
        string fence = new('`', LongestRun(text) + 1);
        string padding = fence.Length > 1 || text.StartsWith(' ') || text.EndsWith(' ') ? " " : string.Empty;
        return $"{fence}{padding}{text.Replace("|", "\\u007C", StringComparison.Ordinal)}{padding}{fence}";
    }

    private static string Escape(string text)
    {
        StringBuilder escaped = new(text.Length);
        foreach (char c in NameText.Visible(text))
        {
            if (Special.Contains(c, StringComparison.Ordinal))
            {
                escaped.Append('\\');
            }

            escaped.Append(c);
        }

        return escaped.ToString();
    }

    private static int LongestRun(string text)
    {
        int longest = 0, run = 0;
        foreach (char c in text)
        {
            run = c == '`' ? run + 1 : 0;
            longest = Math.Max(longest, run);
        }

        return longest;
    }
}
