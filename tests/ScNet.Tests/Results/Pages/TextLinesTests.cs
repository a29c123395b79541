using ScNet.Results.Pages;

namespace ScNet.Tests.Results.Pages;

public sealed class TextLinesTests
{
    [Theory]
    [InlineData("", 5, "")]
    [InlineData("one two", 7, "one two")]
    [InlineData("one two", 6, "one|two")]
    [InlineData("one two three", 8, "one two|three")]
    [InlineData("abcdefgh ij", 3, "abc|def|gh|ij")]
    [InlineData("a  b c d", 6, "a  b c|d")]
    [InlineData("of 12.5 µW, 3 % more", 9, "of|12.5 µW,|3 % more")]
    [InlineData("電荷電荷", 4, "電荷|電荷")]
    [InlineData("電", 1, "電")]
    [InlineData("e\u0301e\u0301e\u0301", 2, "e\u0301e\u0301|e\u0301")]
    public void Text_is_broken_at_blanks_and_within_words_that_are_longer_than_a_line(string text, int width, string lines) =>
        Assert.Equal(lines.Split('|'), TextLines.Of(text, width));

    [Theory]
    [InlineData("R = 1 Ω", 7)]
    [InlineData("電荷", 4)]
    [InlineData("e\u0301", 1)]
    [InlineData("\U0001F600", 2)]
    [InlineData("ｱ", 1)]
    [InlineData("", 0)]
    public void Width_counts_what_a_reader_sees_and_wide_letters_twice(string text, int width) => Assert.Equal(width, TextWidth.Of(text));
}
