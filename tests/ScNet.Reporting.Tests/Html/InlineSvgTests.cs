using ScNet.Reporting.Html;

namespace ScNet.Reporting.Tests.Html;

public sealed class InlineSvgTests
{
    private const string Frame = "<?xml version=\"1.0\"?><svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" width=\"8\" height=\"4\">{0}</svg>";

    [Fact]
    public void Pictures_that_differ_in_colours_alone_become_one_with_colours_by_name()
    {
        ColourPairs colours = new();
        string svg = InlineSvg.Of(Of("<path stroke=\"#111111\" fill=\"#aaaaaa\"/>"), Of("<path stroke=\"#eeeeee\" fill=\"#aaaaaa\"/>"), "v1", colours);
        Assert.Contains("stroke=\"var(--p0)\" fill=\"#aaaaaa\"", svg, StringComparison.Ordinal);
        Assert.Contains("--p0: #111111;", colours.ToCss(), StringComparison.Ordinal);
        Assert.Contains("--p0: #eeeeee;", colours.ToCss(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("<path d=\"M0 0\"/>", "<path d=\"M1 0\"/>")]
    [InlineData("<text>a</text>", "<text>b</text>")]
    [InlineData("<g/>", "<g/><g/>")]
    public void Pictures_that_differ_otherwise_both_stand_there(string light, string dark)
    {
        string svg = InlineSvg.Of(Of(light), Of(dark), "v1", new ColourPairs());
        Assert.Equal(2, svg.Split("<svg ").Length - 1);
        Assert.Contains("class=\"light\"", svg, StringComparison.Ordinal);
        Assert.Contains("class=\"dark\"", svg, StringComparison.Ordinal);
    }

    [Fact]
    public void Styles_become_attributes_and_nothing_that_acts_or_loads_is_left()
    {
        string svg = Twice("<style>a{}</style><script>x</script><path style=\"fill: #123456; stroke-width:2\" onclick=\"x\"/><image xlink:href=\"http://example.invalid/a.png\"/>");
        Assert.Contains("fill=\"#123456\" stroke-width=\"2\"", svg, StringComparison.Ordinal);
        Assert.All(new[] { "<style", "<script", "onclick", "example.invalid", "style=" }, text => Assert.DoesNotContain(text, svg, StringComparison.Ordinal));
    }

    [Fact]
    public void Identifiers_are_those_of_the_picture()
    {
        string svg = Twice("<clipPath id=\"c\"/><path clip-path=\"url(#c)\"/><use xlink:href=\"#c\"/>");
        Assert.Contains("id=\"v7-c\"", svg, StringComparison.Ordinal);
        Assert.Contains("url(#v7-c)", svg, StringComparison.Ordinal);
        Assert.Contains("href=\"#v7-c\"", svg, StringComparison.Ordinal);
    }

    [Fact]
    public void Title_and_description_are_named_and_escaped()
    {
        string svg = Twice(string.Empty);
        Assert.Contains("role=\"img\" aria-labelledby=\"v7-title\" aria-describedby=\"v7-words\"", svg, StringComparison.Ordinal);
        Assert.Contains("<title id=\"v7-title\">A &lt;title&gt;</title>", svg, StringComparison.Ordinal);
    }

    private static string Twice(string content) => InlineSvg.Of(Of(content), Of(content), "v7", new ColourPairs());

    private static Picture Of(string content) => new("A <title>", "words", 8, 4, Frame.Replace("{0}", content, StringComparison.Ordinal));
}
