using System.Globalization;
using System.Xml.Linq;
using ScNet.Analysis;
using ScNet.Reporting.Drawings;
using ScNet.Topologies;

namespace ScNet.Reporting.Tests.Drawings;

public sealed class NetworkDrawingTests
{
    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void A_phase_shows_tied_nodes_their_voltage_and_the_charge_of_every_element()
    {
        Picture picture = NetworkDrawing.OfPhase(ModeAnalysis.Of(Ladder.StepDown(4)), 1);
        string[] texts = Texts(picture);
        Assert.Contains("vout = m1", texts);
        Assert.Contains("3/4", texts);
        Assert.Contains("fly3", texts);
        Assert.Equal("Ladder 4:1, phase 1 of 2", picture.Title);
        Assert.Equal(picture.Title, texts[0]);
    }

    [Fact]
    public void Every_charge_has_its_arrow_and_none_has_an_element_at_rest()
    {
        // in phase 2 the halving converter discharges its capacitor into the load, and the source rests
        XDocument svg = Svg(NetworkDrawing.OfPhase(ModeAnalysis.Of(Half()), 2));
        Assert.Equal(2, svg.Descendants(s_svg + "g").Single(g => (string?)g.Attribute("class") == "charges").Elements().Count());
    }

    [Fact]
    public void The_description_names_nets_elements_and_ways_of_charge() => Assert.Equal(
        "Closed network of Half, mode default, phase 2. Wires: gnd = n at 0; vin at 1; vout = p at 1/2. "
        + "Elements: source from vin to gnd, no charge; capacitor fly from vout to gnd, charge 1/2 towards vout; load from vout to gnd, charge 1/2 towards gnd. "
        + "Voltages are per volt of input, charges per unit of charge delivered to the load in one period.",
        NetworkDrawing.OfPhase(ModeAnalysis.Of(Half()), 2).Description);

