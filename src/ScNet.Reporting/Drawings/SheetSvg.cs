using System.Globalization;
using System.Text;
using System.Xml;

namespace ScNet.Reporting.Drawings;

/// <summary>Writes a sheet as SVG. Colours are attributes and not a style sheet, so that drawings in one page do not colour one another.</summary>
internal static class SheetSvg
{
    private const string Namespace = "http://www.w3.org/2000/svg";

    public static Picture Write(Sheet sheet, string title, string description, Palette palette)
    {
        StringBuilder text = new();
        XmlWriterSettings settings = new() { OmitXmlDeclaration = true, Indent = true, IndentChars = " ", NewLineChars = "\n" };
        using (XmlWriter xml = XmlWriter.Create(text, settings))
        {
            xml.WriteStartElement("svg", Namespace);
            Attributes(xml, ("width", sheet.Width), ("height", sheet.Height), ("viewBox", $"0 0 {sheet.Width} {sheet.Height}"), ("role", "img"), ("aria-label", Printable.Signs(title)));
            xml.WriteElementString("title", Namespace, Printable.Signs(title));
            xml.WriteElementString("desc", Namespace, Printable.Signs(description));
            Element(xml, "rect", ("class", "ground"), ("width", sheet.Width), ("height", sheet.Height), ("fill", palette.Ground));
            Group(xml, "frames", ("fill", "none"), ("stroke", palette.Faint), ("stroke-width", "1"), ("stroke-dasharray", "5 4"));
            foreach (SheetBox frame in sheet.Frames)
            {
                Element(xml, "rect", ("x", frame.Left), ("y", frame.Top), ("width", frame.Width), ("height", frame.Height), ("rx", 6));
            }

            xml.WriteEndElement();
            Strip(xml, sheet, palette);
            Group(xml, "wires", ("fill", "none"), ("stroke", palette.Ink), ("stroke-width", "1.5"), ("stroke-linecap", "round"));
            foreach (SheetWire wire in sheet.Wires.Where(w => w.From != w.To))
            {
                Element(xml, "path", ("d", Invariant($"M{wire.From.X} {wire.From.Y}L{wire.To.X} {wire.To.Y}")));
            }

            xml.WriteEndElement();
            Group(xml, "symbols", ("fill", "none"), ("stroke", palette.Ink), ("stroke-width", "1.5"), ("stroke-linecap", "round"), ("stroke-linejoin", "round"));
            foreach (SheetSymbol symbol in sheet.Symbols)
            {
                Element(
                    xml, "path",
                    [("class", Class(symbol.Part.Kind)), ("d", SymbolPath.Of(symbol)), .. symbol.Part.Kind == PartKind.Parasitic ? [("stroke", palette.Faint), ("stroke-dasharray", "3 2.5")] : Array.Empty<(string, object)>()]);
            }

            foreach (SheetPoint at in sheet.References)
            {
                Element(xml, "path", ("class", "reference"), ("d", SymbolPath.Reference(at)));
            }

            xml.WriteEndElement();
            Arrows(xml, sheet, palette);
            foreach (SheetDot dot in sheet.Dots)
            {
                Element(xml, "circle", ("class", dot.IsOpen ? "end" : "joint"), ("cx", dot.At.X), ("cy", dot.At.Y), ("r", dot.IsOpen ? "3" : "2.75"),
                    ("fill", dot.IsOpen ? palette.Ground : palette.Ink), ("stroke", palette.Ink), ("stroke-width", dot.IsOpen ? "1.25" : "0"));
            }

            Texts(xml, sheet, palette);
            xml.WriteEndElement();
        }

        return new Picture(title, description, sheet.Width, sheet.Height, text.Append('\n').ToString());
    }

