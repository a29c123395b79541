using System.Reflection;
using SkiaSharp;

namespace ScNet.Reporting;

/// <summary>The font of all pictures, which comes with the package: its widths are the same on every machine.</summary>
internal static class PictureFont
{
    /// <summary>Its name in SVG and CSS.</summary>
    public const string Family = "DejaVu Sans";

    /// <summary>Its name in SVG and CSS, followed by fonts of about its width.</summary>
    public const string Families = "'DejaVu Sans', Verdana, sans-serif";

    private static readonly Lazy<SKTypeface> s_regular = new(() => Load("DejaVuSans.ttf"));
    private static readonly Lazy<SKTypeface> s_bold = new(() => Load("DejaVuSans-Bold.ttf"));

    public static SKTypeface Typeface(bool isBold) => (isBold ? s_bold : s_regular).Value;

    /// <summary>The width of a text on one line in pixels (px).</summary>
    public static double WidthPixels(string text, double sizePixels, bool isBold = false)
    {
        using SKFont font = new(Typeface(isBold), (float)sizePixels) { Hinting = SKFontHinting.None, Subpixel = true };
        return font.MeasureText(text);
    }

    /// <summary>A font file of the package, "DejaVuSans.woff2" for a page, say.</summary>
    public static byte[] Read(string name)
    {
        using Stream stream = Open(name);
        using MemoryStream bytes = new();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }

    private static SKTypeface Load(string name)
    {
        using Stream stream = Open(name);
        return SKTypeface.FromStream(stream);
    }

    private static Stream Open(string name) => Assembly.GetExecutingAssembly().GetManifestResourceStream($"ScNet.Reporting.Fonts.{name}")!;
}