    [Fact]
    public void The_description_of_a_converter_names_phases_and_switches()
    {
        string words = NetworkDrawing.OfConverter(Half()).Description;
        Assert.Contains("switch s1 from vin to p, closed in φ1", words, StringComparison.Ordinal);
        Assert.Contains("phases: φ1 for 1/2 of the period, φ2 for 1/2 of the period", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Resistances_stand_beside_their_parts_and_parasitic_capacitances_are_faint()
    {
        Converter converter = Converter.Create("Plated").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n", farads: 1e-9, esrOhms: 0.1, plates: new CapacitorPlates(BottomFarads: 3e-11))
            .Inductor("coil", "x", "vout", henries: 1e-6, ohms: 0.05).Parasitic("pad", "p", "gnd", 1e-12)
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "x", on: 1).Switch("s3", "p", "x", on: 2).Switch("s4", "n", "gnd", on: 2).Build();
        Picture picture = NetworkDrawing.OfConverter(converter);
        Assert.Empty(DrawnNetworks.Faults(converter));
        Assert.All(new[] { "100 mΩ", "50 mΩ", "pad", "1 pF", "fly bottom", "30 pF" }, t => Assert.Contains(t, Texts(picture)));
        XElement[] faint = [.. Svg(picture).Descendants(s_svg + "path").Where(e => (string?)e.Attribute("class") == "parasitic")];
        Assert.Equal(2, faint.Length);
        Assert.All(faint, e => Assert.Equal(Palette.Of(Appearance.Light).Faint, (string?)e.Attribute("stroke")));
        Assert.Contains("capacitor fly from p to n, in series with 100 mΩ", picture.Description, StringComparison.Ordinal);
        Assert.Contains("parasitic capacitance pad from p to gnd, 1 pF", picture.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void A_name_too_long_is_cut_in_the_drawing_and_whole_in_words()
    {
        string name = string.Join('_', Enumerable.Repeat("switch", 20));
        Converter converter = Converter.Create(name).Input("vin").Output("vout").Capacitor("out", "vout", "gnd").Switch(name, "vin", "vout", on: 1).Build();
        Picture picture = NetworkDrawing.OfConverter(converter);
        Assert.InRange(picture.WidthPixels, 100, 900);
        Assert.DoesNotContain(name, Texts(picture));
        Assert.Contains(Texts(picture), t => t.StartsWith("switch_switch", StringComparison.Ordinal) && t.EndsWith('…'));
        Assert.Contains($"switch {name} from vin to vout", picture.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void Parts_without_the_reference_are_marked_as_floating()
    {
        // c hangs on s3 alone in phase 2: both its ends float
        Converter converter = Converter.Create("Loose").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n").Capacitor("c", "a", "b")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)
            .Switch("s5", "a", "p", on: 1).Switch("s6", "b", "n", on: 1).Build();
        ModeAnalysis analysis = ModeAnalysis.Of(converter);
        Assert.Contains("floating", Texts(NetworkDrawing.OfPhase(analysis, 2)));
        Assert.DoesNotContain("floating", Texts(NetworkDrawing.OfPhase(analysis, 1)));
    }

    [Fact]
    public void The_strip_shows_phases_to_scale_and_a_bar_where_a_switch_is_closed()
    {
        Converter converter = InductiveStage.StepDown(new(1, 4));
        XElement[] bars = [.. Svg(NetworkDrawing.OfConverter(converter)).Descendants(s_svg + "g").Single(g => (string?)g.Attribute("class") == "closed").Elements()];
        Assert.Equal(2, bars.Length);
        Assert.Equal(3, (double)bars[1].Attribute("width")! / (double)bars[0].Attribute("width")!, 0.05);
        Assert.Equal((double)bars[0].Attribute("x")! + (double)bars[0].Attribute("width")!, (double)bars[1].Attribute("x")!);
    }

    [Fact]
    public void Several_modes_need_a_choice_for_the_strip()
    {
        Converter gears = BinaryConverter.Reconfigurable(2);
        Assert.DoesNotContain("φ1", Texts(NetworkDrawing.OfConverter(gears)));
        Assert.Contains("φ1", Texts(NetworkDrawing.OfConverter(gears, gears.Modes[1])));
        Assert.Throws<ArgumentException>(() => NetworkDrawing.OfConverter(gears, Half().Modes[0]));
    }

    [Fact]
    public void Names_stay_text_whatever_they_are()
    {
        Converter converter = Converter.Create("<script>alert(1)</script> & \u0001").Input("v<in").Output("v\"out'")
            .Capacitor("<b>&amp;", "v<in", "v\"out'").Switch("]]>", "v<in", "v\"out'", on: 1).Build();
        Picture picture = NetworkDrawing.OfConverter(converter);
        XDocument svg = Svg(picture);
        Assert.DoesNotContain(svg.Descendants(), e => e.Name.LocalName is "script" or "b");
        Assert.Contains("<script>alert(1)</script> & \uFFFD", Texts(picture));
        Assert.Contains("]]>", Texts(picture));
    }

    [Theory]
    [InlineData(Appearance.Light)]
    [InlineData(Appearance.Dark)]
    public void The_same_network_gives_the_same_bytes_in_any_culture(Appearance appearance)
    {
        string first = NetworkDrawing.OfConverter(Dickson.StepDown(5), null, appearance).ToSvg();
        using (new CultureScope("fa-IR"))
        {
            Assert.Equal(first, NetworkDrawing.OfConverter(Dickson.StepDown(5), null, appearance).ToSvg());
        }
    }

    [Fact]
    public void Grounds_differ_in_colour_alone()
    {
        Palette light = Palette.Of(Appearance.Light);
        Palette dark = Palette.Of(Appearance.Dark);
        string text = NetworkDrawing.OfConverter(Half()).ToSvg();
        foreach ((string from, string to) in new[] { (light.Ground, dark.Ground), (light.Ink, dark.Ink), (light.Faint, dark.Faint), (light.Grid, dark.Grid), (light.Mark, dark.Mark), (light.Series[0], dark.Series[0]) })
        {
            text = text.Replace(from, to, StringComparison.Ordinal);
        }

        Assert.Equal(NetworkDrawing.OfConverter(Half(), null, Appearance.Dark).ToSvg(), text);
    }

    [Fact]
    public void Title_and_description_are_in_the_document_and_its_size_is_that_of_the_picture()
    {
        Picture picture = NetworkDrawing.OfConverter(Half());
        XElement root = Svg(picture).Root!;
        Assert.Equal(picture.Title, (string?)root.Element(s_svg + "title"));
        Assert.Equal(picture.Description, (string?)root.Element(s_svg + "desc"));
        Assert.Equal("img", (string?)root.Attribute("role"));
        Assert.Equal(picture.WidthPixels, double.Parse((string)root.Attribute("width")!, CultureInfo.InvariantCulture));
    }

    [Fact]
    public void A_phase_that_does_not_exist_is_misuse() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => NetworkDrawing.OfPhase(ModeAnalysis.Of(Half()), 3));

    private static Converter Half() => Converter.Create("Half").Input("vin").Output("vout")
        .Capacitor("fly", "p", "n")
        .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
        .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2).Build();

    private static XDocument Svg(Picture picture) => XDocument.Parse(picture.ToSvg());

    private static string[] Texts(Picture picture) => [.. Svg(picture).Descendants(s_svg + "text").Select(t => t.Value)];
}
