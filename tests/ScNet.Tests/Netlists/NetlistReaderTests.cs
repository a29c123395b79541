using Fractions;
using ScNet.Netlists;

namespace ScNet.Tests.Netlists;

public sealed class NetlistReaderTests
{
    [Fact]
    public void A_document_gives_what_the_builder_gives()
    {
        Converter built = Converter.Create("Half").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n", 1e-9)
            .Switch("s1", "vin", "p", 1, 2).Switch("s2", "n", "vout", 1, 2)
            .Switch("s3", "p", "vout", 2, 2).Switch("s4", "n", "gnd", 2, 2)
            .Build();

        Assert.Equal(Documents.Describe(built), Documents.Describe(NetlistReader.Read(Documents.Half).GetConverter()));
    }

    [Fact]
    public void Modes_phases_names_and_the_load_are_read()
    {
        Converter converter = NetlistReader.Read(Documents.Reconfigurable).GetConverter();

        Assert.Equal(LoadKind.Current, converter.Load);
        Assert.Equal(["charge", "discharge"], converter.Phases.Select(p => p.Name));
        Assert.Equal([new Fraction(3, 10), new Fraction(7, 10)], converter.Phases.Select(p => p.Duty));
        Assert.Equal(0.01, converter.Capacitors[0].EsrOhms);
        Assert.Equal(["1/2", "1/1"], converter.Modes.Select(m => m.Name));
        Assert.Equal([[1], [1], [2], [2]], converter.Modes[0].ClosedPhases);
        Assert.Equal([[1, 2], [], [1, 2], []], converter.Modes[1].ClosedPhases);
    }

    [Fact]
    public void What_is_left_out_has_its_default()
    {
        Converter converter = NetlistReader.Read(
            "name='n'\ninput='a'\noutput='b'\ncapacitors.c.between=['b','gnd']\nswitches.s={between=['a','b'],on=[]}").GetConverter();

        Assert.Equal(LoadKind.Stiff, converter.Load);
        Assert.Equal([new Fraction(1, 2), new Fraction(1, 2)], converter.Phases.Select(p => p.Duty));
        Assert.Equal((1.0, 0.0), (converter.Capacitors[0].Farads, converter.Capacitors[0].EsrOhms));
        Assert.Equal(1.0, converter.Switches[0].Ohms);
        Assert.Equal("default", Assert.Single(converter.Modes).Name);
        Assert.Equal(PhaseSet.None, converter.Modes[0].ClosedPhases[0]);
    }

    [Theory]
    [InlineData("fly = { between = [\"p\", \"n\"], farads = 1e-9 }", "fly.between = [\"p\", \"n\"]\nfly.farads = 1e-9")]
    [InlineData("[capacitors]\nfly = { between = [\"p\", \"n\"], farads = 1e-9 }", "[capacitors.fly]\nbetween = ['p', 'n']\nfarads = 1E-9")]
    [InlineData("[capacitors]\nfly = { between = [\"p\", \"n\"], farads = 1e-9 }", "[capacitors]\n\"fly\" = { \"between\" = [ # plates\n 'p', \"\\u006E\",\n], 'farads' = 0.000_000_001 }")]
    [InlineData("[capacitors]\nfly = { between = [\"p\", \"n\"], farads = 1e-9 }", "[ capacitors . \"fly\" ]\nbetween = ['''p''', \"\"\"n\"\"\"]\nfarads = +1.0e-9\nesr_ohms = 0")]
    [InlineData("ohms = 2.0, on = [1] }\ns2", "ohms = 2, on = 1 }\ns2")]
    [InlineData("ohms = 2.0, on = [1] }\ns2", "ohms = 0x2, on = [0b1, 1, 0o1] }\ns2")]
    [InlineData("ohms = 2.0, on = [1] }\ns2", "ohms = 20_0e-2, on = [1] }\r\ns2")]
    [InlineData("[capacitors]", "[phases]\ncount = 2\n[capacitors]")]
    [InlineData("[capacitors]", "phases = { duty = [0.5, 0.50] }\nload = \"stiff\"\n[capacitors]")]
    public void Every_spelling_of_the_same_reads_the_same(string old, string replacement) => Assert.Equal(
        Documents.Describe(NetlistReader.Read(Documents.Half).GetConverter()),
        Documents.Describe(NetlistReader.Read(Documents.HalfWith(old, replacement)).GetConverter()));

    [Fact]
    public void Modes_can_be_written_inline()
    {
        string text = "name='n'\ninput='a'\noutput='b'\nmodes = { \"1/2\" = { s1 = [1] }, b.s1 = 2 }\nswitches.s1.between = ['a', 'b']";

        Converter converter = NetlistReader.Read(text).GetConverter();

        Assert.Equal(["1/2", "b"], converter.Modes.Select(m => m.Name));
        Assert.Equal([[1], [2]], converter.Modes.Select(m => m.ClosedPhases[0]));
    }

