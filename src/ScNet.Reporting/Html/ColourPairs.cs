using System.Globalization;
using System.Text;

namespace ScNet.Reporting.Html;

/// <summary>The colours of pictures as variables of a page: each has a value on light and one on dark ground.</summary>
internal sealed class ColourPairs
{
    private readonly List<(string Light, string Dark)> _pairs = [];

    /// <summary>The name of the variable that is one colour on light and the other on dark ground.</summary>
    public string Name(string light, string dark)
    {
        int index = _pairs.IndexOf((light, dark));
        if (index < 0)
        {
            index = _pairs.Count;
            _pairs.Add((light, dark));
        }

        return string.Create(CultureInfo.InvariantCulture, $"--p{index}");
    }

    /// <summary>The rules of a style sheet: dark on screens of readers who prefer that, and never on paper.</summary>
    public string ToCss()
    {
        Palette light = Palette.Of(Appearance.Light), dark = Palette.Of(Appearance.Dark);
        StringBuilder css = new();
        css.Append(CultureInfo.InvariantCulture, $":root {{ {Of(light)}");
        _ = _pairs.Select((p, i) => css.Append(CultureInfo.InvariantCulture, $" --p{i}: {p.Light};")).Count();
        css.Append(CultureInfo.InvariantCulture, $" }}\n@media screen and (prefers-color-scheme: dark) {{ :root {{ {Of(dark)}");
        _ = _pairs.Select((p, i) => css.Append(CultureInfo.InvariantCulture, $" --p{i}: {p.Dark};")).Count();
        return css.Append(" } }\n").ToString();
    }

    private static string Of(Palette palette) => string.Join(' ', new[]
    {
        ("ground", palette.Ground), ("ink", palette.Ink), ("faint", palette.Faint), ("grid", palette.Grid), ("mark", palette.Mark),
        ("accent", palette.Accent), ("panel", palette.Panel), ("warn", palette.Warn), ("found", palette.Found),
    }.Select(c => $"--{c.Item1}: {c.Item2};"));
}
