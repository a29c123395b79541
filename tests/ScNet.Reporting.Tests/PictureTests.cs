using SkiaSharp;

namespace ScNet.Reporting.Tests;

public sealed class PictureTests
{
    private const string Text = """
        <svg xmlns="http://www.w3.org/2000/svg" width="40" height="20"><text x="2" y="14" font-family="'DejaVu Sans', Verdana, sans-serif" font-size="12">MM</text></svg>
        """;

    [Fact]
    public void Pixels_are_those_of_the_vectors_at_the_scale_asked_for()
    {
        using SKBitmap bitmap = SKBitmap.Decode(new Picture("MM", "two letters", 40, 20, Text).ToPng(3));
        Assert.Equal((120, 60), (bitmap.Width, bitmap.Height));
        Assert.Contains(Enumerable.Range(0, 120), x => bitmap.GetPixel(x, 30).Alpha > 128);
    }

    [Fact]
    public void Width_of_text_is_that_of_the_font_in_the_package() =>
        // the advance of M is 1767 of 2048 units of the em (read from the font file)
        Assert.Equal(2 * 1767 / 2048.0 * 12, PictureFont.WidthPixels("MM", 12), 1e-3);

    [Fact]
    public void The_font_in_the_package_has_the_characters_of_the_trade()
    {
        using SKFont font = new(PictureFont.Typeface(isBold: false));
        Assert.All("ΩµηφΦΔΣ√≤≥≠±×·→∞½²³⁻₁₂", c => Assert.NotEqual(0, font.GetGlyph(c)));
        Assert.Equal(0, font.GetGlyph('字'));
    }
}
