using Fractions;

namespace ScNet.Derivations.Tests;

public sealed class StatedValueTests
{
    [Theory]
    [InlineData("1/3", 1, 3)]
    [InlineData("-2", -2, 1)]
    [InlineData(" 4/-6 ", -2, 3)]
    [InlineData("0.25", 1, 4)]
    [InlineData("1e-3", 1, 1000)]
    public void Text_is_read_as_an_exact_fraction_in_every_culture(string text, int numerator, int denominator)
    {
        foreach (string culture in new[] { "", "de-DE", "ar-SA", "tr-TR" })
        {
            using CultureScope scope = new(culture);
            StatedValue value = text;
            Assert.Equal(Quantity.Exact(numerator, denominator), value.Value);
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("1/0")]
    [InlineData("1/3/2")]
    [InlineData("a third")]
    [InlineData("0,25")]
    [InlineData("1e999")]
    [InlineData("NaN")]
    [InlineData("1.5\0")]
    [InlineData("1\0")]
    [InlineData("1/3\0")]
    public void Other_text_is_refused_at_once(string text) =>
        Assert.Contains($"\"{text}\"", Assert.Throws<ArgumentException>(() => StatedValue.FromString(text)).Message, StringComparison.Ordinal);

    [Fact]
    public void Text_of_more_digits_than_can_be_read_soon_is_refused()
    {
        Assert.True(StatedValue.TryRead($"1{new string('0', StatedValue.MaximumLength - 1)}", out _));
        Assert.False(StatedValue.TryRead($"1{new string('0', StatedValue.MaximumLength)}", out _));
    }

    [Fact]
    public void Numbers_fractions_and_the_question_mark_convert()
    {
        StatedValue[] converted = [2, new Fraction(1, 3), 0.5, "?", Quantity.Zero];
        StatedValue[] made =
        [
            StatedValue.FromInt32(2), StatedValue.FromFraction(new Fraction(1, 3)), StatedValue.FromDouble(0.5),
            StatedValue.FromQuantity(Quantity.Undetermined), 0,
        ];
        Assert.Equal<StatedValue[]>(made, converted);
        Assert.NotEqual((StatedValue)0.5, (StatedValue)"0.5");
        Assert.Equal(((StatedValue)"1/3").GetHashCode(), ((StatedValue)new Fraction(2, 6)).GetHashCode());
        Assert.Equal(["2", "1/3", "0.5", "?"], new StatedValue[] { 2, "1/3", 0.5, "?" }.Select(v => v.ToString()));
        Assert.Throws<ArgumentOutOfRangeException>(() => (StatedValue)double.NaN);
        Assert.Throws<ArgumentOutOfRangeException>(() => (StatedValue)1.1e100);
        Assert.Throws<ArgumentOutOfRangeException>(() => (StatedValue)"-2e100");
    }
}
