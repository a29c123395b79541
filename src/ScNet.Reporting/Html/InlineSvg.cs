using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml;
using System.Xml.Linq;

namespace ScNet.Reporting.Html;

/// <summary>
/// A picture within a page that forbids styles of elements and scripts: identifiers of its own, styles as attributes, colours
/// of both grounds as variables of the page.
/// </summary>
/// <remarks>
/// The picture on light and on dark ground differ in colours alone, so one of them stands in the page and its colours are
/// chosen there. Its description is the paragraph of the identifier that ends in "-words". Where they differ otherwise both stand there, and one is shown.
/// </remarks>
internal static partial class InlineSvg
{
    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";
    private static readonly XName s_link = XNamespace.Get("http://www.w3.org/1999/xlink") + "href";
    private static readonly HashSet<string> s_paint = ["fill", "stroke", "stop-color", "flood-color", "color"];
    private static readonly HashSet<string> s_refused = ["script", "style", "foreignObject", "animate", "set", "metadata"];

    /// <summary>The picture as elements of HTML.</summary>
    /// <param name="light">On light ground.</param>
    /// <param name="dark">The same on dark ground.</param>
    /// <param name="id">What its identifiers begin with: once per page.</param>
    /// <param name="colours">Collects the colours of both grounds.</param>
    public static string Of(Picture light, Picture dark, string id, ColourPairs colours)
    {
        XElement first = Read(light, id, id + "-words"), second = Read(dark, id, id + "-words");
        if (TryMerge(first, second, colours))
        {
            return Text(first);
        }

        (first, second) = (Read(light, id, id + "-words"), Read(dark, id + "d", id + "-words"));
        first.SetAttributeValue("class", "light");
        second.SetAttributeValue("class", "dark");
        return Text(first) + Text(second);
    }

    private static XElement Read(Picture picture, string id, string words)
    {
        XmlReaderSettings settings = new() { DtdProcessing = DtdProcessing.Ignore, XmlResolver = null };
        using XmlReader reader = XmlReader.Create(new StringReader(picture.ToSvg()), settings);
        XElement root = XElement.Load(reader, LoadOptions.PreserveWhitespace);
        foreach (XElement refused in root.DescendantsAndSelf().Where(e => s_refused.Contains(e.Name.LocalName)).ToArray())
        {
            refused.Remove();
        }

        root.DescendantNodes().OfType<XComment>().ToList().ForEach(c => c.Remove());
        foreach (XElement element in root.DescendantsAndSelf())
        {
            StyleAsAttributes(element);
            foreach (XAttribute attribute in element.Attributes().ToArray())
            {
                Rename(attribute, id);
            }
        }

        // the name of a picture, and where its words stand, as a reader of the screen finds them
        root.Elements(s_svg + "title").Concat(root.Elements(s_svg + "desc")).ToList().ForEach(e => e.Remove());
        root.AddFirst(new XElement(s_svg + "title", new XAttribute("id", id + "-title"), Printable.Signs(picture.Title)));
        root.SetAttributeValue("role", "img");
        root.SetAttributeValue("aria-labelledby", id + "-title");
        root.SetAttributeValue("aria-describedby", words);
        root.SetAttributeValue("width", Number(picture.WidthPixels));
        root.SetAttributeValue("height", Number(picture.HeightPixels));
        if (root.Attribute("viewBox") is null)
        {
            root.SetAttributeValue("viewBox", $"0 0 {Number(picture.WidthPixels)} {Number(picture.HeightPixels)}");
        }

        return root;
    }

    private static void StyleAsAttributes(XElement element)
    {
        if (element.Attribute("style") is not { } style)
        {
            return;
        }

        foreach (string declaration in style.Value.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            string[] parts = declaration.Split(':', 2, StringSplitOptions.TrimEntries);
            if (parts.Length == 2)
            {
                element.SetAttributeValue(parts[0], parts[1]);
            }
        }

        style.Remove();
    }

    private static void Rename(XAttribute attribute, string id)
    {
        if (attribute.Name.LocalName.StartsWith("on", StringComparison.OrdinalIgnoreCase))
        {
            attribute.Remove();
        }
        else if (attribute.Name.LocalName == "id")
        {
            attribute.Value = $"{id}-{attribute.Value}";
        }
        else if (attribute.Name.LocalName == "href")
        {
            // only what the picture itself holds
            string target = attribute.Value.StartsWith('#') ? $"#{id}-{attribute.Value[1..]}" : attribute.Value;
            XElement element = attribute.Parent!;
            attribute.Remove();
            if (target.StartsWith('#') || target.StartsWith("data:image/png", StringComparison.Ordinal))
            {
                element.SetAttributeValue("href", target);
            }
        }
        else if (attribute.Value.Contains("url(#", StringComparison.Ordinal))
        {
            attribute.Value = attribute.Value.Replace("url(#", $"url(#{id}-", StringComparison.Ordinal);
        }
        else if (attribute.IsNamespaceDeclaration && attribute.Value == s_link.NamespaceName)
        {
            attribute.Remove();
        }
    }

    private static bool TryMerge(XElement light, XElement dark, ColourPairs colours)
    {
        XElement[] first = [.. light.DescendantsAndSelf()], second = [.. dark.DescendantsAndSelf()];
        if (first.Length != second.Length)
        {
            return false;
        }

        List<(XAttribute Attribute, string Dark)> painted = [];
        foreach ((XElement a, XElement b) in first.Zip(second))
        {
            XAttribute[] left = [.. a.Attributes()], right = [.. b.Attributes()];
            bool isAlike = a.Name == b.Name && left.Length == right.Length && a.Nodes().Count() == b.Nodes().Count()
                && a.Nodes().OfType<XText>().Select(t => t.Value).SequenceEqual(b.Nodes().OfType<XText>().Select(t => t.Value));
            if (!isAlike)
            {
                return false;
            }

            foreach ((XAttribute x, XAttribute y) in left.Zip(right))
            {
                if (x.Name != y.Name || (x.Value != y.Value && !(s_paint.Contains(x.Name.LocalName) && Colour().IsMatch(x.Value) && Colour().IsMatch(y.Value))))
                {
                    return false;
                }

                if (x.Value != y.Value)
                {
                    painted.Add((x, y.Value));
                }
            }
        }

        painted.ForEach(p => p.Attribute.Value = $"var({colours.Name(p.Attribute.Value, p.Dark)})");
        return true;
    }

    private static string Text(XElement root) => root.ToString(SaveOptions.DisableFormatting).Replace("\r\n", "\n", StringComparison.Ordinal);

    private static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    [GeneratedRegex("^(#[0-9a-fA-F]{3,8}|rgb\\([0-9., %]+\\)|[a-z]+)$")]
    private static partial Regex Colour();
}
