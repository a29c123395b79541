using ScNet.Netlists;

namespace ScNet.Tests.Netlists;

public sealed class NetlistReaderErrorTests
{
    public static TheoryData<string, string, string, int, int, string> SingleMistakes => new()
    {
        { "name   = \"Half\"", "", DiagnosticCodes.MissingKey, 1, 1, "'name'" },
        { "input  = \"vin\"", "", DiagnosticCodes.MissingKey, 1, 1, "'input'" },
        { "output = \"vout\"", "", DiagnosticCodes.MissingKey, 1, 1, "'output'" },
        { "\"Half\"", "\"\"", DiagnosticCodes.WrongValue, 1, 10, "non-empty" },
        { "\"Half\"", "5", DiagnosticCodes.WrongValue, 1, 10, "Expected a string for 'name', but got the number 5." },
        { "input  =", "inptu  =", DiagnosticCodes.UnknownKey, 2, 1, "Did you mean 'input'?" },
        { "input  = \"vin\"", "input  = \"gnd\"", DiagnosticCodes.PortClash, 2, 10, "reference" },
        { "input  = \"vin\"", "input  = \"vout\"", DiagnosticCodes.PortClash, 3, 10, "same node" },
        { "input  = \"vin\"", "input  = \"vim\"", DiagnosticCodes.PortUnconnected, 2, 10, "'vim'" },
        { "[capacitors]", "load = \"stif\"\n[capacitors]", DiagnosticCodes.WrongValue, 5, 8, "\"stiff\" or \"current\"" },
        { "[capacitors]", "load = true\n[capacitors]", DiagnosticCodes.WrongValue, 5, 8, "true" },
        { "[capacitors]", "colour = 1\n[capacitors]", DiagnosticCodes.UnknownKey, 5, 1, "The keys are format, name" },
        { "[switches]", "[switchs]", DiagnosticCodes.UnknownKey, 8, 2, "Did you mean 'switches'?" },
        { "[capacitors]", "[[capacitors]]", DiagnosticCodes.WrongValue, 5, 3, "an array of tables" },
        { "[capacitors]", "phases = 2\n[capacitors]", DiagnosticCodes.WrongValue, 5, 10, "a table [phases]" },
        { "[capacitors]", "[phases]\ncount = 1\n[capacitors]", DiagnosticCodes.TooFewPhases, 6, 9, "got 1" },
        { "[capacitors]", "[phases]\ncount = 2.0\n[capacitors]", DiagnosticCodes.WrongValue, 6, 9, "a whole number" },
        { "[capacitors]", "[phases]\ncount = 9223372036854775807\n[capacitors]", DiagnosticCodes.ValueOutOfRange, 6, 9, "at most 1000" },
        { "[capacitors]", "[phases]\ncounts = 2\n[capacitors]", DiagnosticCodes.UnknownKey, 6, 1, "'count'" },
        { "[capacitors]", "[phases]\ncount = 3\nduty = [0.5, 0.5]\n[capacitors]", DiagnosticCodes.WrongValue, 6, 9, "3 phases" },
        { "[capacitors]", "[phases]\nduty = 0.5\n[capacitors]", DiagnosticCodes.WrongValue, 6, 8, "an array" },
        { "[capacitors]", "[phases]\nduty = []\n[capacitors]", DiagnosticCodes.TooFewPhases, 6, 8, "got 0" },
        { "[capacitors]", "[phases]\nduty = [0.5, 0.4]\n[capacitors]", DiagnosticCodes.DutySum, 6, 8, "0.9" },
        { "[capacitors]", "[phases]\nduty = [1.0, 0.0]\n[capacitors]", DiagnosticCodes.ValueOutOfRange, 6, 14, "phase 2" },
        { "[capacitors]", "[phases]\nduty = [1.5, -0.5]\n[capacitors]", DiagnosticCodes.ValueOutOfRange, 6, 14, "-0.5" },
        { "[capacitors]", "[phases]\nduty = [0.5, nan]\n[capacitors]", DiagnosticCodes.ValueOutOfRange, 6, 14, "nan" },
        { "[capacitors]", "[phases]\nduty = [inf, 0.5]\n[capacitors]", DiagnosticCodes.ValueOutOfRange, 6, 9, "inf" },
        { "[capacitors]", "[phases]\nduty = [0.5, \"0.5\"]\n[capacitors]", DiagnosticCodes.WrongValue, 6, 14, "a fraction such as \"2/15\", for the duty of phase 2, but got the string \"0.5\"" },
        { "[capacitors]", "[phases]\nduty = [0.5, \"1/0\"]\n[capacitors]", DiagnosticCodes.WrongValue, 6, 14, "the string \"1/0\"" },
        { "[capacitors]", "[phases]\nduty = [\"2/3\", \"2/3\"]\n[capacitors]", DiagnosticCodes.DutySum, 6, 8, "1.33" },
        { "[capacitors]", "[phases]\nduty = [1.0, 1e-400]\n[capacitors]", DiagnosticCodes.ValueOutOfRange, 6, 14, "1e-400" },
        { "[capacitors]", "[phases]\nduty = [1.0, 1e-999999999999]\n[capacitors]", DiagnosticCodes.ValueOutOfRange, 6, 14, "1e-999999999999" },
        { "[capacitors]", "format = 2\nnew = 1\n[capacitors]", DiagnosticCodes.ValueOutOfRange, 5, 10, "Expected version 1 of the format, but got 2. Read it with the version of ScNet that it is written for." },
        { "[capacitors]", "format = 1.0\n[capacitors]", DiagnosticCodes.WrongValue, 5, 10, "Expected a whole number for 'format'" },
        { "[capacitors]", "[phases]\nnames = [\"a\", \"a\"]\n[capacitors]", DiagnosticCodes.DuplicateName, 6, 15, "Phase 2" },
        { "[capacitors]", "[phases]\nnames = [\"a\", \"b\", \"c\"]\ncount = 2\n[capacitors]", DiagnosticCodes.WrongValue, 6, 9, "2 phase names" },
        { "[capacitors]", "[phases]\nnames = [\"a\", \"\"]\n[capacitors]", DiagnosticCodes.WrongValue, 6, 15, "non-empty" },
        { "[capacitors]", "[phases]\nnames = [\"a\", 2]\n[capacitors]", DiagnosticCodes.WrongValue, 6, 15, "the number 2" },
        { "between = [\"p\", \"n\"], ", "", DiagnosticCodes.MissingKey, 6, 1, "'between'" },
        { "between = [\"p\", \"n\"]", "betwen = [\"p\", \"n\"]", DiagnosticCodes.UnknownKey, 6, 9, "Did you mean 'between'?" },
        { "[\"p\", \"n\"]", "\"p\"", DiagnosticCodes.WrongValue, 6, 19, "an array of two nodes" },
        { "[\"p\", \"n\"]", "[\"p\"]", DiagnosticCodes.WrongValue, 6, 19, "but got 1" },
        { "[\"p\", \"n\"]", "[\"p\", 1]", DiagnosticCodes.WrongValue, 6, 25, "the number 1" },
        { "[\"p\", \"n\"]", "[\"p\", \"\"]", DiagnosticCodes.WrongValue, 6, 25, "non-empty" },
        { "[\"p\", \"n\"]", "[\"p\", \"p\"]", DiagnosticCodes.SameNode, 6, 1, "Both plates" },
        { "farads = 1e-9", "farad = 1e-9", DiagnosticCodes.UnknownKey, 6, 31, "Did you mean 'farads'?" },
        { "farads = 1e-9", "farads = \"1n\"", DiagnosticCodes.WrongValue, 6, 40, "the string \"1n\". Write 1e-9, without quotation marks." },
        { "farads = 1e-9", "farads = \"1.5 uF\"", DiagnosticCodes.WrongValue, 6, 40, "Write 1.5e-6, without" },
        { "farads = 1e-9", "farads = \"a few\"", DiagnosticCodes.WrongValue, 6, 40, "Write the plain number of farads, such as 1e-9," },
        { "ohms = 2.0, on = 2 ", "ohms = \"2 ohm\", on = 2 ", DiagnosticCodes.WrongValue, 12, 40, "Write 2, without" },
        { "ohms = 2.0, on = 2 ", "ohms = \"2.2kΩ\", on = 2 ", DiagnosticCodes.WrongValue, 12, 40, "Write 2.2e3, without" },
        { "ohms = 2.0, on = 2 ", "ron = 2.0, on = 2 ", DiagnosticCodes.UnknownKey, 12, 33, "Did you mean 'ohms'?" },
        { "ohms = 2.0, on = 2 ", "R = 2.0, on = 2 ", DiagnosticCodes.UnknownKey, 12, 33, "Did you mean 'ohms'?" },
        { "ohms = 2.0, on = 2 ", "ohms = 2.0, closed = 2 ", DiagnosticCodes.UnknownKey, 12, 45, "Did you mean 'on'?" },
        { "farads = 1e-9", "capacitance = 1e-9", DiagnosticCodes.UnknownKey, 6, 31, "Did you mean 'farads'?" },
        { "farads = 1e-9", "esr = 1e-3", DiagnosticCodes.UnknownKey, 6, 31, "Did you mean 'esr_ohms'?" },
        { "farads = 1e-9", "colour = 1", DiagnosticCodes.UnknownKey, 6, 31, "The keys are between, farads, esr_ohms, bottom_farads, top_farads, body, controlled." },
        { "farads = 1e-9", "farads = 0", DiagnosticCodes.ValueOutOfRange, 6, 40, "finite and positive" },
        { "farads = 1e-9", "farads = 1e400", DiagnosticCodes.ValueOutOfRange, 6, 40, "1e400" },
        { "farads = 1e-9", "farads = -nan", DiagnosticCodes.ValueOutOfRange, 6, 40, "-nan" },
        { "farads = 1e-9", "farads = 1979-05-27", DiagnosticCodes.WrongValue, 6, 40, "a date or time" },
        { "farads = 1e-9", "esr_ohms = -1", DiagnosticCodes.ValueOutOfRange, 6, 42, "zero, or finite" },
        { "farads = 1e-9", "farads.x = 1", DiagnosticCodes.WrongValue, 6, 31, "a table" },
        { "fly = { between = [\"p\", \"n\"], farads = 1e-9 }", "fly = 1e-9", DiagnosticCodes.WrongValue, 6, 7, "a table such as" },
        { "fly =", "\"\" =", DiagnosticCodes.WrongValue, 6, 1, "non-empty name" },
        { "fly =", "s1 =", DiagnosticCodes.DuplicateName, 9, 1, "first at line 6" },
        { "s2 =", "s1 =", DiagnosticCodes.DuplicateName, 10, 1, "first at line 9" },
        { ", on = 2 ", " ", DiagnosticCodes.MissingKey, 12, 1, "'on'" },
        { "on = 2 ", "on = 3 ", DiagnosticCodes.UnknownPhase, 12, 50, "from 1 to 2" },
        { "on = 2 ", "on = [1, 0] ", DiagnosticCodes.UnknownPhase, 12, 54, "phase 0" },
        { "on = 2 ", "on = \"charge\" ", DiagnosticCodes.UnknownPhase, 12, 50, "not named" },
        { "on = 2 ", "on = 2.0 ", DiagnosticCodes.WrongValue, 12, 50, "the number 2.0" },
        { "on = 2 ", "on = [[2]] ", DiagnosticCodes.WrongValue, 12, 51, "an array" },
        { "on = 2 ", "on = \"\" ", DiagnosticCodes.WrongValue, 12, 50, "a phase" },
        { "[capacitors]", "[modes]\n[capacitors]", DiagnosticCodes.MissingKey, 5, 2, "no mode" },
        { "input  = \"vin\"", "input  = \"vin", DiagnosticCodes.Syntax, 2, 14, "TOML" },
        { "fly = {", "fly = { {", DiagnosticCodes.Syntax, 6, 9, "TOML" },
        { "\"n\"], farads = 1e-9 }", "\"n\", farads = 1e-9 }", DiagnosticCodes.Syntax, 6, 30, "TOML" },
        { "farads = 1e-9 }", "farads = 1e-9", DiagnosticCodes.Syntax, 6, 1, "not closed before line" },
        { "input  = \"vin\"", "input  =", DiagnosticCodes.Syntax, 2, 9, "TOML" },
        { "input  = \"vin\"", "input  = \"vin\" \"b\"", DiagnosticCodes.Syntax, 2, 16, "TOML" },
        { "[switches]", "[switches", DiagnosticCodes.Syntax, 8, 10, "TOML" },
        { "output = \"vout\"", "output = \"vout\"\ninput = \"vin\"", DiagnosticCodes.Syntax, 4, 1, "first at line 2" },
        { "[switches]", "[capacitors]", DiagnosticCodes.Syntax, 8, 2, "first at line 5" },
    };

