using CsCheck;
using ScNet.Netlists;
using Tomlyn.Parsing;

namespace ScNet.Tests.Netlists;

[Trait("Kind", "Law")]
public sealed class NetlistReaderProperties
{
    private static readonly string[] s_pieces =
    [
        "[", "]", "{", "}", "=", ",", ".", "\"", "'", "\n", "\r", "#", "\"\"\"", "'''", "\\", "\0", "\t", " ", "[[", "]]", "1e999", "nan",
        "-inf", "0x", "1979-05-27", "true", "s1", "on", "between", "[modes]", "[switches]", "capacitors", "modes.a", "phases.", "é", "\uD83D\uDE00",
        "\uD800", "\r\n", ",\n}", ",\r\n}", "-1", "1e-400", "9223372036854775808", "\uFEFF", "count = 3\n", "[phases]\n",
    ];

    private static readonly Gen<string> s_mutated =
        from start in Gen.OneOf(Documents.Half, Documents.Reconfigurable)
        from edits in Gen.Select(Gen.Int[0, 700], Gen.Int[0, 12], Gen.OneOf(s_pieces), Gen.Bool).Array[1, 6]
        select edits.Aggregate(start, (text, edit) => Edit(text, edit.Item1, edit.Item2, edit.Item4 ? edit.Item3 : string.Empty));

    [Fact]
    public void No_mutation_of_a_document_throws_and_each_has_either_a_converter_or_an_error() => s_mutated.Holds(
        text =>
        {
            NetlistReading reading = NetlistReader.Read(text, "a.toml");
            Assert.Equal(reading.HasResult, reading.Diagnostics.All(d => d.Severity == DiagnosticSeverity.Warning));
            Assert.All(reading.Diagnostics, d =>
            {
                Assert.Equal("a.toml", d.Position!.Value.File);
                string[] lines = text.Split('\n');
                Assert.InRange(d.Position.Value.Line, 1, lines.Length);
                Assert.InRange(d.Position.Value.Column, 1, lines[d.Position.Value.Line - 1].Length + 1);
            });
        },
        count: 700);

    [Fact]
    public void What_the_parser_with_its_own_validation_rejects_is_rejected() => s_mutated.Holds(
        text =>
        {
            bool isToml;
            try
            {
                isToml = !SyntaxParser.Parse(text.TrimStart('\uFEFF') + "\n", validate: true).HasErrors;
            }
            catch (Tomlyn.TomlException)
            {
                isToml = false;
            }

            NetlistReading reading = NetlistReader.Read(text);
            Assert.True(isToml || !reading.HasResult);
        },
        count: 700);

    [Fact]
    public void Random_text_never_throws() =>
        Gen.OneOf(s_pieces).Array[0, 60].Holds(pieces => Assert.NotNull(NetlistReader.Read(string.Concat(pieces)).Diagnostics), count: 700);

    private static string Edit(string text, int at, int removed, string piece)
    {
        int start = Math.Min(at, text.Length);
        return string.Concat(text.AsSpan(0, start), piece, text.AsSpan(start + Math.Min(removed, text.Length - start)));
    }
}
