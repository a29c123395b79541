using System.Xml;
using System.Xml.Linq;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using ScNet.Analysis;
using ScNet.Reporting.Charts;
using ScNet.Reporting.Drawings;
using ScNet.Reporting.Html;
using ScNet.Results.Pages;
using ScNet.Stress;

namespace ScNet.Reporting.Tests;

/// <summary>Names of any characters in reports, pages of notebooks and pictures, read by a parser of HTML and one of XML.</summary>
public sealed class OddNameTests
{
    private static readonly Lazy<ConverterAnalysis> s_analysis = new(() => ConverterAnalysis.Of(OddNames.Converter));

    [Fact]
    public void A_report_is_sound_html_in_which_no_name_is_markup()
    {
        string html = Report.OfConverter(s_analysis.Value, new ReportConditions { Origin = "=\u001b<script>\u202E.toml", InputVolts = new Interval<double>(4, 4) }).ToHtml();
        AssertSound(html, scripts: 1);
        IDocument document = Strict(html);
        Assert.Contains("=\"\\u001B[1m<b>\\u202E&", document.QuerySelector("h1")!.TextContent, StringComparison.Ordinal);
        Assert.Superset(
            new HashSet<string> { "<script>alert(1)</script>", "a&amp;b", "\\u202Etxt.exe", "\\uFFFE", "\\U000E0041\\U000E0042", "]]>" },
            document.QuerySelectorAll("td, th, h2, h3, h4").Select(e => e.TextContent.Replace("Mode ", string.Empty, StringComparison.Ordinal)).ToHashSet());
    }

    [Fact]
    public void A_report_within_a_notebook_is_one_frame_that_holds_it_whole()
    {
        Report report = Report.OfConverter(ConverterAnalysis.Of(OddNames.Single));
        INode frame = Assert.Single(new HtmlParser().ParseFragment(report.ToFrame().TrimEnd(), Body()));
        Assert.Equal("IFRAME", frame.NodeName);
        Assert.Equal(report.ToHtml(), ((IElement)frame).GetAttribute("srcdoc"));
        Assert.Empty(OddNames.Hidden(((IElement)frame).GetAttribute("title")!));
    }

    [Fact]
    public void What_a_notebook_shows_of_a_result_has_no_name_as_markup()
    {
        foreach (object result in new object[] { OddNames.Converter, s_analysis.Value.Modes[0], "<b>\u001b\u202E", ConverterStress.Of(s_analysis.Value, new Interval<double>(4, 4)) })
        {
            string html = ResultPage.ToHtml(result);
            AssertSound("<!DOCTYPE html><html><head><title>x</title></head><body>" + html + "</body></html>", scripts: 0);
        }
    }

    [Fact]
    public void Pictures_are_xml_whose_texts_show()
    {
        ModeAnalysis analysis = s_analysis.Value.Modes[9].Require();
        Picture[] pictures = [NetworkDrawing.OfConverter(OddNames.Converter), NetworkDrawing.OfPhase(analysis, 1), ImpedanceChart.Of(analysis, new Interval<double>(1e5, 1e8))];
        foreach (Picture picture in pictures)
        {
            using XmlReader reader = XmlReader.Create(new StringReader(picture.ToSvg()), new XmlReaderSettings { CheckCharacters = true, DtdProcessing = DtdProcessing.Prohibit });
            XElement root = XElement.Load(reader);
            Assert.DoesNotContain(root.Descendants(), e => e.Name.LocalName is "script" or "img" or "foreignObject" or "b");
            Assert.Empty(OddNames.Hidden(picture.ToSvg()));
            Assert.Contains("\uFFFD", root.Value, StringComparison.Ordinal);
            IElement image = Assert.IsAssignableFrom<IElement>(Assert.Single(new HtmlParser().ParseFragment(picture.ToHtml().TrimEnd(), Body())));
            Assert.Equal(["alt", "src", "style"], image.Attributes.Select(a => a.Name).Order(StringComparer.Ordinal));
            Assert.Empty(OddNames.Hidden(image.GetAttribute("alt")!));
        }
    }

    [Theory]
    [InlineData("<!DOCTYPE html><html><head><title>x</title></head><body><p><script>alert(1)</script></body></html>")]
    [InlineData("<!DOCTYPE html><html><head><title>x</title></head><body><p onclick=\"x\">a</p></body></html>")]
    [InlineData("<!DOCTYPE html><html><head><title>x</title></head><body><p>\u202E</p></body></html>")]
    [InlineData("<!DOCTYPE html><html><head><title>x</title></head><body><p>&#27;</p></body></html>")]
    [InlineData("<!DOCTYPE html><html><head><title>x</title></head><body><p>a</b></body></html>")]
    public void The_check_sees_what_is_unsound(string html) => Assert.ThrowsAny<Exception>(() => AssertSound(html, scripts: 0));

    private static void AssertSound(string html, int scripts)
    {
        IDocument document = Strict(html);
        Assert.Equal(scripts, document.QuerySelectorAll("script").Length);
        Assert.DoesNotContain(document.All, e => e.Attributes.Any(a => a.Name.StartsWith("on", StringComparison.Ordinal)));
        Assert.Empty(document.QuerySelectorAll("img, iframe, object"));
        Assert.Empty(document.All.SelectMany(e => e.Attributes).SelectMany(a => OddNames.Hidden(a.Value)));
        Assert.Empty(OddNames.Hidden(document.DocumentElement.TextContent));
    }

    // mistakes that a browser would mend are exceptions
    private static IDocument Strict(string html) => new HtmlParser(new HtmlParserOptions { IsStrictMode = true }).ParseDocument(html);

    private static IElement Body() => new HtmlParser().ParseDocument(string.Empty).Body!;
}
