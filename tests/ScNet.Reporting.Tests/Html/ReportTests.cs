using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Fractions;
using ScNet.Analysis;
using ScNet.Netlists;
using ScNet.Reporting.Html;

namespace ScNet.Reporting.Tests.Html;

public sealed partial class ReportTests
{
    private const string Evil = "<script>alert(1)</script>&\"'";

    private static readonly string s_html = Report.OfConverter(Half("half")).ToHtml();

    [Fact]
    public void Report_forbids_everything_but_its_own_style_and_script()
    {
        string policy = Regex.Match(s_html, "Content-Security-Policy\" content=\"([^\"]*)\"").Groups[1].Value;
        string style = Regex.Match(s_html, "<style>(.*?)</style>", RegexOptions.Singleline).Groups[1].Value, script = Regex.Match(s_html, "<script>(.*?)</script>", RegexOptions.Singleline).Groups[1].Value;
        Assert.Equal($"default-src 'none'; style-src '{Digest(style)}'; script-src '{Digest(script)}'; font-src data:; img-src data:; base-uri 'none'; form-action 'none'", policy);
        Assert.Single(Regex.Matches(s_html, "<script"));
        Assert.Empty(Regex.Matches(s_html, "\\sstyle=|\\son[a-z]+=|javascript:"));
    }

    [Fact]
    public void Report_names_no_place_outside_itself() =>
        Assert.Empty(Places().Matches(s_html).Select(m => m.Value).Except(["http://www.w3.org/2000/svg", "http://www.w3.org/1999/xlink"]));

    // without charge that is shared the limits have no corner to draw the impedance round
    [Fact]
    public void A_stage_whose_limits_have_no_corner_has_its_impedance_drawn_all_the_same()
    {
        Converter stage = Converter.Create("Step-down").Input("vin").Output("vout", LoadKind.Current).Duties(new Fraction(1, 4), new Fraction(3, 4))
            .Capacitor("out", "vout", "gnd", farads: 4.7e-6).Inductor("coil", "x", "vout", henries: 1e-6)
            .Switch("high", "vin", "x", on: 1, ohms: 0.1).Switch("low", "x", "gnd", on: 2, ohms: 0.1).Build();
        Assert.Equal(0, ModeAnalysis.Of(stage).SlowSwitchingLimit.OhmsAtOneHertz);
        Assert.Contains("Output impedance", Report.OfConverter(ConverterAnalysis.Of(stage)).ToHtml(), StringComparison.Ordinal);
    }

    [Fact]
    public void Same_input_gives_the_same_bytes_and_no_date_unless_one_is_given()
    {
        Assert.Equal(s_html, Report.OfConverter(Half("half")).ToHtml());
        Assert.Contains("2031-05-04", Report.OfConverter(Half("half"), new ReportConditions { Date = new DateOnly(2031, 5, 4) }).ToHtml(), StringComparison.Ordinal);
        Assert.DoesNotContain('\r', s_html);
    }

    [Fact]
    public void Names_are_escaped_wherever_they_stand()
    {
        string html = Report.OfConverter(Half(Evil), new ReportConditions { Origin = Evil }).ToHtml();
        Assert.DoesNotContain("<script>alert", html, StringComparison.Ordinal);
        Assert.Contains("<h1>&lt;script&gt;alert(1)&lt;/script&gt;&amp;&quot;&#39;</h1>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Headings_go_down_one_level_at_a_time_from_the_only_first_one()
    {
        int[] levels = [.. Regex.Matches(Regex.Replace(s_html, "<nav.*?</nav>", string.Empty, RegexOptions.Singleline), "<h([1-6])[ >]").Select(m => m.Groups[1].Value[0] - '0')];
        Assert.Equal(1, levels[0]);
        Assert.Single(levels, 1);
        Assert.All(levels.Zip(levels.Skip(1)), pair => Assert.True(pair.Second <= pair.First + 1, $"h{pair.First} is followed by h{pair.Second}"));
    }

    [Fact]
    public void Every_place_that_a_link_names_is_there_once()
    {
        string[] names = [.. Regex.Matches(s_html, " id=\"([^\"]*)\"").Select(m => m.Groups[1].Value)];
        Assert.Equal(names.Distinct(), names);
        Assert.Empty(Regex.Matches(s_html, "(?:href=\"#|url\\(#)([^\")]*)").Select(m => m.Groups[1].Value).Except(names));
    }

    [Fact]
    public void Dangers_and_assumptions_are_stated() => Assert.All(
        [.. Cautions.Dangers, .. Cautions.OfModel, .. Cautions.OfStress],
        text => Assert.Contains(System.Net.WebUtility.HtmlEncode(text), s_html, StringComparison.Ordinal));

    // the name of the converter, and that of its capacitor
    private static ConverterAnalysis Half(string name)
    {
        string quoted = "\"" + name.Replace("\"", "\\\"", StringComparison.Ordinal) + "\"";
        string text = File.ReadAllText(RepositoryFiles.PathOf("docs/examples/half.toml"));
        return ConverterAnalysis.Of(NetlistReader.Read(text.Replace("\"Half\"", quoted, StringComparison.Ordinal).Replace("fly =", quoted + " =", StringComparison.Ordinal)).GetConverter());
    }

    private static string Digest(string text) => "sha256-" + Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    [GeneratedRegex("[a-z]+://[^\"' <)]*")]
    private static partial Regex Places();
}
