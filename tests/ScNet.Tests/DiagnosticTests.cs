namespace ScNet.Tests;

public sealed class DiagnosticTests
{
    [Fact]
    public void The_text_has_place_severity_code_and_message() => Assert.Equal(
        "a.toml(3,7): error syntax: Wrong.",
        new Diagnostic(DiagnosticSeverity.Error, DiagnosticCodes.Syntax, "Wrong.", position: new SourcePosition("a.toml", 3, 7)).ToString());

    [Fact]
    public void The_text_without_a_place_begins_with_the_severity() => Assert.Equal(
        "warning same-node: Odd.", new Diagnostic(DiagnosticSeverity.Warning, DiagnosticCodes.SameNode, "Odd.").ToString());

    [Theory]
    [InlineData("a.toml", 0, 0, "a.toml")]
    [InlineData(null, 0, 0, "netlist")]
    [InlineData(null, 2, 1, "netlist(2,1)")]
    public void A_position_tells_file_line_and_column(string? file, int line, int column, string expected) =>
        Assert.Equal(expected, new SourcePosition(file, line, column).ToString());

    [Fact]
    public void Elements_are_copied_and_default_to_none()
    {
        List<string> elements = ["s1"];
        Diagnostic diagnostic = new(DiagnosticSeverity.Error, DiagnosticCodes.UnknownPhase, "Wrong.", elements, 2);
        elements.Add("s2");

        Assert.Equal(["s1"], diagnostic.Elements);
        Assert.Equal(2, diagnostic.Phase);
        Assert.Empty(new Diagnostic(DiagnosticSeverity.Error, DiagnosticCodes.UnknownPhase, "Wrong.").Elements);
    }

    [Fact]
    public void Code_and_message_are_needed()
    {
        Assert.Throws<ArgumentException>(() => new Diagnostic(DiagnosticSeverity.Error, "", "Wrong."));
        Assert.Throws<ArgumentException>(() => new Diagnostic(DiagnosticSeverity.Error, DiagnosticCodes.Syntax, ""));
    }

    [Fact]
    public void An_exception_tells_every_finding()
    {
        Diagnostic[] findings =
        [
            new(DiagnosticSeverity.Error, DiagnosticCodes.DutySum, "First."),
            new(DiagnosticSeverity.Warning, DiagnosticCodes.SameNode, "Second."),
        ];

        ScNetException exception = new("No result:", findings);

        Assert.Equal(string.Join(Environment.NewLine, "No result:", "  error duty-sum: First.", "  warning same-node: Second."), exception.Message);
        Assert.Equal(findings, exception.Diagnostics);
    }

    [Fact]
    public void Codes_are_distinct_lower_case_words()
    {
        string[] codes = [.. typeof(DiagnosticCodes).GetFields().Select(f => (string)f.GetRawConstantValue()!)];

        Assert.Distinct(codes);
        Assert.All(codes, c => Assert.Matches("^[a-z]+(-[a-z]+)*$", c));
    }
}
