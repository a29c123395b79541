using System.Globalization;
using System.Reflection;
using System.Security.Cryptography;
using System.Text;
using ScNet.Results.Pages;

namespace ScNet.Reporting.Html;

/// <summary>Writes a report as one file of HTML 5 that needs nothing but itself and may load nothing else.</summary>
internal sealed class ReportHtml
{
    // a picture wider than this can be moved in a box of its own on a narrow screen
    private const double WidePixels = 560;

    private readonly ColourPairs _colours = new();
    private int _pictures;

    public static string Of(ReportContent content) => new ReportHtml().Write(content);

    private string Write(ReportContent content)
    {
        StringBuilder body = new();
        foreach ((ReportPart section, int number) in content.Sections.Select((s, i) => (s, i + 1)))
        {
            Append(body, section, Name(number), level: 2);
        }

        string style = _colours.ToCss() + FontFaces() + Asset("report.css"), script = Asset("report.js");
        string title = Text(content.Title);
        StringBuilder html = new();
        html.Append(CultureInfo.InvariantCulture, $"""
            <!DOCTYPE html>
            <html lang="en">
            <head>
            <meta charset="utf-8">
            <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src '{Digest(style)}'; script-src '{Digest(script)}'; font-src data:; img-src data:; base-uri 'none'; form-action 'none'">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <meta name="generator" content="ScNet">
            <title>{title}</title>
            <link rel="icon" href="data:,">
            <style>{style}</style>
            </head>
            <body>
            <a class="skip" href="#text">To the text</a>
            <header class="head">
            <p class="kind">{Text(content.Kind)}</p>
            <h1>{title}</h1>
            <p class="lead">{Text(content.Lead)}</p>
            {Glance(content.Glance)}</header>
            <div class="sheet">
            <nav class="guide" aria-labelledby="contents">
            <div class="search" role="search" hidden><label for="find">Search in this report</label><input id="find" type="search" autocomplete="off" spellcheck="false" aria-describedby="found"><output id="found" for="find" aria-live="polite"></output></div>
            <h2 id="contents">Contents</h2>
            {Contents(content.Sections)}</nav>
            <main id="text" tabindex="-1">

            """);
        html.Append(body).Append(CultureInfo.InvariantCulture, $"""
            </main>
            </div>
            <footer class="foot"><p>Made with ScNet. {Text(string.Join(' ', Cautions.Dangers))}</p></footer>
            <div class="aside" id="said" role="status"></div>
            <script>{script}</script>
            </body>
            </html>

            """);
        return html.ToString().Replace("\r\n", "\n", StringComparison.Ordinal);
    }

    private void Append(StringBuilder html, ReportSection section, string id, int level)
    {
        html.Append(CultureInfo.InvariantCulture, $"<section id=\"{id}\" aria-labelledby=\"{id}-title\">\n<h{level} id=\"{id}-title\">{Text(section.Title)}</h{level}>\n");
        int number = 0;
        foreach (ReportPart part in section.Parts)
        {
            number += HasHeading(part) ? 1 : 0;
            Append(html, part, string.Create(CultureInfo.InvariantCulture, $"{id}-{number}"), level + 1);
        }

        html.Append("</section>\n");
    }

    private void Append(StringBuilder html, ReportPart part, string id, int level)
    {
        switch (part)
        {
            case ReportSection section:
                Append(html, section, id, level);
                break;
            case PagePart page:
                html.Append(CultureInfo.InvariantCulture, $"<div id=\"{id}\">\n{page.Page.ToHtml(level)}</div>\n");
                break;
            case PicturesPart pictures:
                html.Append(pictures.Pictures.Count == 1 ? "<div class=\"pictures single\">\n" : "<div class=\"pictures\">\n");
                foreach (PicturePair pair in pictures.Pictures)
                {
                    Append(html, pair);
                }

                html.Append("</div>\n");
                break;
            case ProsePart prose:
                html.Append(prose.IsCaution ? "<div class=\"caution\" role=\"note\">\n" : string.Empty).AppendJoin('\n', prose.Paragraphs.Select(p => $"<p>{Text(p)}</p>")).Append(prose.IsCaution ? "\n</div>\n" : "\n");
                break;
            case ListPart list:
                html.Append("<ul>\n").AppendJoin('\n', list.Lines.Select(l => $"<li>{Text(l)}</li>")).Append("\n</ul>\n");
                break;
            case OriginsPart origins:
                Append(html, origins.Origins);
                break;
        }
    }

