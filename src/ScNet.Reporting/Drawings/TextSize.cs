namespace ScNet.Reporting.Drawings;

/// <summary>How much room a text takes in a drawing, in whole pixels.</summary>
internal static class TextSize
{
    /// <summary>The size of all text but the heading.</summary>
    public const int Pixels = 12;

    /// <summary>The size of the heading.</summary>
    public const int HeadingPixels = 14;

    /// <summary>What a line of text rises above its base line.</summary>
    public const int Ascent = 10;

    /// <summary>The height of a line of text.</summary>
    public const int Line = 14;

    /// <summary>Between a text and what follows it in bold.</summary>
    public const int StrongGap = 6;

    // a longer name would make everything else small
    private const double LongestName = 150, LongestHeading = 480;

    /// <summary>The name of a part or the heading, cut where it is too long; the description has it whole.</summary>
    public static string Fitting(string text, LabelRole role = LabelRole.Part) =>
        role == LabelRole.Heading ? FittingText.Of(text, LongestHeading, HeadingPixels, isBold: true) : FittingText.Of(text, LongestName, Pixels);

    public static int Width(string text, LabelRole role = LabelRole.Part, string strong = "")
    {
        int width = text.Length == 0 ? 0 : (int)Math.Ceiling(PictureFont.WidthPixels(text, role == LabelRole.Heading ? HeadingPixels : Pixels, role == LabelRole.Heading)) + 1;
        return strong.Length == 0 ? width
            : width + (width > 0 ? StrongGap : 0) + (int)Math.Ceiling(PictureFont.WidthPixels(strong, Pixels, isBold: true)) + 1;
    }
}
