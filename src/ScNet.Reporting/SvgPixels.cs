using SkiaSharp;
using Svg.Skia;
using Svg.Skia.TypefaceProviders;

namespace ScNet.Reporting;

/// <summary>Draws SVG as pixels, its text in the font of the package.</summary>
internal static class SvgPixels
{
    public static byte[] ToPng(string svg, double scale)
    {
        using SKSvg document = new();
        document.Settings.TypefaceProviders?.Insert(0, new OwnFont());
        document.FromSvg(svg);
        using MemoryStream bytes = new();
        document.Save(bytes, SKColors.Transparent, SKEncodedImageFormat.Png, quality: 100, (float)scale, (float)scale);
        return bytes.ToArray();
    }

    private sealed class OwnFont : ITypefaceProvider
    {
        public SKTypeface? FromFamilyName(string fontFamily, SKFontStyleWeight fontWeight, SKFontStyleWidth fontWidth, SKFontStyleSlant fontStyle) =>
            PictureFont.Typeface(fontWeight >= SKFontStyleWeight.SemiBold);
    }
}
