using ScNet.Netlists;
using Tomlyn;
using Tomlyn.Model;

namespace ScNet.Tests.Netlists;

/// <summary>Names of any characters in netlist documents, read by a plain reader of TOML.</summary>
public sealed class OddNameTests
{
    [Fact]
    public void A_document_written_back_has_every_name_exactly_and_shows_all_of_it()
    {
        string text = NetlistWriter.ToToml(OddNames.Converter);
        Assert.Empty(OddNames.Hidden(text));
        TomlTable table = TomlSerializer.Deserialize<TomlTable>(text)!;
        Assert.Equal(OddNames.Converter.Name, table["name"]);
        Assert.Equal(OddNames.Converter.InputNode, table["input"]);
        Assert.Equal(OddNames.Modes, ((TomlTable)table["modes"]).Keys);
        Assert.Equal(OddNames.Converter.Switches.Select(s => s.Name), ((TomlTable)table["switches"]).Keys);
        Assert.Equal(text, NetlistWriter.ToToml(NetlistReader.Read(text).GetConverter()));
    }

    public static TheoryData<string, Action<ConverterBuilder, string>> Names => new()
    {
        { "converter", (_, n) => Converter.Create(n) },
        { "input", (b, n) => b.Input(n) },
        { "output", (b, n) => b.Output(n) },
        { "phase", (b, n) => b.PhaseNames("a", n) },
        { "capacitor", (b, n) => b.Capacitor(n, "a", "b") },
        { "node", (b, n) => b.Capacitor("c", "a", n) },
        { "body", (b, n) => b.Capacitor("c", "a", "b", plates: new CapacitorPlates(1e-12, 0, n)) },
        { "inductor", (b, n) => b.Inductor("l", n, "b") },
        { "parasitic", (b, n) => b.Parasitic(n, "a", "b", 1e-12) },
        { "further output", (b, n) => b.FurtherOutput(n, "a") },
        { "switch", (b, n) => b.Switch("s", n, "b") },
        { "mode", (b, n) => b.Mode(n) },
        { "closed", (b, n) => b.Mode("m", (n, 1)) },
    };

    [Theory]
    [MemberData(nameof(Names))]
    public void Half_a_character_is_no_name_in_the_builder(string what, Action<ConverterBuilder, string> use)
    {
        foreach (string half in new[] { "\uD800", "a\uDC00b", "\uD800\uD800\uDC00" })
        {
            ArgumentException refusal = Assert.Throws<ArgumentException>(() => use(Converter.Create("x"), half));
            Assert.True(refusal.Message.Contains("half of one", StringComparison.Ordinal), what);
        }

        use(Converter.Create("x"), "\U0001F600");
    }

    [Theory]
    [InlineData("name = \"a\\uD800\"")]
    [InlineData("name = 'a\uD800'")]
    public void Half_a_character_is_no_name_in_a_document(string text) =>
        Assert.Equal(DiagnosticCodes.Syntax, NetlistReader.Read(text).Diagnostics[0].Code);
}
