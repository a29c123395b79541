namespace ScNet.Reporting.Tests.Charts;

public sealed class PaletteTests
{
    [Fact]
    public void Fills_of_kinds_differ_in_grey_and_for_every_eye_and_neighbours_most() => Assert.All(
        Palette.Kinds.SelectMany((a, i) => Palette.Kinds.Skip(i + 1).Select((b, k) => (a, b, IsNeighbour: k == 0))),
        pair =>
        {
            Assert.True(Colours.AreDistinct(pair.a, pair.b), $"{pair.a} and {pair.b}");
            Assert.True(!pair.IsNeighbour || Math.Abs(Colours.Lightness(pair.a) - Colours.Lightness(pair.b)) > 18, $"{pair.a} beside {pair.b}");
        });

    [Fact]
    public void More_is_darker_on_the_ramp() => Assert.All(
        Palette.Ramp.Zip(Palette.Ramp.Skip(1)), pair => Assert.True(Colours.Lightness(pair.First) - Colours.Lightness(pair.Second) > 5, $"{pair}"));

    [Fact]
    public void Text_on_any_fill_has_contrast() => Assert.All(
        Palette.Kinds.Concat(Palette.Ramp).Concat(["#ffffff", "#000000", "#757575", "#767676", "#777777"]), fill => Assert.True(Colours.Contrast(Palette.TextOn(fill), fill) >= 4.5, fill));

    [Theory]
    [InlineData(Appearance.Light)]
    [InlineData(Appearance.Dark)]
    public void Colours_have_the_contrast_that_they_promise(Appearance appearance)
    {
        Palette palette = Palette.Of(appearance);
        Assert.True(Colours.Contrast(palette.Ink, palette.Ground) > 7);
        Assert.True(Colours.Contrast(palette.Faint, palette.Ground) > 4.5);
        Assert.True(Colours.Contrast(palette.Mark, palette.Ground) > 4.5);
    }

    [Fact]
    public void Colours_that_look_the_same_are_noticed()
    {
        // equal in grey; told apart by some eyes only (red and green of one lightness)
        Assert.False(Colours.AreDistinct("#777777", "#7a7a7a"));
        Assert.False(Colours.AreDistinct("#c00000", "#4c6a00"));
        Assert.True(Colours.AreDistinct("#000000", "#ffffff"));
        Assert.Equal(21, Colours.Contrast("#000000", "#ffffff"), 1e-9);
    }

    [Fact]
    public void No_eye_sees_white_as_a_colour() => Assert.All(
        new[] { Colours.Protanopia, Colours.Deuteranopia, Colours.Tritanopia }, eye => Assert.All(Colours.Seen("#ffffff", eye), c => Assert.Equal(1, c, 1e-5)));
}
