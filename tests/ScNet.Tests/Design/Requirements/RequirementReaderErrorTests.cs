using CsCheck;
using ScNet.Design.Requirements;

namespace ScNet.Tests.Design.Requirements;

[Trait("Kind", "Law")]
public sealed class RequirementReaderErrorTests
{
    private static readonly string[] s_pieces =
    [
        "[", "]", "{", "}", "=", ",", ".", "\"", "\n", "#", "\\", "[[loads]]\n", "[[", "]]", "1e999", "nan", "-inf", "0", "true", "loads", "process.", "[process]\n",
        "[[candidates]]\n", "output_range_volts = 1\n", "[0.5, 3.0]", "{ name = 'a' }", "1979-05-27", "\uD800", "é", "-1", "sizes = [4, 2]\n",
    ];

    private static readonly Gen<string> s_mutated =
        from edits in Gen.Select(Gen.Int[0, 1400], Gen.Int[0, 12], Gen.OneOf(s_pieces), Gen.Bool).Array[1, 5]
        select edits.Aggregate(RequirementDocuments.Small, (text, edit) => Edit(text, edit.Item1, edit.Item2, edit.Item4 ? edit.Item3 : string.Empty));

    [Fact]
    public void A_name_that_is_there_twice_is_found_among_tens_of_thousands_of_loads()
    {
        const int Count = 40_000;
        LoadShare[] loads = [.. Enumerable.Range(0, Count).Select(k => new LoadShare($"load {k}", 1e-5, 1.0 / Count))];
        Assert.Null(RequirementRules.Shares(loads));
        loads[^1] = loads[^1] with { Name = "load 7" };
        RuleFault fault = RequirementRules.Shares(loads)!.Value;
        Assert.Equal((DiagnosticCodes.DuplicateName, Count - 1), (fault.Code, fault.Index));
        Assert.Contains("'load 7' is there twice", fault.Message, StringComparison.Ordinal);
    }

