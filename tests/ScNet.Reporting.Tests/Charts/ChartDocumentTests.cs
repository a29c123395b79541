using System.Xml.Linq;
using ScNet.Reporting.Charts;
using SkiaSharp;

namespace ScNet.Reporting.Tests.Charts;

/// <summary>Charts as documents: texts are texts, names are only text, and bytes are the same everywhere.</summary>
public sealed class ChartDocumentTests
{
    public static TheoryData<string, Appearance> Names => ChartSamples.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void A_chart_has_a_title_a_description_and_texts_that_can_be_searched(string name, Appearance appearance)
    {
        Picture picture = ChartSamples.Picture(name, appearance);
        XElement root = XDocument.Parse(picture.ToSvg()).Root!;
        Assert.Equal([picture.Title, picture.Description], root.Elements().Take(2).Select(e => e.Value));
        Assert.True(picture.Description.Length > picture.Title.Length);
        Assert.All(root.Descendants().Where(e => e.Name.LocalName == "text"), t => Assert.False(((string)t.Attribute("x")!).Contains(' ', StringComparison.Ordinal) || t.HasElements));
        Assert.DoesNotContain('\r', picture.ToSvg());
        Assert.Empty(root.Descendants().Attributes("id"));
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    [InlineData("tr-TR")]
    public void A_chart_is_the_same_to_the_byte_in_any_culture(string culture)
    {
        foreach (string name in (string[])["impedance", "waveforms", "stress", "losses", "map-of-loads", "trade-off", "tolerance"])
        {
            string usual = ChartSamples.All[name](Appearance.Light).ToSvg();
            using (new CultureScope(culture))
            {
                Assert.Equal(usual, ChartSamples.All[name](Appearance.Light).ToSvg());
            }
        }
    }

    [Fact]
    public void Charts_can_be_made_on_many_threads_at_once()
    {
        string[] names = ["impedance", "stress", "losses", "waveforms"];
        string[] usual = [.. names.Select(n => ChartSamples.All[n](Appearance.Dark).ToSvg())];
        Parallel.For(0, 24, i => Assert.Equal(usual[i % names.Length], ChartSamples.All[names[i % names.Length]](Appearance.Dark).ToSvg()));
    }

    [Fact]
    public void Names_from_outside_stay_text()
    {
        Converter strange = Converter.Create("<script>alert(1)</script> & \"half\" \u0001").Input("vin").Output("vout")
            .Capacitor("<b>", "p", "n", farads: 1e-9)
            .Switch("s1", "vin", "p", on: 1, ohms: 2).Switch("s2", "n", "vout", on: 1, ohms: 2)
            .Switch("s3", "p", "vout", on: 2, ohms: 2).Switch("s4", "n", "gnd", on: 2, ohms: 2)
            .Build();
        Picture picture = WaveformChart.Of(SteadyState.PeriodicSteadyState.Of(Analysis.ModeAnalysis.Of(strange), new(3.6, 0.01, 1e7)));
        XDocument document = XDocument.Parse(picture.ToSvg());
        Assert.DoesNotContain(document.Descendants(), e => e.Name.LocalName is "script" or "b");
        Assert.Contains(document.Descendants(), e => e.Value.StartsWith("Voltage of <b>", StringComparison.Ordinal));
    }

    [Fact]
    public void A_long_name_is_cut_to_the_width_of_the_chart()
    {
        Converter half = Converter.Create(string.Join(' ', Enumerable.Repeat("A converter with a long name", 9))).Input("vin").Output("vout")
            .Capacitor("fly", "p", "n", farads: 1e-9)
            .Switch("s1", "vin", "p", on: 1, ohms: 2).Switch("s2", "n", "vout", on: 1, ohms: 2)
            .Switch("s3", "p", "vout", on: 2, ohms: 2).Switch("s4", "n", "gnd", on: 2, ohms: 2)
            .Build();
        Picture picture = ImpedanceChart.Of(Analysis.ModeAnalysis.Of(half));
        DrawnText title = new DrawnChart(picture).Texts.First(t => t.Name == "title");
        Assert.EndsWith("…", title.Text, StringComparison.Ordinal);
        Assert.InRange(title.Box.Right, picture.WidthPixels - 40, picture.WidthPixels);
        Assert.Contains(half.Name, picture.Title, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Pixels_show_what_the_vectors_do(string name, Appearance appearance)
    {
        Picture picture = ChartSamples.Picture(name, appearance);
        using SKBitmap bitmap = SKBitmap.Decode(picture.ToPng(1));
        Assert.Equal((picture.WidthPixels, picture.HeightPixels), (bitmap.Width, bitmap.Height));

        // the title is there, in letters
        int ink = Enumerable.Range(10, 200).Sum(x => Enumerable.Range(8, 18).Count(y => bitmap.GetPixel(x, y) != bitmap.GetPixel(1, 1)));
        Assert.InRange(ink, 150, 2400);
    }
}
