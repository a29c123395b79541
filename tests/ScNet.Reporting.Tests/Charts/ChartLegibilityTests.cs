using System.Xml.Linq;
using ScNet.Reporting.Charts.Plotting;

namespace ScNet.Reporting.Tests.Charts;

/// <summary>What holds for every chart, on either ground.</summary>
public sealed class ChartLegibilityTests
{
    public static TheoryData<string, Appearance> Names => ChartSamples.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void No_text_lies_on_another_or_outside(string name, Appearance appearance)
    {
        Picture picture = ChartSamples.Picture(name, appearance);
        DrawnChart chart = new(picture);
        Assert.Empty(Collisions.Of(chart.Texts));
        Box all = new(0, 0, picture.WidthPixels, picture.HeightPixels);
        Assert.All(chart.Texts, t => Assert.True(t.Box.Left >= all.Left && t.Box.Right <= all.Right && t.Box.Top >= all.Top && t.Box.Bottom <= all.Bottom, t.Text));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_legend_covers_no_data_and_texts_cross_no_line(string name, Appearance appearance)
    {
        DrawnChart chart = new(ChartSamples.Picture(name, appearance));
        Assert.All(chart.Texts.Where(t => t.Name == "legend"), t => Assert.DoesNotContain(chart.Panels, p => p.Area.Overlaps(t.Box)));

        string[] background = ["grid", "axis", "corner", "phase", "gear-border", "gear-halo", "rating", "stack-rating"];
        IReadOnlyList<(double X, double Y)>[] drawn = [.. chart.Panels.SelectMany(p => p.All)
            .Where(e => e.Name.LocalName == "path" && (string?)e.Attribute("fill") == "none" && !background.Contains((string)e.Attribute("class")!))
            .SelectMany(DrawnChart.Lines).Select(line => Array.AsReadOnly([.. Dense(line)]))];
        Assert.All(chart.Texts, t => Assert.DoesNotContain(drawn, line => Crosses(line, t.Box)));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Text_has_contrast_with_what_it_lies_on(string name, Appearance appearance)
    {
        DrawnChart chart = new(ChartSamples.Picture(name, appearance));
        foreach (DrawnText text in chart.Texts)
        {
            (double x, double y) = ((text.Box.Left + text.Box.Right) / 2, (text.Box.Top + text.Box.Bottom) / 2);
            XElement? below = chart.Plates.Concat(chart.Panels.SelectMany(p => p.All).Where(e => e.Name.LocalName == "rect").Reverse())
                .FirstOrDefault(e => DrawnPanel.BoxOf(e) is var box && x > box.Left && x < box.Right && y > box.Top && y < box.Bottom);
            double contrast = Colours.Contrast(text.Fill, below is null ? chart.Ground : (string)below.Attribute("fill")!);
            Assert.True(contrast >= 4.5, FormattableString.Invariant($"{text.Text}: {contrast:F2}"));
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Lines_and_fills_are_told_apart_in_grey_and_with_any_colour_vision(string name, Appearance appearance)
    {
        DrawnChart chart = new(ChartSamples.Picture(name, appearance));
        (string Class, string Colour, string Look)[] samples = [.. chart.Samples.Select(s => (
            (string)s.Attribute("class")!,
            s.Name.LocalName == "rect" ? (string)s.Attribute("fill")! : (string?)s.Attribute("stroke") ?? (string)s.Attribute("fill")!,
            s.Name.LocalName == "rect" || s.Attribute("stroke") is null ? "filled" : $"{s.Attribute("stroke-dasharray")?.Value}, {(DrawnChart.Number((string)s.Attribute("stroke-width")!) > 2.2 ? "thick" : "thin")}"))
            .DistinctBy(s => s.Item1)];
        Assert.All(
            from a in samples from b in samples where string.CompareOrdinal(a.Class, b.Class) < 0 && a.Look == b.Look && !AreApart(chart, a.Class, b.Class) select (a, b),
            pair => Assert.True(Colours.AreDistinct(pair.a.Colour, pair.b.Colour), $"{pair.a.Class} {pair.a.Colour} and {pair.b.Class} {pair.b.Colour}"));
    }

    [Fact]
    public void Text_on_text_is_noticed()
    {
        XElement group = XElement.Parse("""<g font-size="12" fill="#000000"><text class="a" x="10" y="20">first</text><text class="b" x="20" y="24">second</text><text class="c" x="10" y="60">third</text></g>""");
        Assert.Single(Collisions.Of([.. group.Elements().Select(e => new DrawnText(e))]));
    }

    // drawn, but never in one panel
    private static bool AreApart(DrawnChart chart, string one, string other) =>
        chart.Panels.Any(p => p.Of(one).Any()) && chart.Panels.Any(p => p.Of(other).Any()) && !chart.Panels.Any(p => p.Of(one).Any() && p.Of(other).Any());

    private static bool Crosses(IReadOnlyList<(double X, double Y)> line, Box box) =>
        line.Max(p => p.X) > box.Left && line.Min(p => p.X) < box.Right
        && line.Any(p => p.X > box.Left && p.X < box.Right && p.Y > box.Top && p.Y < box.Bottom);

    private static IEnumerable<(double X, double Y)> Dense(IReadOnlyList<(double X, double Y)> line)
    {
        foreach (((double X, double Y) a, (double X, double Y) b) in line.Zip(line.Skip(1)))
        {
            int steps = 1 + (int)(Math.Abs(b.X - a.X) + Math.Abs(b.Y - a.Y));
            for (int k = 0; k <= steps; k++)
            {
                yield return (a.X + ((b.X - a.X) * k / steps), a.Y + ((b.Y - a.Y) * k / steps));
            }
        }
    }
}

/// <summary>Texts that lie on one another.</summary>
internal static class Collisions
{
    public static IReadOnlyList<string> Of(IReadOnlyList<DrawnText> texts) =>
        [.. texts.SelectMany((a, i) => texts.Skip(i + 1).Where(b => a.Box.Overlaps(b.Box)).Select(b => $"{a.Text} ({a.Name}) on {b.Text} ({b.Name})"))];
}