    /// <summary>What is replaced, by what; the code, line and column of the only error, and a part of its message.</summary>
    public static TheoryData<string, string, string, int, int, string> Mistakes => new()
    {
        { "name = \"Small\"", "", DiagnosticCodes.MissingKey, 1, 1, "Give the requirement a name" },
        { "\"Small\"", "5", DiagnosticCodes.WrongValue, 1, 8, "Expected a string for 'name' of the document, but got the number 5." },
        { "name = \"Small\"", "name = \"Small\"\nformat = 2", DiagnosticCodes.ValueOutOfRange, 2, 10, "Expected version 1 of the format, but got 2." },
        { "name = \"Small\"", "name = \"Small\"\nformat = \"1\"", DiagnosticCodes.WrongValue, 2, 10, "a whole number" },
        { "name = \"Small\"", "name = \"Small\"\ncolour = 1", DiagnosticCodes.UnknownKey, 2, 1, "The keys are format, name, input_volts" },
        { "input_volts =", "vin =", DiagnosticCodes.UnknownKey, 2, 1, "Did you mean 'input_volts'?" },
        { "input_volts =", "input_millivolts =", DiagnosticCodes.UnknownKey, 2, 1, "Did you mean 'input_volts'?" },
        { "input_volts = [2.8, 4.2]", "", DiagnosticCodes.MissingKey, 1, 1, "input_volts = [2.8, 4.2]" },
        { "[2.8, 4.2]", "[4.2, 2.8]", DiagnosticCodes.WrongValue, 2, 15, "4.2 comes before 2.8. Swap them." },
        { "[2.8, 4.2]", "[2.8, 3.6, 4.2]", DiagnosticCodes.WrongValue, 2, 15, "the smallest and the largest" },
        { "[2.8, 4.2]", "[2.8]", DiagnosticCodes.WrongValue, 2, 15, "the smallest and the largest" },
        { "[2.8, 4.2]", "[0, 4.2]", DiagnosticCodes.ValueOutOfRange, 2, 16, "Expected a positive number from 1e-60 to 1e60 for 'input_volts' of the document, but got 0." },
        { "[2.8, 4.2]", "[2.8, \"4.2 V\"]", DiagnosticCodes.WrongValue, 2, 21, "Write 4.2, without quotation marks." },
        { "[2.8, 4.2]", "[2.8, \"4200mV\"]", DiagnosticCodes.WrongValue, 2, 21, "Write 4200e-3, without quotation marks." },
        { "[2.8, 4.2]", "[2.8, inf]", DiagnosticCodes.ValueOutOfRange, 2, 21, "a finite number" },
        { "[[1.0, 4.2], [0.4, 3.6], [0.0, 2.8]]", "[[1.0, 4.2]]", DiagnosticCodes.WrongValue, 3, 19, "at least two points" },
        { "[[1.0, 4.2], [0.4, 3.6], [0.0, 2.8]]", "[]", DiagnosticCodes.WrongValue, 3, 19, "an empty array" },
        { "[0.4, 3.6]", "[0.4]", DiagnosticCodes.WrongValue, 3, 32, "a pair in an array of pairs" },
        { "[0.4, 3.6]", "[0.4, \"3.6\"]", DiagnosticCodes.WrongValue, 3, 38, "a number" },
        { "[0.4, 3.6]", "[1.4, 3.6]", DiagnosticCodes.ValueOutOfRange, 3, 32, "a state of charge from 0 (empty) to 1 (full), but got 1.4" },
        { "[0.4, 3.6]", "[0.4, -3.6]", DiagnosticCodes.ValueOutOfRange, 3, 32, "a positive voltage of the cell" },
        { "[0.4, 3.6]", "[0.4, 2.7]", DiagnosticCodes.OutsideRange, 3, 32, "within the input range, 2.8 V to 4.2 V, but got 2.7 V" },
        { "[0.0, 2.8]", "[0.5, 2.8]", DiagnosticCodes.DischargeNotFalling, 3, 44, "0.5 comes after 0.4. Write the curve from full to empty." },
        { "[0.0, 2.8]", "[0.0, 3.8]", DiagnosticCodes.DischargeNotFalling, 3, 44, "3.8 V comes after 3.6 V" },
        { "output_volts = [0.8, 1.0]", "", DiagnosticCodes.MissingKey, 1, 1, "or their range" },
        { "output_volts = [0.8, 1.0]", "output_volts = [0.8, 1.0]\noutput_range_volts = [0.8, 1.0]", DiagnosticCodes.WrongValue, 5, 22, "got both" },
        { "output_volts = [0.8, 1.0]", "output_volts = []", DiagnosticCodes.WrongValue, 4, 16, "at least one output voltage" },
        { "output_volts = [0.8, 1.0]", "output_volts = [1.0, 0.8]", DiagnosticCodes.WrongValue, 4, 22, "0.8 V comes after 1 V" },
        { "output_volts = [0.8, 1.0]", "output_range_volts = 1.0", DiagnosticCodes.WrongValue, 4, 22, "both ends" },
        { "output_volts = [0.8, 1.0]", "output_volts = 0.8", DiagnosticCodes.OutsideRange, 15, 16, "one of the output voltages, 0.8 V, but 'active' asks for 1 V" },
        { "output_volts = [0.8, 1.0]", "output_range_volts = [0.5, 0.8]", DiagnosticCodes.OutsideRange, 15, 16, "within the range of the output, 0.5 V to 0.8 V" },
        { "output_volts = [0.8, 1.0]", "output_volts = [0.8, 1.0]\noutput_uF = 1", DiagnosticCodes.UnknownKey, 5, 1, "Did you mean 'output_farads'?" },
        { "output_volts = [0.8, 1.0]", "output_volts = [0.8, 1.0]\noutput_millifarad = 1", DiagnosticCodes.UnknownKey, 5, 1, "Did you mean 'output_farads'?" },
        { "output_volts = [0.8, 1.0]", "output_volts = [0.8, 1.0]\noutput_mv = 1", DiagnosticCodes.UnknownKey, 5, 1, "Did you mean 'output_volts'?" },
        { "frequency_hertz =", "fsw =", DiagnosticCodes.UnknownKey, 5, 1, "Did you mean 'frequency_hertz'?" },
        { "frequency_hertz =", "frequency_MHz =", DiagnosticCodes.UnknownKey, 5, 1, "Did you mean 'frequency_hertz'?" },
        { "frequency_hertz = [1e5, 1e8]", "", DiagnosticCodes.MissingKey, 1, 1, "frequency_hertz = [1e5, 1e8]" },
        { "area_square_metres = 1e-6", "", DiagnosticCodes.MissingKey, 1, 1, "area_square_metres" },
        { "area_square_metres = 1e-6", "switch_area_square_metres = 1e-6", DiagnosticCodes.MissingKey, 1, 1, "There is no key 'capacitor_area_square_metres'" },
        { "area_square_metres = 1e-6", "area_mm2 = 1.0", DiagnosticCodes.UnknownKey, 6, 1, "Did you mean 'area_square_metres'?" },
        { "area_square_metres = 1e-6", "area_square_metres = \"1 mm2\"", DiagnosticCodes.WrongValue, 6, 22, "the plain number of square metres" },
        { "area_square_metres = 1e-6", "area_square_metres = 1e-6\ncapacitor_area_square_metres = 2e-6", DiagnosticCodes.OutsideRange, 6, 22, "sum to the total" },
        { "[[loads]]\nname = \"sleep\"", "[[loads]]", DiagnosticCodes.MissingKey, 7, 3, "There is no key 'name' in load 1." },
        { "\"sleep\"", "\"active\"", DiagnosticCodes.DuplicateName, 12, 8, "'active' is there twice" },
        { "amperes = 1e-5\n", "", DiagnosticCodes.MissingKey, 7, 3, "There is no key 'amperes' in load 1. Give it in amperes." },
        { "amperes = 1e-5", "milliamps = 1e-2", DiagnosticCodes.UnknownKey, 9, 1, "Did you mean 'amperes'?" },
        { "amperes = 1e-5", "ma = 1e-2", DiagnosticCodes.UnknownKey, 9, 1, "Did you mean 'amperes'?" },
        { "amperes = 1e-5", "amperes = \"10uA\"", DiagnosticCodes.WrongValue, 9, 11, "Write 10e-6," },
        { "amperes = 1e-5", "amperes = -1", DiagnosticCodes.ValueOutOfRange, 9, 11, "for 'amperes' of load 1, but got -1" },
        { "share = 0.9", "share = 0.8", DiagnosticCodes.ShareSum, 7, 3, "'sleep', 'active' sum to 0.9. Add what" },
        { "share = 0.9", "share = 1.0", DiagnosticCodes.ShareSum, 7, 3, "sum to 1.1. Make them smaller." },
        { "share = 0.9", "share = 90", DiagnosticCodes.ValueOutOfRange, 10, 9, "above 0 and at most 1" },
        { "area_square_metres = 1e-6", "area_square_metres = 1e-6\nload_range_amperes = [1e-4, 1e-2]", DiagnosticCodes.OutsideRange, 10, 11, "within the range of the load, 0.0001 A to 0.01 A, but 'sleep' draws 1E-05 A" },
        { "name = \"p\"\n", "", DiagnosticCodes.MissingKey, 16, 2, "Give the process a name" },
        { "[process.switches.thin]", "[process.switches.\"\"]", DiagnosticCodes.WrongValue, 19, 19, "a non-empty name of a switch kind" },
        { "[process.corners.slow]", "[process.corners.slow]\n[process.corners.slow]", DiagnosticCodes.DuplicateName, 38, 18, "'slow' is written twice (first at line 37, column 18)" },
        { "[process.inductors.coil]", "[process.inductor.coil]", DiagnosticCodes.UnknownKey, 32, 10, "Did you mean 'inductors'?" },
        { "rated_volts = 1.8\ngate", "gate", DiagnosticCodes.MissingKey, 19, 19, "There is no key 'rated_volts' in switch kind 'thin'. Give it in volts." },
        { "ohm_micrometres = 1000", "ron = 1000", DiagnosticCodes.UnknownKey, 24, 1, "Did you mean 'ohm_micrometres'?" },
        { "ohm_micrometres = 1000", "ohm_micrometres = 0", DiagnosticCodes.ValueOutOfRange, 24, 19, "for 'ohm_micrometres' of switch kind 'thin', but got 0" },
        { "threshold_volts = 0.5", "threshold_volts = 1.5", DiagnosticCodes.OutsideRange, 23, 19, "1.5 V, but got 1.5 V" },
        { "threshold_volts = 0.5", "threshold_volts = -0.5", DiagnosticCodes.ValueOutOfRange, 23, 19, "zero, or a positive number" },
        { "gate_rated_volts = 1.98", "gate_rated_volts = 1.2", DiagnosticCodes.OutsideRange, 21, 20, "what its gate withstands, 1.2 V, but got 1.5 V" },
        { "threshold_volts = 0.5", "polarity = \"x\"", DiagnosticCodes.WrongValue, 23, 12, "\"n\" or \"p\"" },
        { "farads_per_square_metre = 8e-3", "density = 8e-3", DiagnosticCodes.UnknownKey, 30, 1, "Did you mean 'farads_per_square_metre'?" },
        { "[[0, 4e-3], [1.8, 8e-3]]", "[[0, 4e-3]]", DiagnosticCodes.WrongValue, 31, 36, "at two voltages at least" },
        { "[[0, 4e-3], [1.8, 8e-3]]", "[[0, 4e-3], [0, 8e-3]]", DiagnosticCodes.WrongValue, 31, 48, "0 V comes after 0 V" },
        { "[[0, 4e-3], [1.8, 8e-3]]", "[[0, 4e-3], [1.8, 0]]", DiagnosticCodes.ValueOutOfRange, 31, 48, "a positive density" },
        { "henries = 1e-6", "henries = \"1uH\"", DiagnosticCodes.WrongValue, 33, 11, "Write 1e-6," },
        { "fixed_watts", "fixed_milliwatts", DiagnosticCodes.UnknownKey, 36, 1, "Did you mean 'fixed_watts'?" },
        { "[process.control]", "[[process.control]]", DiagnosticCodes.WrongValue, 35, 11, "an array of tables" },
        { "threshold_factor = 1.2", "threshold_factor = 3", DiagnosticCodes.OutsideRange, 38, 20, "at corner 'slow', but switch kind 'thin' has 1.5 V and 1.5 V" },
        { "threshold_factor = 1.2", "threshold_factor = 0", DiagnosticCodes.ValueOutOfRange, 38, 20, "of corner 'slow'" },
        { "source = \"invented\"", "source = \"invented\"\nmaximum_switches_in_series = 0", DiagnosticCodes.ValueOutOfRange, 19, 30, "a whole number from 1 to 1000" },
        { "source = \"invented\"", "gate_rail_efficiency = 1.2\nsource = \"invented\"", DiagnosticCodes.ValueOutOfRange, 18, 24, "above 0 and at most 1" },
        { "family = \"ladder\"", "family = \"\"", DiagnosticCodes.WrongValue, 40, 10, "non-empty" },
        { "family = \"ladder\"", "", DiagnosticCodes.MissingKey, 39, 3, "Name a netlist" },
        { "family = \"ladder\"", "families = []", DiagnosticCodes.WrongValue, 40, 12, "an array of families" },
        { "family = \"ladder\"\nsizes = [2, 4]", "family = \"ladder\"\nfile = \"a\"", DiagnosticCodes.WrongValue, 40, 10, "but got 'file', 'family'" },
        { "sizes = [2, 4]", "sizes = [4, 2]", DiagnosticCodes.WrongValue, 41, 9, "Swap them." },
        { "sizes = [2, 4]", "sizes = 2.5", DiagnosticCodes.WrongValue, 41, 9, "a whole number from 1 to 1000" },
        { "sizes = [2, 4]", "sizes = [0, 4]", DiagnosticCodes.ValueOutOfRange, 41, 10, "a whole number from 1 to 1000" },
        { "sizes = [2, 4]", "ratios = \"1/2\"", DiagnosticCodes.WrongValue, 41, 10, "an array of ratios" },
        { "sizes = [2, 4]", "ratios = [\"1/2\", true]", DiagnosticCodes.WrongValue, 41, 18, "a fraction such as" },
        { "sizes = [2, 4]", "ratios = [\"0/2\"]", DiagnosticCodes.ValueOutOfRange, 41, 11, "other than zero" },
        { "sizes = [2, 4]", "gears = 1", DiagnosticCodes.WrongValue, 41, 9, "true or false" },
        { "file = \"half.toml\"", "file = \"half.toml\"\nsizes = 2", DiagnosticCodes.WrongValue, 44, 9, "with families only" },
        { "file = \"half.toml\"", "file = half.toml", DiagnosticCodes.Syntax, 43, 8, "TOML" },
    };