    private static void Strip(XmlWriter xml, Sheet sheet, Palette palette)
    {
        if (sheet.Bars.Count + sheet.Rules.Count == 0)
        {
            return;
        }

        Group(xml, "phases", ("stroke", palette.Grid), ("stroke-width", "1"));
        foreach (SheetWire rule in sheet.Rules)
        {
            Element(xml, "path", ("d", Invariant($"M{rule.From.X} {rule.From.Y}L{rule.To.X} {rule.To.Y}")));
        }

        xml.WriteEndElement();
        Group(xml, "closed", ("fill", palette.Series[0]));
        foreach (SheetBox bar in sheet.Bars)
        {
            Element(xml, "rect", ("x", bar.Left), ("y", bar.Top), ("width", bar.Width), ("height", bar.Height));
        }

        xml.WriteEndElement();
    }

    private static void Arrows(XmlWriter xml, Sheet sheet, Palette palette)
    {
        Group(xml, "charges", ("fill", palette.Mark));
        foreach (SheetArrow arrow in sheet.Arrows)
        {
            Element(xml, "path", ("d", SymbolPath.Arrow(arrow)));
        }

        xml.WriteEndElement();
    }

    private static void Texts(XmlWriter xml, Sheet sheet, Palette palette)
    {
        Group(xml, "texts", ("font-family", PictureFont.Families), ("font-size", TextSize.Pixels));
        foreach (SheetLabel label in sheet.Labels)
        {
            bool isHeading = label.Role == LabelRole.Heading;
            xml.WriteStartElement("text", Namespace);
            Attributes(xml, ("class", Class(label.Role)), ("x", label.Box.Left), ("y", label.Box.Top + (isHeading ? 14 : 11)), ("fill", Colour(label.Role, palette)));
            if (isHeading)
            {
                Attributes(xml, ("font-size", TextSize.HeadingPixels), ("font-weight", "bold"));
            }

            xml.WriteString(Printable.Signs(label.Text));
            xml.WriteEndElement();
            if (label.Strong.Length > 0)
            {
                int shift = label.Text.Length > 0 ? TextSize.Width(label.Text, label.Role) + TextSize.StrongGap : 0;
                xml.WriteStartElement("text", Namespace);
                Attributes(xml, ("class", "voltage"), ("x", label.Box.Left + shift), ("y", label.Box.Top + 11), ("fill", Colour(label.Role, palette)), ("font-weight", "bold"));
                xml.WriteString(Printable.Signs(label.Strong));
                xml.WriteEndElement();
            }
        }

        xml.WriteEndElement();
    }

    private static string Colour(LabelRole role, Palette palette) => role switch
    {
        LabelRole.Node => palette.Series[0],
        LabelRole.Charge => palette.Mark,
        LabelRole.Note => palette.Faint,
        _ => palette.Ink,
    };

    private static string Class(LabelRole role) => role switch
    {
        LabelRole.Heading => "heading",
        LabelRole.Node => "node",
        LabelRole.Charge => "charge",
        LabelRole.Note => "note",
        _ => "name",
    };

    private static string Class(PartKind kind) => kind switch
    {
        PartKind.Source => "source",
        PartKind.Load => "load",
        PartKind.CurrentLoad => "current-load",
        PartKind.Capacitor => "capacitor",
        PartKind.Parasitic => "parasitic",
        PartKind.Inductor => "inductor",
        _ => "switch",
    };

    private static void Group(XmlWriter xml, string name, params (string Name, object Value)[] attributes)
    {
        xml.WriteStartElement("g", Namespace);
        Attributes(xml, [("class", name), .. attributes]);
    }

    private static void Element(XmlWriter xml, string name, params (string Name, object Value)[] attributes)
    {
        xml.WriteStartElement(name, Namespace);
        Attributes(xml, attributes);
        xml.WriteEndElement();
    }

    private static void Attributes(XmlWriter xml, params (string Name, object Value)[] attributes)
    {
        foreach ((string name, object value) in attributes)
        {
            xml.WriteAttributeString(name, string.Format(CultureInfo.InvariantCulture, "{0}", value));
        }
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