    public static TheoryData<string, string, string, int, int, string> HybridMistakes => new()
    {
        { "henries = 1e-6", "henries = 0", DiagnosticCodes.ValueOutOfRange, 8, 45, "The inductance of 'coil' is 0 henries" },
        { "henries = 1e-6", "l = 1e-6", DiagnosticCodes.UnknownKey, 8, 35, "Did you mean 'henries'?" },
        { "ohms = 0.02", "ohms = \"20m\"", DiagnosticCodes.WrongValue, 8, 58, "the winding resistance (ohms) of 'coil', but got the string \"20m\". Write 20e-3," },
        { "[\"x\", \"vout\"]", "[\"vout\", \"vout\"]", DiagnosticCodes.SameNode, 8, 1, "Both terminals of inductor 'coil'" },
        { "until_zero = 4", "until_zero = 5", DiagnosticCodes.UnknownPhase, 8, 77, "Inductor 'coil' ends phase 5" },
        { "until_zero = 4", "until_zero = 1.5", DiagnosticCodes.WrongValue, 8, 77, "the phases that inductor 'coil' ends" },
        { "controlled = \"1/2\"", "controlled = \"half\"", DiagnosticCodes.WrongValue, 6, 115, "the controlled share of capacitor 'fly'" },
        { "body = \"well\"", "bulk = \"well\"", DiagnosticCodes.UnknownKey, 6, 87, "Did you mean 'body'?" },
        { ", farads = 1e-12", "", DiagnosticCodes.MissingKey, 17, 1, "has no key 'farads'" },
        { "junction =", "coil =", DiagnosticCodes.DuplicateName, 17, 1, "(first at line 8)" },
        { "diode_volts = 0.7", "diode_volts = -1", DiagnosticCodes.ValueOutOfRange, 14, 59, "forward voltage of the diode" },
    };