    [Theory]
    [MemberData(nameof(Mistakes))]
    public void A_mistake_gives_one_message_at_its_place(string old, string replacement, string code, int line, int column, string part)
    {
        Diagnostic[] errors = [.. RequirementReader.Read(RequirementDocuments.With(old, replacement), "a.toml").Diagnostics];

        Diagnostic error = errors.Length > 0 ? errors[0] : throw new Xunit.Sdk.XunitException("no error");
        Assert.Equal((code, new SourcePosition("a.toml", line, column)), (error.Code, error.Position));
        Assert.Contains(part, error.Message, StringComparison.Ordinal);
        Assert.True(errors.Length == 1, string.Join('\n', (object[])errors));
    }

    [Fact]
    public void All_mistakes_are_told_in_the_order_of_the_document()
    {
        string text = RequirementDocuments.With("[2.8, 4.2]", "[2.8, -4.2]").Replace("share = 0.9", "shares = 0.9", StringComparison.Ordinal)
            .Replace("henries = 1e-6\n", string.Empty, StringComparison.Ordinal).Replace("sizes = [2, 4]", "sizes = true", StringComparison.Ordinal);

        Assert.Equal([2, 10, 32, 40], RequirementReader.Read(text).Diagnostics.Select(d => d.Position!.Value.Line));
    }

