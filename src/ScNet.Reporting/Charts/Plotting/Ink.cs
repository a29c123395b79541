using System.Globalization;
using System.Xml.Linq;

namespace ScNet.Reporting.Charts.Plotting;

/// <summary>How something in a chart is drawn. Its name is the class of the element in the SVG, by which styles and tests find it.</summary>
/// <param name="Name">What is drawn, in words joined by hyphens.</param>
/// <param name="Colour">The colour as "#rrggbb".</param>
internal sealed record Ink(string Name, string Colour)
{
    /// <summary>The width of a line in pixels (px).</summary>
    public double WidthPixels { get; init; } = 1;

    /// <summary>Lengths of dashes and gaps as in SVG; null for a solid line.</summary>
    public string? Dash { get; init; }

    /// <summary>From 0 (nothing is seen) to 1.</summary>
    public double Opacity { get; init; } = 1;

    /// <summary>The shape at each point of a line; null for none.</summary>
    public PointShape? Points { get; init; }

    /// <summary>Whether areas that touch one another leave no seam.</summary>
    public bool IsSeamless { get; init; }

    /// <summary>Sets what an element that is drawn as a line needs.</summary>
    public XElement Stroke(XElement element)
    {
        element.SetAttributeValue("class", Name);
        element.SetAttributeValue("fill", "none");
        element.SetAttributeValue("stroke", Colour);
        element.SetAttributeValue("stroke-width", WidthPixels.ToString("0.##", CultureInfo.InvariantCulture));
        element.SetAttributeValue("stroke-linejoin", "round");
        element.SetAttributeValue("stroke-miterlimit", null);
        element.SetAttributeValue("stroke-dasharray", Dash);
        element.SetAttributeValue("stroke-opacity", OpacityText);
        return element;
    }

    /// <summary>Sets what an element that is filled needs.</summary>
    public XElement Fill(XElement element)
    {
        element.SetAttributeValue("class", Name);
        element.SetAttributeValue("fill", Colour);
        element.SetAttributeValue("fill-opacity", OpacityText);
        element.SetAttributeValue("shape-rendering", IsSeamless ? "crispEdges" : null);
        return element;
    }

    private string? OpacityText => Opacity < 1 ? Opacity.ToString("0.##", CultureInfo.InvariantCulture) : null;
}