    private void Append(StringBuilder html, PicturePair pair)
    {
        _pictures++;
        string kind = pair.Light.WidthPixels > WidePixels ? "picture wide" : "picture";
        string move = pair.Light.WidthPixels > WidePixels ? $" role=\"group\" tabindex=\"0\" aria-label=\"{Text(pair.Light.Title)}\"" : string.Empty;
        string id = string.Create(CultureInfo.InvariantCulture, $"v{_pictures}"), svg = InlineSvg.Of(pair.Light, pair.Dark, id, _colours);
        html.Append(
            CultureInfo.InvariantCulture,
            $"<figure><div class=\"{kind}\"{move}>{svg}</div><figcaption><details><summary>In words<span class=\"aside\">: {Text(pair.Light.Title)}</span></summary><p id=\"{id}-words\">{Text(pair.Light.Description)}</p></details></figcaption></figure>\n");
    }

    private static void Append(StringBuilder html, IReadOnlyList<Origin> origins)
    {
        html.Append("<div class=\"scnet-box\" role=\"group\" tabindex=\"0\" aria-label=\"How each kind of figure came about\"><table class=\"rows origins\"><thead>\n"
            + "<tr><th scope=\"col\">figure</th><th scope=\"col\">formula</th><th scope=\"col\">source</th><th scope=\"col\">theory</th></tr>\n</thead><tbody>\n");
        foreach (Origin origin in origins)
        {
            html.Append(
                CultureInfo.InvariantCulture,
                $"<tr><td>{Text(origin.Figure)}</td><td>{FormulaHtml.Of(origin.Formula)}</td><td>{Text(origin.Source)}</td><td>docs/theory/{Text(origin.Theory)}.md, “{Text(origin.Section)}”</td></tr>\n");
        }

        html.Append("</tbody></table></div>\n");
    }

    private static string Glance(IReadOnlyList<GlanceFigure> figures) => figures.Count == 0 ? string.Empty
        : "<dl class=\"glance\">\n" + string.Concat(figures.Select(f =>
            $"<div><dt>{Text(f.Name)}</dt><dd>{Text(f.Value)}{(f.Note.Length > 0 ? $"<small>{Text(f.Note)}</small>" : string.Empty)}</dd></div>\n")) + "</dl>\n";

    private static string Contents(IReadOnlyList<ReportPart> sections) =>
        "<ol>\n" + string.Concat(sections.Select((s, i) => $"<li><a href=\"#{Name(i + 1)}\">{Text(TitleOf(s))}</a>{Below(s, Name(i + 1))}</li>\n")) + "</ol>\n";

    private static string Below(ReportPart part, string id)
    {
        ReportPart[] parts = [.. part is ReportSection section ? section.Parts.Where(HasHeading) : []];
        return parts.Length == 0 ? string.Empty : "<ol>" + string.Concat(parts.Select((p, i) => string.Create(
            CultureInfo.InvariantCulture, $"<li><a href=\"#{id}-{i + 1}\">{Text(TitleOf(p))}</a></li>"))) + "</ol>";
    }

    private static string TitleOf(ReportPart part) => part is PagePart page ? page.Page.Title : ((ReportSection)part).Title;

    private static bool HasHeading(ReportPart part) => part is PagePart or ReportSection;

    private static string Name(int number) => string.Create(CultureInfo.InvariantCulture, $"s{number}");

    private static string FontFaces() => string.Concat(new[] { ("DejaVuSans.woff2", "normal"), ("DejaVuSans-Bold.woff2", "bold") }.Select(f =>
        $"@font-face {{ font-family: '{PictureFont.Family}'; font-weight: {f.Item2}; src: url(data:font/woff2;base64,{Convert.ToBase64String(PictureFont.Read(f.Item1))}) format('woff2'); }}\n"));

    private static string Asset(string name)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream($"ScNet.Reporting.Html.Assets.{name}")!;
        using StreamReader reader = new(stream, Encoding.UTF8);
        return reader.ReadToEnd().Replace("\r\n", "\n", StringComparison.Ordinal);
    }

    private static string Digest(string text) => "sha256-" + Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    private static string Text(string text) => HtmlText.Of(text);
}