    [Fact]
    public void Every_kind_without_a_source_is_told() => Assert.Equal(
        ["thin", "mos", "coil"],
        RequirementReader.Read(RequirementDocuments.With("source = \"invented\"", "")).Diagnostics.Select(d => Assert.Single(d.Elements)));

    [Fact]
    public void What_a_syntax_error_hides_is_not_missed()
    {
        Diagnostic error = RequirementDocuments.OnlyError(RequirementDocuments.With("share = 0.9", "share = 0,9"));
        Assert.Equal((DiagnosticCodes.Syntax, 10), (error.Code, error.Position!.Value.Line));
    }

    [Fact]
    public void A_text_without_a_file_is_called_a_requirement_and_an_empty_one_says_what_is_needed()
    {
        Diagnostic error = Assert.Single(RequirementReader.Read("").Diagnostics);
        Assert.StartsWith("requirement(1,1): error missing-key: The document is empty. Give at least name, input_volts", error.ToString(), StringComparison.Ordinal);
        ScNetException thrown = Assert.Throws<ScNetException>(() => RequirementReader.Read("").GetRequirement());
        Assert.Contains("'requirement' cannot be read", thrown.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_not_there_is_one_error() =>
        Assert.Equal(DiagnosticCodes.FileUnreadable, Assert.Single(RequirementReader.ReadFile("none/none.toml").Diagnostics).Code);

    [Fact]
    public void No_mutation_of_a_document_throws_and_each_has_either_a_requirement_or_an_error() => s_mutated.Holds(
        text =>
        {
            RequirementReading reading = RequirementReader.Read(text, "a.toml");
            Assert.Equal(reading.HasResult, reading.Diagnostics.Count == 0);
            Assert.All(reading.Diagnostics, d =>
            {
                string[] lines = text.Split('\n');
                Assert.InRange(d.Position!.Value.Line, 1, lines.Length);
                Assert.InRange(d.Position.Value.Column, 1, lines[d.Position.Value.Line - 1].Length + 1);
            });
        },
        count: 2000);

    private static string Edit(string text, int at, int removed, string piece)
    {
        int start = Math.Min(at, text.Length);
        return string.Concat(text.AsSpan(0, start), piece, text.AsSpan(start + Math.Min(removed, text.Length - start)));
    }
}
