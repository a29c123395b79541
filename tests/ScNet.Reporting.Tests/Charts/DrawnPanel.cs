using System.Xml.Linq;
using ScNet.Reporting.Charts.Plotting;

namespace ScNet.Reporting.Tests.Charts;

/// <summary>A panel of a chart: its frame, what is drawn in it, and the scales that the texts at its ticks tell.</summary>
internal sealed class DrawnPanel
{
    private const double NearPixels = 9;

    private readonly XElement _group;

    public DrawnPanel(XElement group, IReadOnlyList<DrawnText> texts)
    {
        _group = group;
        IReadOnlyList<(double X, double Y)>[] strokes = [.. Of("axis").SelectMany(DrawnChart.Lines)];
        IReadOnlyList<(double X, double Y)> upright = strokes.MaxBy(s => Math.Abs(s[0].Y - s[^1].Y))!, level = strokes.MaxBy(s => Math.Abs(s[0].X - s[^1].X))!;
        Area = new Box(level.Min(p => p.X), upright.Min(p => p.Y), level.Max(p => p.X), upright.Max(p => p.Y));
        double[] atX = [.. strokes.Where(s => s != upright && s[0].X == s[^1].X && s[0].Y != s[^1].Y).Select(s => s[0].X)];
        double[] atY = [.. strokes.Where(s => s != level && s[0].Y == s[^1].Y && s[0].X != s[^1].X).Select(s => s[0].Y)];

        // those next below, as panels above one another may share theirs
        double below = texts.Where(t => t.Name == "tick-x" && t.Y > Area.Bottom).Select(t => t.Y).DefaultIfEmpty().Min();
        XTicks = [.. texts.Where(t => t.Name == "tick-x" && t.Y == below).Select(t => (Nearest(atX, t.X), t.Text))];
        YTicks = [.. texts.Where(t => t.Name == "tick-y" && t.Y > Area.Top - NearPixels && t.Y < Area.Bottom + NearPixels).Select(t => (Nearest(atY, t.Y - (0.35 * t.SizePixels)), t.Text))];
        XTitle = texts.Where(t => t.Name == "axis-x").Select(t => t.Text).FirstOrDefault() ?? string.Empty;
        YTitle = texts.Where(t => t.Name == "axis-y" && t.Y < Area.Top).OrderBy(t => Area.Top - t.Y).Select(t => t.Text).FirstOrDefault() ?? string.Empty;
    }

    public Box Area { get; }

    /// <summary>The place of each tick with a text, in pixels, and the text.</summary>
    public IReadOnlyList<(double Pixel, string Text)> XTicks { get; }

    public IReadOnlyList<(double Pixel, string Text)> YTicks { get; }

    public string XTitle { get; }

    public string YTitle { get; }

    /// <summary>The scale across, from the first and last tick.</summary>
    public DrawnScale XScale => new(XTicks, XTitle.EndsWith(", log scale", StringComparison.Ordinal));

    public DrawnScale YScale => new(YTicks, YTitle.EndsWith(", log scale", StringComparison.Ordinal));

    public IEnumerable<XElement> All => _group.Elements();

    /// <summary>What has a class.</summary>
    public IEnumerable<XElement> Of(string name) => _group.Elements().Where(e => (string?)e.Attribute("class") == name);

    /// <summary>The lines of a class, corner by corner, in pixels.</summary>
    public IReadOnlyList<IReadOnlyList<(double X, double Y)>> Lines(string name) => [.. Of(name).Where(e => e.Name.LocalName == "path").SelectMany(DrawnChart.Lines)];

    /// <summary>The rectangles of a class in pixels.</summary>
    public IReadOnlyList<Box> Bars(string name) => [.. Of(name).Where(e => e.Name.LocalName == "rect").Select(BoxOf)];

    public static Box BoxOf(XElement rect)
    {
        double At(string attribute) => DrawnChart.Number((string?)rect.Attribute(attribute) ?? "0");
        return new Box(At("x"), At("y"), At("x") + At("width"), At("y") + At("height"));
    }

    // rows of bars have names and no ticks
    private static double Nearest(double[] places, double place)
    {
        if (places.Length == 0)
        {
            return place;
        }

        double nearest = places.MinBy(p => Math.Abs(p - place));
        Assert.InRange(nearest, place - NearPixels, place + NearPixels);
        return nearest;
    }
}
