using System.Globalization;

namespace ScNet.Reporting;

/// <summary>The colours of pictures and reports, as "#rrggbb", in one place.</summary>
/// <remarks>
/// The series colours are those that M. Okabe and K. Ito published for readers with any kind of colour vision ("Color
/// Universal Design", 2008; from memory), ordered so that neighbours differ in lightness too and stay apart in grey. On the
/// dark ground two of them are lighter.
/// </remarks>
internal sealed class Palette
{
    private Palette(string ground, string ink, string faint, string grid, string mark, string[] series)
    {
        Ground = ground;
        Ink = ink;
        Faint = faint;
        Grid = grid;
        Mark = mark;
        Series = series;
    }

    /// <summary>What is drawn on.</summary>
    public string Ground { get; }

    /// <summary>Lines and text: contrast above 7 on the ground.</summary>
    public string Ink { get; }

    /// <summary>Secondary text: contrast above 4.5 on the ground.</summary>
    public string Faint { get; }

    /// <summary>Grid lines.</summary>
    public string Grid { get; }

    /// <summary>What deserves attention: contrast above 4.5 on the ground.</summary>
    public string Mark { get; }

    /// <summary>Links and what has the focus: contrast above 4.5 on the ground and on <see cref="Panel"/>.</summary>
    public required string Accent { get; init; }

    /// <summary>A ground a little apart: of the head of a page, of the row under the pointer.</summary>
    public required string Panel { get; init; }

    /// <summary>The ground of cautions.</summary>
    public required string Warn { get; init; }

    /// <summary>The ground of what a search found.</summary>
    public required string Found { get; init; }

    /// <summary>The colours of series, in the order in which they are given out.</summary>
    public IReadOnlyList<string> Series { get; }

    /// <summary>Fills of twelve kinds, in the order in which they lie beside one another: neighbours differ most in lightness, no two are equal in grey.</summary>
    public static IReadOnlyList<string> Kinds { get; } =
        ["#0569b4", "#f59432", "#702b6a", "#dcade7", "#028946", "#f2e56d", "#a52329", "#fff4dc", "#02a9b8", "#403318", "#8bdaff", "#da5c92"];

    /// <summary>Fills of what grows, from little (light) to much (dark): in grey, too, each is darker than the one before.</summary>
    public static IReadOnlyList<string> Ramp { get; } =
        ["#f2ef9b", "#bbe287", "#7ad483", "#04c48d", "#07ab9a", "#069398", "#057c90", "#066685", "#01517a", "#003c73"];

    /// <summary>Text on a fill: black or white, whichever has the higher contrast, at least 4.5.</summary>
    public static string TextOn(string fill) => Luminance(fill) > s_middle ? "#000000" : "#ffffff";

    public static Palette Of(Appearance appearance) => appearance == Appearance.Dark ? s_dark : s_light;

    private static readonly Palette s_light = new(
        "#ffffff", "#1a1a1a", "#595959", "#d9d9d9", "#b33c00", ["#0072b2", "#e69f00", "#009e73", "#cc79a7", "#000000", "#56b4e9", "#d55e00", "#f0e442"])
    {
        Accent = "#0068a3",
        Panel = "#f5f7f9",
        Warn = "#fdf0e8",
        Found = "#ffe27a",
    };

    private static readonly Palette s_dark = new(
        "#16181c", "#eceff4", "#a9b1bd", "#3a3f47", "#ff9c66", ["#56b4e9", "#e69f00", "#00b386", "#e39ac2", "#ffffff", "#3d8fd1", "#f07a2e", "#f0e442"])
    {
        Accent = "#6cc0f0",
        Panel = "#1d2026",
        Warn = "#31231b",
        Found = "#665200",
    };

    // where black and white have the same contrast: (L + 0.05)² = 1.05 · 0.05
    private static readonly double s_middle = Math.Sqrt(1.05 * 0.05) - 0.05;

    // relative luminance: W3C, Web Content Accessibility Guidelines 2.2 (from memory)
    private static double Luminance(string colour)
    {
        double Linear(int at)
        {
            double share = int.Parse(colour.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
            return share <= 0.04045 ? share / 12.92 : Math.Pow((share + 0.055) / 1.055, 2.4);
        }

        return (0.2126 * Linear(1)) + (0.7152 * Linear(3)) + (0.0722 * Linear(5));
    }
}
