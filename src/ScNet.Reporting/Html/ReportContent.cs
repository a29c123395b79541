using ScNet.Results.Pages;

namespace ScNet.Reporting.Html;

/// <summary>What a report says, before it is written.</summary>
/// <param name="Kind">What kind of report it is.</param>
/// <param name="Title">Its title.</param>
/// <param name="Lead">What it is about, in a line.</param>
/// <param name="Glance">The figures that are read first.</param>
/// <param name="Sections">Its sections: each has a heading, a page that of its title.</param>
internal sealed record ReportContent(string Kind, string Title, string Lead, IReadOnlyList<GlanceFigure> Glance, IReadOnlyList<ReportPart> Sections);

/// <summary>A figure that is read first.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Value">Its value with unit.</param>
/// <param name="Note">What belongs to it; empty for nothing.</param>
internal sealed record GlanceFigure(string Name, string Value, string Note = "");

/// <summary>A section, or a part of one, with a heading.</summary>
/// <param name="Title">The heading.</param>
/// <param name="Parts">What stands below it; a section among them is a part with a heading of its own.</param>
internal sealed record ReportSection(string Title, IReadOnlyList<ReportPart> Parts) : ReportPart;

/// <summary>What stands in a section.</summary>
internal abstract record ReportPart;

/// <summary>A page of results: a part with the page's title as heading.</summary>
internal sealed record PagePart(Page Page) : ReportPart;

/// <summary>Pictures side by side where there is room.</summary>
internal sealed record PicturesPart(IReadOnlyList<PicturePair> Pictures) : ReportPart;

/// <summary>Paragraphs.</summary>
/// <param name="Paragraphs">One text each.</param>
/// <param name="IsCaution">Whether they warn.</param>
internal sealed record ProsePart(IReadOnlyList<string> Paragraphs, bool IsCaution = false) : ReportPart;

/// <summary>Statements, a line each.</summary>
internal sealed record ListPart(IReadOnlyList<string> Lines) : ReportPart;

/// <summary>How figures came about.</summary>
internal sealed record OriginsPart(IReadOnlyList<Origin> Origins) : ReportPart;

/// <summary>A picture on light and on dark ground.</summary>
internal sealed record PicturePair(Picture Light, Picture Dark)
{
    public static PicturePair Of(Func<Appearance, Picture> draw) => new(draw(Appearance.Light), draw(Appearance.Dark));
}
