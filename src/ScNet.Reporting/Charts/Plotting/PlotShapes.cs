using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using SkiaSharp;

namespace ScNet.Reporting.Charts.Plotting;

/// <summary>What the plotting library drew, as elements with the names, colours and dashes of their inks.</summary>
internal static partial class PlotShapes
{
    private static readonly XNamespace s_svg = Figure.Namespace;

    /// <summary>Draws and names the elements of one panel, in the order drawn.</summary>
    public static IEnumerable<XElement> Of(Panel panel, int widthPixels, int heightPixels, Ink grid, Ink frame, InkKeys keys)
    {
        using MemoryStream bytes = new();
        using (SKCanvas canvas = SKSvgCanvas.Create(new SKRect(0, 0, widthPixels, heightPixels), bytes))
        {
            panel.Draw(canvas, widthPixels, heightPixels, grid, frame);
        }

        bytes.Position = 0;
        return Joined(XDocument.Load(bytes).Root!.Descendants().Where(IsShape).Select(shape => Named(shape, keys)));
    }

    // backgrounds are transparent, and nothing that is drawn lies outside of its panel, so that groups and what clips them can go
    private static bool IsShape(XElement element) =>
        element.Name.LocalName is not ("g" or "clipPath") && element.Parent!.Name.LocalName != "clipPath" && (string?)element.Attribute("fill-opacity") != "0";

    private static XElement Named(XElement drawn, InkKeys keys)
    {
        XElement shape = new(s_svg + drawn.Name.LocalName, drawn.Attributes().Select(a => new XAttribute(a.Name, Rounded(a))));
        string? stroke = (string?)shape.Attribute("stroke");
        return stroke is not null ? keys.Of(stroke).Stroke(shape) : keys.Of((string)shape.Attribute("fill")!).Fill(shape);
    }

    // lines of one ink that follow one another are one element
    private static List<XElement> Joined(IEnumerable<XElement> shapes)
    {
        List<XElement> joined = [];
        foreach (XElement shape in shapes)
        {
            if (shape.Name == s_svg + "path" && joined.LastOrDefault() is { } last && last.Name == shape.Name
                && (string?)last.Attribute("class") == (string?)shape.Attribute("class") && (string?)shape.Attribute("fill") == "none")
            {
                last.SetAttributeValue("d", (string)last.Attribute("d")! + (string)shape.Attribute("d")!);
            }
            else
            {
                joined.Add(shape);
            }
        }

        return joined;
    }

    private static string Rounded(XAttribute attribute) => attribute.Name.LocalName is "d" or "x" or "y" or "width" or "height" or "cx" or "cy" or "rx" or "ry"
        ? Number().Replace(attribute.Value, m => double.Parse(m.Value, CultureInfo.InvariantCulture).ToString("0.##", CultureInfo.InvariantCulture))
        : attribute.Value;

    [GeneratedRegex(@"-?\d+(\.\d+)?(e[+-]?\d+)?")]
    private static partial Regex Number();
}
