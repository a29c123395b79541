using System.Text;
using ScNet.Results.Pages;

namespace ScNet.Reporting;

/// <summary>A picture as scalable vector graphics, and as pixels on demand. Immutable, the same to the byte for the same input.</summary>
/// <remarks>
/// The text of a picture is set in the font that comes with the package, so that its width is known; a reader without
/// that font sees another one of about the same width.
/// </remarks>
public sealed class Picture
{
    private readonly string _svg;

    internal Picture(string title, string description, double widthPixels, double heightPixels, string svg)
    {
        Title = title;
        Description = description;
        WidthPixels = widthPixels;
        HeightPixels = heightPixels;
        _svg = svg;
    }

    /// <summary>What the picture shows, in a few words.</summary>
    public string Title { get; }

    /// <summary>What somebody who cannot see the picture needs to know: what is shown and its main figures.</summary>
    public string Description { get; }

    /// <summary>The width at the size in which text is 12 pixels high (px).</summary>
    public double WidthPixels { get; }

    /// <summary>The height at the size in which text is 12 pixels high (px).</summary>
    public double HeightPixels { get; }

    /// <summary>The picture as a document of SVG 1.1, with title and description, "\n" line ends.</summary>
    public string ToSvg() => _svg;

    /// <summary>The picture as an element of HTML 5 that holds it whole, with <see cref="Description"/> for those who cannot see it.</summary>
    public string ToHtml() =>
        $"<img alt=\"{HtmlText.Of(Description)}\" style=\"max-width: 100%\" src=\"data:image/svg+xml;base64,{Convert.ToBase64String(Encoding.UTF8.GetBytes(_svg))}\">\n";

    /// <summary>The picture as a PNG file.</summary>
    /// <param name="scale">Pixels of the file per pixel of <see cref="WidthPixels"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The scale is not within 0.1 to 10.</exception>
    public byte[] ToPng(double scale = 2)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(scale, 0.1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(scale, 10);
        return SvgPixels.ToPng(_svg, scale);
    }

    /// <summary>Writes the picture to a file, as PNG where its name ends so and else as SVG.</summary>
    /// <param name="path">The file; one that exists is replaced, once the new one is whole.</param>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public void Save(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        if (path.EndsWith(".png", StringComparison.OrdinalIgnoreCase))
        {
            AtomicFile.Write(path, ToPng());
        }
        else
        {
            AtomicFile.Write(path, _svg);
        }
    }

    /// <summary>The title.</summary>
    public override string ToString() => Title;
}