    [Theory]
    [MemberData(nameof(HybridMistakes))]
    public void A_mistake_about_inductors_and_parasitics_gives_one_message_at_its_place(
        string old, string replacement, string code, int line, int column, string part)
    {
        Diagnostic error = Documents.OnlyError(Documents.HybridWith(old, replacement));

        Assert.Equal((code, line, column), (error.Code, error.Position!.Value.Line, error.Position.Value.Column));
        Assert.Contains(part, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(SingleMistakes))]
    public void A_mistake_gives_one_message_at_its_place(string old, string replacement, string code, int line, int column, string part)
    {
        string text = Documents.HalfWith(old, replacement);
        if (code == DiagnosticCodes.Syntax && old == "[switches]" && replacement == "[capacitors]")
        {
            text = text.Replace(", ohms = 2.0, on = [1]", "", StringComparison.Ordinal).Replace(", ohms = 2.0, on = [2]", "", StringComparison.Ordinal)
                .Replace(",  ohms = 2.0, on = [1]", "", StringComparison.Ordinal).Replace(",  ohms = 2.0, on = 2 ", "", StringComparison.Ordinal);
        }

        Diagnostic error = Documents.ExpectError(text, code, line, column);
        Assert.Contains(part, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("name = \"x\\U00\n\"\n")]
    [InlineData("a.\"s\\\n\"\n")]
    [InlineData("a = \u0085\n")]
    [InlineData("a = \"\\\r\"\n")]
    public void A_character_that_is_not_expected_does_not_break_the_line_of_the_message(string text) => Assert.All(
        NetlistReader.Read(text).Diagnostics, d => Assert.DoesNotContain(d.ToString(), char.IsControl));

    // TOML 1.1 allows these; a netlist document is TOML 1.0, which other programs read.
    [Theory]
    [InlineData("farads = 1e-9 }", "farads = 1e-9, }", 6, 44, "no comma before a closing brace")]
    [InlineData("farads = 1e-9 }", "farads = 1e-9, # five\n}", 6, 45, "does not break the line within braces")]
    [InlineData("fly = { between", "fly = {\n\n between", 6, 8, "does not break the line within braces")]
    [InlineData("\"p\", \"n\"]", "\"\\x70\", \"n\"]", 6, 21, "no escape \\x")]
    [InlineData("[\"n\", \"vout\"]", "[\"n\", \"\"\"\\\n\"\"vou\\e\"\"\"\"]", 11, 6, "no escape \\e")]
    public void What_only_a_later_edition_of_TOML_allows_is_a_syntax_error(string old, string replacement, int line, int column, string part)
    {
        string text = Documents.HalfWith(old, replacement);
        Diagnostic[] errors = [.. NetlistReader.Read(text).Diagnostics];
        Assert.Contains(errors, e => e.Code == DiagnosticCodes.Syntax && e.Position == new SourcePosition(null, line, column)
            && e.Message.Contains(part, StringComparison.Ordinal));
    }

    // the comma is left over before a line end, as "\n" or "\r\n", here on the line of the comma or the next
    [Theory]
    [InlineData(",\n}", 6, 44)]
    [InlineData(",\r\n}", 6, 44)]
    [InlineData(" ,\r\n  }", 6, 45)]
    [InlineData("\n,}", 7, 1)]
    [InlineData("\r\n  , }", 7, 3)]
    public void A_comma_left_over_is_reported_where_it_stands(string ending, int line, int column)
    {
        IReadOnlyList<Diagnostic> errors = NetlistReader.Read(Documents.HalfWith("farads = 1e-9 }", "farads = 1e-9" + ending)).Diagnostics;

        Assert.Contains(errors, e => e.Position == new SourcePosition(null, line, column) && e.Message.Contains("no comma before a closing brace", StringComparison.Ordinal));
        Assert.Equal(2, errors.Count);
    }

    [Fact]
    public void What_looks_like_a_later_edition_of_TOML_inside_strings_comments_and_arrays_is_read()
    {
        string text = Documents.Half
            .Replace("\"Half\"", "\"\"\"\\\n Ha{,}\\\\xlf\"\"\"\"\" # {,} \\e", StringComparison.Ordinal)
            .Replace("[\"p\", \"n\"]", "[\n \"p\", # {,}\n 'n',\n]", StringComparison.Ordinal)
            .Replace("\n", "\r\n", StringComparison.Ordinal);

        Assert.Equal("Ha{,}\\xlf\"\"", NetlistReader.Read(text).GetConverter().Name);
    }

    [Fact]
    public void A_mistake_of_the_edition_does_not_hide_others()
    {
        string text = Documents.HalfWith("farads = 1e-9 }", "farad = 1e-9, }").Replace("input  = \"vin\"", "", StringComparison.Ordinal);

        Assert.Equal(
            [DiagnosticCodes.MissingKey, DiagnosticCodes.UnknownKey, DiagnosticCodes.Syntax],
            NetlistReader.Read(text).Diagnostics.Select(d => d.Code));
    }

    [Theory]
    [InlineData("[1, \"discharge\"]", "[1, \"dischrge\"]", DiagnosticCodes.UnknownPhase, 22, 10)]
    [InlineData("s4 = [2]", "s5 = [2]", DiagnosticCodes.UnknownSwitch, 20, 1)]
    [InlineData("s4 = [2]", "s1 = [2]", DiagnosticCodes.DuplicateName, 20, 1)]
    [InlineData("[modes.\"1/1\"]", "[modes.\"1/2\"]", DiagnosticCodes.DuplicateName, 21, 8)]
    [InlineData("s4 = [2]", "s4 = true", DiagnosticCodes.WrongValue, 20, 6)]
    [InlineData("{ between = [\"n\", \"gnd\"] }", "{ between = [\"n\", \"gnd\"], on = 1 }", DiagnosticCodes.OnAndModes, 15, 32)]
    [InlineData("[modes.\"1/1\"]", "[modes.\"\"]", DiagnosticCodes.WrongValue, 21, 8)]
    public void A_mistake_of_a_mode_gives_one_message(string old, string replacement, string code, int line, int column)
    {
        string text = Documents.Reconfigurable.Replace(old, replacement, StringComparison.Ordinal);
        if (replacement == "[modes.\"1/2\"]")
        {
            text = text[..text.LastIndexOf("s1 =", StringComparison.Ordinal)];
        }

        Documents.ExpectError(text, code, line, column);
    }

    [Fact]
    public void Independent_mistakes_are_all_reported_in_the_order_of_the_document()
    {
        string text = Documents.Half.Replace("farads", "farad", StringComparison.Ordinal)
            .Replace("on = 2 ", "on = 5 ", StringComparison.Ordinal)
            .Replace("[capacitors]", "phases.duty = [0.5, 0.6]\n[capacitors]", StringComparison.Ordinal);

        Assert.Equal(
            [(5, DiagnosticCodes.DutySum), (7, DiagnosticCodes.UnknownKey), (13, DiagnosticCodes.UnknownPhase)],
            NetlistReader.Read(text).Diagnostics.Select(d => (d.Position!.Value.Line, d.Code)));
    }

    [Fact]
    public void Each_statement_with_a_syntax_error_is_reported_once_and_the_rest_is_still_checked()
    {
        string text = Documents.Half.Replace("\"Half\"", "\"Half", StringComparison.Ordinal)
            .Replace("[\"p\", \"n\"]", "[\"p\" \"n\"]", StringComparison.Ordinal)
            .Replace("ohms = 2.0, on = 2 ", "ohm = 2.0, on = 2 ", StringComparison.Ordinal);

        Assert.Equal(
            [(1, DiagnosticCodes.Syntax), (6, DiagnosticCodes.Syntax), (12, DiagnosticCodes.UnknownKey)],
            NetlistReader.Read(text).Diagnostics.Select(d => (d.Position!.Value.Line, d.Code)));
    }

    [Fact]
    public void An_open_bracket_is_reported_where_it_opens()
    {
        Diagnostic error = Documents.ExpectError("name = \"n\"\n  x = [1,\n 2\n[phases]\ncount = 2\n", DiagnosticCodes.Syntax, 2, 3);

        Assert.Contains("not closed before line 4", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_string_left_open_at_the_end_is_reported_there() =>
        Documents.ExpectError("name = \"a\\", DiagnosticCodes.Syntax, 1, 11);

    [Fact]
    public void A_warning_beside_an_error_is_not_counted_as_an_error() =>
        Documents.ExpectError(Documents.HalfWith("farads", "farad") + "\ns5 = { between = ['p', 'p'], on = 1 }", DiagnosticCodes.UnknownKey, 6, 31);

    [Fact]
    public void A_list_of_more_than_a_thousand_errors_ends_with_their_number()
    {
        string text = Documents.Half + string.Concat(Enumerable.Range(0, 1500).Select(i => FormattableString.Invariant($"\nx{i} = 1")));

        IReadOnlyList<Diagnostic> errors = NetlistReader.Read(text).Diagnostics;

        Assert.Equal(1001, errors.Count);
        Assert.StartsWith("500 more errors", errors[^1].Message, StringComparison.Ordinal);
    }
}
