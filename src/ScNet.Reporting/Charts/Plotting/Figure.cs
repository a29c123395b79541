using System.Globalization;
using System.Text;
using System.Xml;
using System.Xml.Linq;

namespace ScNet.Reporting.Charts.Plotting;

/// <summary>A chart in the making: panels, texts and a legend, in pixels from the top left.</summary>
internal sealed class Figure
{
    public static readonly XNamespace Namespace = "http://www.w3.org/2000/svg";

    /// <summary>The usual width: forty times the size of its text, so that both stay legible in a column.</summary>
    public const double UsualWidthPixels = 480;

    /// <summary>The distance to the left and right edge.</summary>
    public const double MarginPixels = 12;

    // between lines of the head, from baseline to baseline
    private const double TitleLine = 22, NoteLine = 16, LegendLine = 18, SamplePixels = 26, LegendGap = 16;

    private const double PlatePixels = 2;

    private readonly string _title;
    private readonly List<Panel> _panels = [];
    private readonly List<XElement> _shapes = [];
    private readonly List<TextSpot> _texts = [];

    public Figure(string title, string note, double widthPixels, Appearance appearance)
    {
        _title = title;
        WidthPixels = widthPixels;
        Palette = Palette.Of(appearance);
        Grid = new Ink("grid", Palette.Grid);
        Frame = new Ink("axis", Palette.Faint);
        HeadPixels = TitleLine;
        double width = widthPixels - (2 * MarginPixels);
        Add(new TextSpot("title", MarginPixels, HeadPixels, FittingText.Of(title, width, TextSpot.TitlePixels, true)) { SizePixels = TextSpot.TitlePixels, IsBold = true });
        if (note.Length > 0)
        {
            HeadPixels += NoteLine;
            Add(new TextSpot("note", MarginPixels, HeadPixels, FittingText.Of(note, width, TextSpot.SmallPixels)) { SizePixels = TextSpot.SmallPixels, Colour = Palette.Faint });
        }
    }

    public Palette Palette { get; }

    public Ink Grid { get; }

    public Ink Frame { get; }

    public InkKeys Keys { get; } = new();

    public double WidthPixels { get; }

    /// <summary>How far down title and legend reach.</summary>
    public double HeadPixels { get; private set; }

    /// <summary>The texts, for what must not lie on them.</summary>
    public IReadOnlyList<TextSpot> Texts => _texts;

    public void Add(TextSpot text) => _texts.Add(text);

    /// <summary>A panel between the axes, with the texts of both; a space between panel and title of the upright axis is for what stands above the panel.</summary>
    public Panel AddPanel(Box area, ChartAxis x, ChartAxis y, (bool X, bool Y)? grid = null, (bool X, bool Y)? ticks = null, double abovePixels = 0)
    {
        Panel panel = new(area, x, y, Keys) { HasGrid = grid ?? (true, true), HasTicks = ticks ?? (true, true) };
        _panels.Add(panel);
        PanelTexts.Add(this, panel, abovePixels);
        return panel;
    }

    /// <summary>Tells what inks stand for, in lines below the title. To be called before panels are placed.</summary>
    public void AddLegend(IReadOnlyList<(Ink Ink, string Text)> entries, bool areFilled = false) => HeadPixels = AddLegend(entries, HeadPixels, areFilled);

    /// <summary>Tells what inks stand for, in lines below a place; gives the place of the lowest.</summary>
    public double AddLegend(IReadOnlyList<(Ink Ink, string Text)> entries, double topPixels, bool areFilled)
    {
        (double x, double y) = (MarginPixels, topPixels + LegendLine + 2);
        foreach ((Ink ink, string text) in entries)
        {
            double sample = areFilled ? SamplePixels / 2 : SamplePixels;
            string fitting = FittingText.Of(text, WidthPixels - (2 * MarginPixels) - sample - 6);
            TextSpot spot = new("legend", x + sample + 6, y, fitting);
            if (spot.Box.Right > WidthPixels - MarginPixels && x > MarginPixels)
            {
                (x, y) = (MarginPixels, y + LegendLine);
                spot = spot with { X = x + sample + 6, Y = y };
            }

            AddSample(ink, x, y - 4, sample, areFilled);
            Add(spot);
            x = spot.Box.Right + LegendGap;
        }

        return y;
    }

