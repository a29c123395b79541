using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using ScNet.Reporting.Charts.Plotting;

namespace ScNet.Reporting.Tests.Charts;

/// <summary>
/// A chart read back from its SVG alone: lines, bars and texts by class, and values by what the ticks say. It knows nothing of
/// how the chart was made.
/// </summary>
internal sealed partial class DrawnChart
{
    private readonly XElement _root;

    public DrawnChart(Picture picture)
    {
        _root = XDocument.Parse(picture.ToSvg()).Root!;
        Texts = [.. _root.Descendants().Where(e => e.Name.LocalName == "text").Select(e => new DrawnText(e))];
        Panels = [.. _root.Elements().Where(e => (string?)e.Attribute("class") == "panel").Select(g => new DrawnPanel(g, Texts))];
    }

    public IReadOnlyList<DrawnText> Texts { get; }

    public IReadOnlyList<DrawnPanel> Panels { get; }

    /// <summary>What stands beside the texts of the legend.</summary>
    public IEnumerable<XElement> Samples => _root.Elements().Where(e => e.Name.LocalName is "path" or "rect" && (string?)e.Attribute("class") is not ("ground" or "plate"));

    public string Ground => (string)_root.Elements().First(e => (string?)e.Attribute("class") == "ground").Attribute("fill")!;

    public IEnumerable<XElement> Plates => _root.Descendants().Where(e => (string?)e.Attribute("class") == "plate");

    public IEnumerable<string> TextsOf(string name) => Texts.Where(t => t.Name == name).Select(t => t.Text);

    /// <summary>The corners of the lines in a path of absolute moves and lines.</summary>
    public static IReadOnlyList<IReadOnlyList<(double X, double Y)>> Lines(XElement path) =>
        [.. ((string)path.Attribute("d")!).Split('M', StringSplitOptions.RemoveEmptyEntries).Select(line => (IReadOnlyList<(double, double)>)
            [.. Pair().Matches(line).Select(m => (Number(m.Groups[1].Value), Number(m.Groups[2].Value)))])];

    public static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"(-?[\d.]+) (-?[\d.]+)")]
    private static partial Regex Pair();
}

/// <summary>A text with the rectangle that its letters take.</summary>
internal sealed record DrawnText(XElement Element)
{
    public string Name => (string)Element.Attribute("class")!;

    public string Text => Element.Value;

    public double X => DrawnChart.Number((string)Element.Attribute("x")!);

    public double Y => DrawnChart.Number((string)Element.Attribute("y")!);

    public double SizePixels => DrawnChart.Number((string?)Element.Attribute("font-size") ?? (string)Element.Parent!.Attribute("font-size")!);

    public string Fill => (string?)Element.Attribute("fill") ?? (string)Element.Parent!.Attribute("fill")!;

    public Box Box
    {
        get
        {
            double width = PictureFont.WidthPixels(Text, SizePixels, (string?)Element.Attribute("font-weight") == "bold");
            double left = (string?)Element.Attribute("text-anchor") switch { "middle" => X - (width / 2), "end" => X - width, _ => X };

            // capitals of the font reach 0.73 of its size up, and letters 0.24 down (read from the font)
            return new Box(left, Y - (0.73 * SizePixels), left + width, Y + (0.24 * SizePixels));
        }
    }
}
