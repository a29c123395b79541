using System.Text;

namespace ScNet.Results.Pages;

/// <summary>Writes a page as plain text. A column is as wide as its longest cell; two blanks stand between columns.</summary>
internal static class PageText
{
    private const string Indent = "  ";

    public static string Of(Page page)
    {
        StringBuilder text = new();
        text.Append(Printable.Of(page.Title)).Append('\n');
        foreach (PageBlock block in page.Blocks)
        {
            Append(text, block);
        }

        return text.ToString();
    }

    private static void Append(StringBuilder text, PageBlock block)
    {
        switch (block)
        {
            case PageHeading heading:
                text.Append('\n').Append(heading.Level > 1 ? Indent : string.Empty).Append(Printable.Of(heading.Text)).Append('\n');
                break;
            case PageFigures figures:
                AppendLines(text, [.. figures.Figures.Select(f => new[] { f.Name, f.Value })], [false, false]);
                break;
            case PageTable table:
                if (table.Caption.Length > 0)
                {
                    text.Append('\n').Append(Indent).Append(Printable.Of(table.Caption)).Append('\n');
                }

                AppendLines(
                    text,
                    [[.. table.Columns.Select(c => c.Heading)], .. table.Rows.Select(r => r.Select(c => c.Text).ToArray())],
                    [.. table.Columns.Select(c => c.IsFigure)]);
                break;
            case PageRemarks remarks:
                foreach (string line in remarks.Lines)
                {
                    text.Append(Indent).Append(Printable.Of(line)).Append('\n');
                }

                break;
        }
    }

    private static void AppendLines(StringBuilder text, string[][] lines, bool[] isFigure)
    {
        string[][] shown = [.. lines.Select(l => l.Select(Printable.Of).ToArray())];
        int[] widths = [.. isFigure.Select((_, c) => shown.Max(l => Width(l[c])))];
        foreach (string[] line in shown)
        {
            StringBuilder one = new(Indent);
            for (int c = 0; c < line.Length; c++)
            {
                string blanks = new(' ', widths[c] - Width(line[c]));
                one.Append(c > 0 ? Indent : string.Empty).Append(isFigure[c] ? blanks : string.Empty).Append(line[c]).Append(isFigure[c] ? string.Empty : blanks);
            }

            text.Append(one.ToString().TrimEnd()).Append('\n');
        }
    }

    // what a reader counts as one character
    private static int Width(string text) => new System.Globalization.StringInfo(text).LengthInTextElements;
}
