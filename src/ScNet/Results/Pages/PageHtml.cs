using System.Globalization;
using System.Text;

namespace ScNet.Results.Pages;

/// <summary>Writes a page as a fragment of HTML: a section with headings, tables with captions, and lists of remarks.</summary>
/// <remarks>A table stands in a box of its own, which the reader of a narrow page can move by pointer and keyboard.</remarks>
internal static class PageHtml
{
    // a table of so many rows fits on one page of paper and is not parted
    private const int ShortRows = 12;

    public static string Of(Page page, int level)
    {
        StringBuilder html = new();
        html.Append(CultureInfo.InvariantCulture, $"<section class=\"scnet-page\">\n<h{level}>{Text(page.Title)}</h{level}>\n");
        foreach (PageBlock block in page.Blocks)
        {
            Append(html, block, level, page.Title);
        }

        return html.Append("</section>\n").ToString();
    }

    private static void Append(StringBuilder html, PageBlock block, int level, string title)
    {
        switch (block)
        {
            case PageHeading heading:
                int below = Math.Min(level + heading.Level, 6);
                html.Append(CultureInfo.InvariantCulture, $"<h{below}>{Text(heading.Text)}</h{below}>\n");
                break;
            case PageFigures figures:
                html.Append("<div class=\"scnet-box short\"><table class=\"figures\"><tbody>\n");
                foreach (PageFigure figure in figures.Figures)
                {
                    html.Append(CultureInfo.InvariantCulture, $"<tr><th scope=\"row\"{Attribute("data-key", figure.Key)}>{Text(figure.Name)}</th><td>{Text(figure.Value)}</td></tr>\n");
                }

                html.Append("</tbody></table></div>\n");
                break;
            case PageTable table:
                AppendTable(html, table, title);
                break;
            case PageRemarks remarks:
                html.Append(remarks.IsCaution ? "<ul class=\"caution\">\n" : "<ul class=\"remarks\">\n");
                foreach (string line in remarks.Lines)
                {
                    html.Append(CultureInfo.InvariantCulture, $"<li>{Text(line)}</li>\n");
                }

                html.Append("</ul>\n");
                break;
        }
    }

    private static void AppendTable(StringBuilder html, PageTable table, string title)
    {
        string size = table.Rows.Count <= ShortRows ? " short" : string.Empty;
        html.Append(
            CultureInfo.InvariantCulture,
            $"<div class=\"scnet-box{size}\" role=\"group\" tabindex=\"0\" aria-label=\"{Text(table.Caption.Length > 0 ? table.Caption : title)}\"><table class=\"rows\">");
        if (table.Caption.Length > 0)
        {
            html.Append(CultureInfo.InvariantCulture, $"<caption>{Text(table.Caption)}</caption>");
        }

        html.Append("<thead>\n<tr>");
        foreach (PageColumn column in table.Columns)
        {
            html.Append(CultureInfo.InvariantCulture, $"<th scope=\"col\"{Class(column)}{Attribute("data-key", column.Key)}{Attribute("title", column.Meaning)}>{Text(column.Heading)}</th>");
        }

        html.Append("</tr>\n</thead><tbody>\n");
        foreach (IReadOnlyList<PageCell> row in table.Rows)
        {
            html.Append("<tr>");
            for (int c = 0; c < row.Count; c++)
            {
                // what names the row is its heading
                string element = c < table.NameColumns ? "th" : "td";
                html.Append(CultureInfo.InvariantCulture, $"<{element}{(c < table.NameColumns ? " scope=\"row\"" : string.Empty)}{Class(table.Columns[c])}{Attribute("data-order", Order(row[c]))}>{Text(row[c].Text)}</{element}>");
            }

            html.Append("</tr>\n");
        }

        html.Append("</tbody></table></div>\n");
        if (table.Legend.Count > 0)
        {
            html.Append("<dl class=\"legend\">\n");
            foreach (PageFigure entry in table.Legend)
            {
                html.Append(CultureInfo.InvariantCulture, $"<dt>{Text(entry.Name)}</dt><dd>{Text(entry.Value)}</dd>\n");
            }

            html.Append("</dl>\n");
        }
    }

    private static string Class(PageColumn column) => column.IsFigure ? " class=\"figure\"" : string.Empty;

    // six digits: more put no rows in another order for a reader, and would differ between machines
    private static string? Order(PageCell cell) => cell.SortValue is { } value && !double.IsNaN(value) ? value.ToString("G6", CultureInfo.InvariantCulture) : null;

    private static string Attribute(string name, string? value) => value is null ? string.Empty : $" {name}=\"{Text(value)}\"";

    private static string Text(string text) => HtmlText.Of(text);
}