    /// <summary>The picture, as high as its content needs.</summary>
    /// <param name="description">What is seen, for those who cannot see it.</param>
    /// <param name="heightPixels">The height of all.</param>
    public Picture ToPicture(string description, double heightPixels)
    {
        (int width, int height) = ((int)Math.Ceiling(WidthPixels), (int)Math.Ceiling(heightPixels));
        XElement root = new(
            Namespace + "svg",
            new XAttribute("width", width),
            new XAttribute("height", height),
            new XAttribute("viewBox", $"0 0 {width} {height}"),
            new XAttribute("role", "img"),
            new XAttribute("aria-label", Printable.Signs(_title)),
            new XElement(Namespace + "title", Printable.Signs(_title)),
            new XElement(Namespace + "desc", Printable.Signs(description)),
            new Ink("ground", Palette.Ground).Fill(new XElement(Namespace + "rect", new XAttribute("width", width), new XAttribute("height", height))));
        foreach (Panel panel in _panels)
        {
            root.Add(new XElement(Namespace + "g", new XAttribute("class", "panel"), PlotShapes.Of(panel, width, height, Grid, Frame, Keys)));
            panel.Dispose();
        }

        root.Add(_shapes);
        root.Add(new XElement(
            Namespace + "g",
            new XAttribute("font-family", PictureFont.Families),
            new XAttribute("font-size", Text(TextSpot.UsualPixels)),
            new XAttribute("fill", Palette.Ink),
            _texts.SelectMany(Elements)));
        return new Picture(_title, description, width, height, Written(root));
    }

    /// <summary>A number for SVG.</summary>
    public static string Text(double pixels) => pixels.ToString("0.##", CultureInfo.InvariantCulture);

    private static string Written(XElement root)
    {
        StringBuilder text = new();
        using (XmlWriter writer = XmlWriter.Create(text, new XmlWriterSettings { OmitXmlDeclaration = true, Indent = true, IndentChars = " ", NewLineChars = "\n" }))
        {
            root.Save(writer);
        }

        return text.Append('\n').ToString();
    }

    private void AddSample(Ink ink, double x, double middle, double width, bool isFilled)
    {
        if (isFilled)
        {
            // what has the colour of the ground is seen by its edge
            _shapes.Add(ink.Fill(new XElement(
                Namespace + "rect", new XAttribute("x", Text(x)), new XAttribute("y", Text(middle - 6)), new XAttribute("width", Text(width)), new XAttribute("height", "11"),
                ink.Colour == Palette.Ground ? new XAttribute("stroke", Palette.Faint) : null)));
            return;
        }

        _shapes.Add(ink.Stroke(new XElement(Namespace + "path", new XAttribute("d", $"M{Text(x)} {Text(middle)}H{Text(x + width)}"))));
        if (ink.Points is { } shape)
        {
            _shapes.Add((ink with { Dash = null }).Fill(new XElement(Namespace + "path", new XAttribute("d", PointPath.Of(shape, x + (width / 2), middle)))));
        }
    }

    private IEnumerable<XElement> Elements(TextSpot text)
    {
        if (text.HasPlate)
        {
            Box box = text.Box;
            yield return new Ink("plate", Palette.Ground).Fill(new XElement(
                Namespace + "rect",
                new XAttribute("x", Text(box.Left - PlatePixels)),
                new XAttribute("y", Text(box.Top - (PlatePixels / 2))),
                new XAttribute("width", Text(box.Width + (2 * PlatePixels))),
                new XAttribute("height", Text(box.Height + PlatePixels)),
                new XAttribute("rx", "2")));
        }

        yield return new XElement(
            Namespace + "text",
            new XAttribute("class", text.Name),
            new XAttribute("x", Text(text.X)),
            new XAttribute("y", Text(text.Y)),
            text.Anchor == TextAnchor.Start ? null : new XAttribute("text-anchor", text.Anchor == TextAnchor.Middle ? "middle" : "end"),
            text.SizePixels == TextSpot.UsualPixels ? null : new XAttribute("font-size", Text(text.SizePixels)),
            text.IsBold ? new XAttribute("font-weight", "bold") : null,
            text.Colour is { } colour ? new XAttribute("fill", colour) : null,
            Printable.Signs(text.Text));
    }
}
