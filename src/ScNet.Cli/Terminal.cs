using ScNet.Results.Pages;

namespace ScNet.Cli;

/// <summary>What is known of the terminal.</summary>
internal static class Terminal
{
    // a page is no narrower
    private const int NarrowestWidth = 40;

    /// <summary>The columns of the terminal; the usual width of a page where the output is none.</summary>
    public static int Width()
    {
        try
        {
            return Console.IsOutputRedirected || Console.WindowWidth <= 0 ? Page.UsualWidth : Math.Max(NarrowestWidth, Console.WindowWidth);
        }
        catch (Exception exception) when (exception is IOException or PlatformNotSupportedException)
        {
            return Page.UsualWidth;
        }
    }

    /// <summary>Whether output is coloured: not where it is redirected, the terminal knows no colours, or the user wants none (the variable NO_COLOR is set and not empty).</summary>
    public static bool HasColour(bool isRedirected) =>
        HasColour(isRedirected, Environment.GetEnvironmentVariable("NO_COLOR"), Environment.GetEnvironmentVariable("TERM"));

    /// <summary>As above, with the values of the two variables.</summary>
    public static bool HasColour(bool isRedirected, string? noColour, string? term) => !isRedirected && string.IsNullOrEmpty(noColour) && term != "dumb";
}