    [Theory]
    [InlineData("0.3, 0.7", 3, 10)]
    [InlineData("0.1, 0.9", 1, 10)]
    [InlineData("1e-3, 0.999", 1, 1000)]
    [InlineData("2_5e-2, 0.7_5", 1, 4)]
    [InlineData("0.3333333333333333333, 0.6666666666666666667", 3333333333333333333, 10000000000000000000)]
    [InlineData("\"2/15\", \"13/15\"", 2, 15)]
    [InlineData("\"10/20\", 0.5", 1, 2)]
    public void Duties_are_the_exact_decimals_written(string duties, ulong numerator, ulong denominator)
    {
        Converter converter = NetlistReader.Read(Documents.HalfWith("[capacitors]", $"[phases]\nduty = [{duties}]\n[capacitors]")).GetConverter();

        Assert.Equal(new Fraction(numerator, denominator), converter.Phases[0].Duty);
    }

    [Fact]
    public void A_byte_order_mark_does_not_shift_columns() =>
        Documents.ExpectError("\uFEFF" + Documents.HalfWith("name  ", "nane  "), DiagnosticCodes.UnknownKey, 1, 1);

    [Fact]
    public void Warnings_come_with_the_converter()
    {
        NetlistReading reading = NetlistReader.Read(Documents.HalfWith("[capacitors]", "[capacitors]\nx = { between = ['p', 'nowhere'] }"), "a.toml");

        Assert.True(reading.HasResult);
        Diagnostic warning = Assert.Single(reading.Diagnostics);
        Assert.Equal((DiagnosticSeverity.Warning, DiagnosticCodes.FloatingTerminal, new SourcePosition("a.toml", 6, 1)), (warning.Severity, warning.Code, warning.Position));
    }

    [Theory]
    [InlineData("GND")]
    [InlineData("Gnd")]
    public void A_node_that_is_nearly_the_reference_is_a_node_with_a_warning(string node)
    {
        NetlistReading reading = NetlistReader.Read(Documents.HalfWith("[capacitors]", $"[capacitors]\nx = {{ between = ['p', '{node}'] }}\ny = {{ between = ['{node}', 'gnd'] }}"), "a.toml");

        Assert.Contains(node, reading.GetConverter().Nodes);
        Diagnostic warning = Assert.Single(reading.Diagnostics);
        Assert.Equal((DiagnosticSeverity.Warning, DiagnosticCodes.ReferenceSpelling, new SourcePosition("a.toml", 6, 1)), (warning.Severity, warning.Code, warning.Position));
        Assert.Contains("Write 'gnd' where the reference is meant.", warning.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("ground", true)]
    [InlineData("VSS", true)]
    [InlineData("0", true)]
    [InlineData("battery", false)]
    public void Another_name_of_the_reference_is_warned_of_where_nothing_touches_it(string node, bool isWarned)
    {
        Assert.Equal(isWarned, NetlistReader.Read(Documents.HalfWith("\"gnd\"", $"\"{node}\"")).Diagnostics.Any(d => d.Code == DiagnosticCodes.ReferenceSpelling));
        Assert.Empty(NetlistReader.Read(Documents.HalfWith("[capacitors]", $"[capacitors]\nx = {{ between = ['p', '{node}'] }}\ny = {{ between = ['{node}', 'gnd'] }}")).Diagnostics);
    }

    [Fact]
    public void Asking_for_the_converter_of_a_bad_document_throws_every_error()
    {
        NetlistReading reading = NetlistReader.Read(Documents.HalfWith("farads = 1e-9", "farads = 0").Replace("on = 2 ", "on = 3 ", StringComparison.Ordinal), "a.toml");

        ScNetException exception = Assert.Throws<ScNetException>(reading.GetConverter);

        Assert.Equal([DiagnosticCodes.ValueOutOfRange, DiagnosticCodes.UnknownPhase], exception.Diagnostics.Select(d => d.Code));
        Assert.StartsWith("'a.toml' cannot be read:", exception.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    public void Readings_and_messages_are_the_same_under_every_culture(string culture)
    {
        string bad = Documents.HalfWith("farads = 1e-9", "farads = -1.5").Replace("[capacitors]", "phases.duty = [0.25, 0.25]\nINPUT=1\n[capacitors]", StringComparison.Ordinal);
        string expected = string.Join('\n', NetlistReader.Read(bad).Diagnostics);
        string converter = Documents.Describe(NetlistReader.Read(Documents.Reconfigurable).GetConverter());
        Assert.Contains("-1.5 farads", expected, StringComparison.Ordinal);
        System.Globalization.CultureInfo before = System.Globalization.CultureInfo.CurrentCulture;
        try
        {
            System.Globalization.CultureInfo.CurrentCulture = new System.Globalization.CultureInfo(culture);
            Assert.Equal(expected, string.Join('\n', NetlistReader.Read(bad).Diagnostics));
            Assert.Equal(converter, Documents.Describe(NetlistReader.Read(Documents.Reconfigurable).GetConverter()));
        }
        finally
        {
            System.Globalization.CultureInfo.CurrentCulture = before;
        }
    }
}
