using ScNet.Reporting.Html;
using ScNet.Reporting.Tests.Charts;

namespace ScNet.Reporting.Tests;

/// <summary>What a notebook shows of this library: pictures as pictures, a report as itself, all else as its page.</summary>
public sealed class ShownResultsTests
{
    [Fact]
    public void What_is_neither_picture_nor_report_shows_as_a_page()
    {
        object[] roots = [new ReportConditions { Point = ChartSamples.Rippling.Point, Limits = ChartSamples.Ratings.Limits }];
        IReadOnlyDictionary<Type, List<object>> found = ShownTypes.Reached(roots, typeof(Picture).Assembly);
        Type[] shownAsThemselves = [typeof(Picture), typeof(Report)];
        Assert.Empty(ShownTypes.ThatShouldShow(typeof(Picture).Assembly).Except(found.Keys).Except(shownAsThemselves));
        Assert.Empty(found.Where(f => ShownTypes.ThatShouldShow(f.Key.Assembly).Contains(f.Key)).SelectMany(f => ShownTypes.Faults(f.Key, f.Value[0])));
    }

    /// <summary>What a notebook runs names the types that it shows in another way, and no type that is not there.</summary>
    [Fact]
    public void The_script_of_the_package_shows_pictures_and_reports()
    {
        string script = File.ReadAllText(RepositoryFiles.PathOf("src", "ScNet.Reporting", "extension.dib"));
        Assert.Contains($"Formatter.Register<{typeof(Picture)}>", script, StringComparison.Ordinal);
        Assert.Contains($"Formatter.Register<{typeof(Report)}>", script, StringComparison.Ordinal);
        Assert.Contains("ResultPage.TypesOf(typeof(ScNet.Reporting.Picture).Assembly)", script, StringComparison.Ordinal);
    }

    [Fact]
    public void A_report_within_a_page_holds_all_of_it_as_text_of_an_attribute()
    {
        Report report = Report.OfConverter(Analysis.ConverterAnalysis.Of(ChartSamples.Read("half")));
        string frame = report.ToFrame();
        System.Xml.Linq.XElement element = System.Xml.Linq.XElement.Parse(frame);
        Assert.Equal("allow-scripts", (string?)element.Attribute("sandbox"));
        Assert.Equal(report.ToHtml().Replace('\n', ' '), (string?)element.Attribute("srcdoc"));
    }
}
