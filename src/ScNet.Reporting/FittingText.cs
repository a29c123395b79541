namespace ScNet.Reporting;

/// <summary>Texts cut to a width, with "…" for what is left out.</summary>
internal static class FittingText
{
    public static string Of(string text, double widthPixels, double sizePixels = 12, bool isBold = false)
    {
        if (PictureFont.WidthPixels(text, sizePixels, isBold) <= widthPixels)
        {
            return text;
        }

        int length = text.Length;
        while (length > 0 && PictureFont.WidthPixels(text[..length] + "…", sizePixels, isBold) > widthPixels)
        {
            length--;
        }

        return text[..length].TrimEnd() + "…";
    }
}
