using ScNet.Design.Requirements;

namespace ScNet.Tests.Design.Requirements;

/// <summary>Mistakes that touch a whole part of a document, each of which is told once and in words that fit.</summary>
public sealed class RequirementDocumentTests
{
    [Fact]
    public void Loads_that_are_missing_or_no_tables_are_told()
    {
        string without = Without("[[loads]]", "[process]");
        Expect(DiagnosticCodes.MissingKey, "There is no key 'loads' in the document. Say what the load draws", without);
        Expect(DiagnosticCodes.WrongValue, "tables such as [[loads]]", Without("[[loads]]", "[process]", "loads = 5\n"));
        Assert.True(RequirementReader.Read(Without("[[loads]]", "[process]", "load_range_amperes = [1e-6, 1e-2]\n")).HasResult);
    }

    [Fact]
    public void A_process_that_is_missing_or_no_table_is_told()
    {
        Expect(DiagnosticCodes.MissingKey, "There is no key 'process' in the document. Say what a converter can be made of", Without("[process]", "[[candidates]]"));
        Expect(DiagnosticCodes.WrongValue, "a table [process]", "process = 5\n" + Without("[process]", "[[candidates]]"));
    }

    [Fact]
    public void Candidates_that_are_no_tables_are_told()
    {
        string without = Without("[[candidates]]", "");
        Expect(DiagnosticCodes.WrongValue, "\"all\", or tables such as [[candidates]]", "candidates = 5\n" + without);
        Assert.Empty(RequirementReader.Read("candidates = \"all\"\n" + without).GetRequirement().Candidates);
    }

    [Theory]
    [InlineData("[process.switches.thin]", "switches", "switch kind")]
    [InlineData("[process.capacitors.mos]", "capacitors", "capacitor kind")]
    public void A_process_has_kinds_of_switches_and_of_capacitors(string header, string key, string kind)
    {
        string without = Without(header, "[process.");
        Expect(DiagnosticCodes.MissingKey, $"There is no key '{key}' in [process]. Add a table for each {kind}, such as [process.{key}.a].", without);
        Expect(DiagnosticCodes.MissingKey, $"Add a table for each {kind}", without.Replace("[process.control]", $"[process.{key}]\n[process.control]", StringComparison.Ordinal));
        Expect(DiagnosticCodes.WrongValue, $"tables such as [process.{key}.a]", without.Replace("name = \"p\"", $"name = \"p\"\n{key} = 5", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("area_square_metres = 1e-6", "capacitor_area_square_metres = 1e-6", "There is no key 'switch_area_square_metres' in the document.")]
    [InlineData("share = 0.9\n", "", "There is no key 'share' in load 1. Give it as a plain number.")]
    [InlineData("share = 0.9", "share = \"most\"", "Write the plain number of this key,")]
    [InlineData("name = \"p\"\n", "", "There is no key 'name' in [process].")]
    [InlineData("fixed_watts = 1e-6", "fixed_watts = -1", "for 'fixed_watts' of [process.control], but got -1.")]
    [InlineData("[[0, 4e-3], [1.8, 8e-3]]", "[]", "but got none.")]
    [InlineData("[[0, 4e-3], [1.8, 8e-3]]", "[[0, 4e-3]]", "but got one.")]
    [InlineData("threshold_factor = 1.2", "threshold_factor = 9\nresistance_factor = -1", "for 'resistance_factor' of corner 'slow', but got -1.")]
    [InlineData("discharge_volts = [[1.0, 4.2], [0.4, 3.6], [0.0, 2.8]]", "discharge_volts = 5", "Expected an array of pairs of charge left and volts")]
    public void A_mistake_is_told_in_words_that_fit_it(string old, string replacement, string part) =>
        Assert.Contains(part, RequirementDocuments.OnlyError(RequirementDocuments.With(old, replacement)).Message, StringComparison.Ordinal);

    [Fact]
    public void A_mistake_names_the_element_it_is_in_and_none_outside_of_any()
    {
        Assert.Empty(RequirementDocuments.OnlyError(RequirementDocuments.With("\"Small\"", "5")).Elements);
        Assert.Empty(RequirementDocuments.OnlyError(RequirementDocuments.With("share = 0.9\n", "")).Elements);
        Assert.Equal(["thin"], RequirementDocuments.OnlyError(RequirementDocuments.With("ohm_micrometres = 1000", "ohm_micrometres = 0")).Elements);
    }

    /// <summary>A key twice is no TOML; a name twice is one element too many.</summary>
    [Theory]
    [InlineData("name = \"Small\"", DiagnosticCodes.Syntax)]
    [InlineData("fixed_watts = 1e-6", DiagnosticCodes.Syntax)]
    [InlineData("[process.switches.thin]", DiagnosticCodes.DuplicateName, "thin")]
    [InlineData("[process.capacitors.mos]", DiagnosticCodes.DuplicateName, "mos")]
    [InlineData("[process.inductors.coil]", DiagnosticCodes.DuplicateName, "coil")]
    [InlineData("[process.corners.slow]", DiagnosticCodes.DuplicateName, "slow")]
    public void What_is_written_twice_is_a_name_or_a_key(string line, string code, params string[] elements)
    {
        Diagnostic error = RequirementDocuments.OnlyError(RequirementDocuments.With(line, $"{line}\n{line}"));
        Assert.Equal(code, error.Code);
        Assert.Equal(elements, error.Elements);
    }

    private static void Expect(string code, string part, string text)
    {
        Diagnostic error = RequirementDocuments.OnlyError(text);
        Assert.Equal(code, error.Code);
        Assert.Contains(part, error.Message, StringComparison.Ordinal);
    }

    /// <summary>The sound document without the lines from the one that begins a part up to the one that begins the next.</summary>
    private static string Without(string first, string next, string replacement = "")
    {
        string text = RequirementDocuments.Small;
        int start = text.IndexOf(first, StringComparison.Ordinal), end = next.Length == 0 ? text.Length : text.IndexOf(next, start + first.Length, StringComparison.Ordinal);
        return string.Concat(text.AsSpan(0, start), replacement, text.AsSpan(end));
    }
}
