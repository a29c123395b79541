using System.Globalization;
using System.Net;
using System.Text;

namespace ScNet.Results.Pages;

/// <summary>Writes a page as a fragment of HTML: a section with headings, tables with captions, and lists of remarks.</summary>
internal static class PageHtml
{
    public static string Of(Page page)
    {
        StringBuilder html = new();
        html.Append(CultureInfo.InvariantCulture, $"<section class=\"scnet-page\">\n<h2>{Text(page.Title)}</h2>\n");
        foreach (PageBlock block in page.Blocks)
        {
            Append(html, block);
        }

        return html.Append("</section>\n").ToString();
    }

    private static void Append(StringBuilder html, PageBlock block)
    {
        switch (block)
        {
            case PageHeading heading:
                html.Append(CultureInfo.InvariantCulture, $"<h{heading.Level + 2}>{Text(heading.Text)}</h{heading.Level + 2}>\n");
                break;
            case PageFigures figures:
                html.Append("<table class=\"figures\"><tbody>\n");
                foreach (PageFigure figure in figures.Figures)
                {
                    html.Append(CultureInfo.InvariantCulture, $"<tr><th scope=\"row\">{Text(figure.Name)}</th><td>{Text(figure.Value)}</td></tr>\n");
                }

                html.Append("</tbody></table>\n");
                break;
            case PageTable table:
                AppendTable(html, table);
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

    private static void AppendTable(StringBuilder html, PageTable table)
    {
        html.Append("<table class=\"rows\">");
        if (table.Caption.Length > 0)
        {
            html.Append(CultureInfo.InvariantCulture, $"<caption>{Text(table.Caption)}</caption>");
        }

        html.Append("<thead>\n<tr>");
        foreach (PageColumn column in table.Columns)
        {
            string meaning = column.Meaning is { } words ? $" title=\"{Text(words)}\"" : string.Empty;
            html.Append(CultureInfo.InvariantCulture, $"<th scope=\"col\"{(column.IsFigure ? " class=\"figure\"" : string.Empty)}{meaning}>{Text(column.Heading)}</th>");
        }

        html.Append("</tr>\n</thead><tbody>\n");
        foreach (IReadOnlyList<PageCell> row in table.Rows)
        {
            html.Append("<tr>");
            for (int c = 0; c < row.Count; c++)
            {
                string order = row[c].SortValue is { } value ? $" data-order=\"{value.ToString("R", CultureInfo.InvariantCulture)}\"" : string.Empty;
                html.Append(CultureInfo.InvariantCulture, $"<td{(table.Columns[c].IsFigure ? " class=\"figure\"" : string.Empty)}{order}>{Text(row[c].Text)}</td>");
            }

            html.Append("</tr>\n");
        }

        html.Append("</tbody></table>\n");
    }

    private static string Text(string text) => WebUtility.HtmlEncode(Printable.Of(text));
}
