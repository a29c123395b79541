using System.Text;

namespace ScNet.Results.Pages;

/// <summary>Writes a page as plain text: what stands below a heading is indented, a blank line stands before headings of the parts, tables and what follows a table.</summary>
internal sealed class PageText
{
    private const int IndentOfLevel = 2;
    private const int Hanging = 4;

    // ECMA-48, select graphic rendition: bold, yellow, red, all off
    private const string Bold = "\u001b[1m", Yellow = "\u001b[33m", Off = "\u001b[0m";

    private readonly StringBuilder _text = new();
    private readonly int _width;
    private readonly bool _hasColour;
    private int _indent;

    private PageText(int width, bool hasColour)
    {
        _width = width;
        _hasColour = hasColour;
    }

    public static string Of(Page page, int width, bool hasColour)
    {
        PageText text = new(width, hasColour);
        text.AppendLines(page.Title, Bold);
        PageBlock? previous = null;
        foreach (PageBlock block in page.Blocks)
        {
            if ((block is PageHeading heading && (heading.Level == 1 || previous is not (PageHeading or PageRemarks))) || previous is PageTable || (block is PageTable && previous is not PageHeading))
            {
                text._text.Append('\n');
            }

            text.Append(block);
            previous = block;
        }

        return text._text.ToString();
    }

    private void Append(PageBlock block)
    {
        switch (block)
        {
            case PageHeading heading:
                _indent = IndentOfLevel * (heading.Level - 1);
                AppendLines(heading.Text, Bold);
                _indent += IndentOfLevel;
                break;
            case PageFigures figures:
                AppendFigures(figures.Figures);
                break;
            case PageTable table:
                AppendTable(table);
                break;
            case PageRemarks remarks:
                foreach (string line in remarks.Lines)
                {
                    AppendLines(line, remarks.IsCaution ? Yellow : null);
                }

                break;
        }
    }

    private void AppendTable(PageTable table)
    {
        if (table.Caption.Length > 0)
        {
            AppendLines(table.Caption);
        }

        bool isFirst = true;
        foreach ((IReadOnlyList<string> heading, IReadOnlyList<string> rows) in TableText.Of(table.Columns, [.. table.Rows.Select(r => r.Select(c => c.Text).ToArray())], table.NameColumns, _width - _indent))
        {
            if (!isFirst)
            {
                _text.Append('\n');
            }

            isFirst = false;
            foreach (string line in heading)
            {
                AppendLine(line, Bold);
            }

            foreach (string line in rows)
            {
                AppendLine(line);
            }
        }

        if (table.Legend.Count > 0)
        {
            _text.Append('\n');
            AppendFigures(table.Legend);
        }
    }

    // the names are one column of words, the values go on below themselves
    private void AppendFigures(IReadOnlyList<PageFigure> figures)
    {
        int room = _width - _indent;
        string[] names = [.. figures.Select(f => Printable.Of(f.Name))];
        int widest = Math.Min(names.Select(TextWidth.Of).DefaultIfEmpty().Max(), room * 2 / 5);
        for (int i = 0; i < names.Length; i++)
        {
            IReadOnlyList<string> name = TextLines.Of(names[i], widest), value = TextLines.Of(Printable.Of(figures[i].Value), room - widest - IndentOfLevel);
            for (int k = 0; k < Math.Max(name.Count, value.Count); k++)
            {
                string left = k < name.Count ? name[k] : string.Empty;
                AppendLine($"{left}{new string(' ', widest - TextWidth.Of(left) + IndentOfLevel)}{(k < value.Count ? value[k] : string.Empty)}".TrimEnd());
            }
        }
    }

    private void AppendLines(string text, string? colour = null)
    {
        string printable = Printable.Of(text);
        int room = _width - _indent;
        if (TextWidth.Of(printable) <= room)
        {
            AppendLine(printable, colour);
            return;
        }

        // the lines after the first are set in, so that each text still begins where a reader looks for it
        IReadOnlyList<string> lines = TextLines.Of(printable, room - Hanging);
        for (int i = 0; i < lines.Count; i++)
        {
            AppendLine(i == 0 ? lines[i] : new string(' ', Hanging) + lines[i], colour);
        }
    }

    private void AppendLine(string line, string? colour = null)
    {
        if (line.Length > 0)
        {
            _text.Append(' ', _indent).Append(_hasColour ? colour : null).Append(line).Append(_hasColour && colour is not null ? Off : null);
        }

        _text.Append('\n');
    }
}
