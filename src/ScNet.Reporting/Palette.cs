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
}
