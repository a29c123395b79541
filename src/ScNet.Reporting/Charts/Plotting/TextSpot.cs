namespace ScNet.Reporting.Charts.Plotting;

/// <summary>On which side of its place a text lies.</summary>
internal enum TextAnchor
{
    /// <summary>It begins there.</summary>
    Start,

    /// <summary>Its middle is there.</summary>
    Middle,

    /// <summary>It ends there.</summary>
    End,
}

/// <summary>A text in a figure: its class, place (x, and y of the baseline, in pixels), side, size and whether it is bold.</summary>
internal sealed record TextSpot(string Name, double X, double Y, string Text, TextAnchor Anchor = TextAnchor.Start)
{
    public const double UsualPixels = 12, SmallPixels = 11, TitlePixels = 14;

    // of the font's size: how far letters reach over and under the line on which they stand
    private const double Ascent = 0.76, Descent = 0.24;

    public double SizePixels { get; init; } = UsualPixels;

    public bool IsBold { get; init; }

    /// <summary>The colour; null for that of text.</summary>
    public string? Colour { get; init; }

    /// <summary>Whether it lies on a plate of the ground's colour.</summary>
    public bool HasPlate { get; init; }

    public double WidthPixels => PictureFont.WidthPixels(Text, SizePixels, IsBold);

    /// <summary>The rectangle that the letters take.</summary>
    public Box Box
    {
        get
        {
            double width = WidthPixels;
            double left = Anchor switch { TextAnchor.Middle => X - (width / 2), TextAnchor.End => X - width, _ => X };
            return new Box(left, Y - (Ascent * SizePixels), left + width, Y + (Descent * SizePixels));
        }
    }
}
