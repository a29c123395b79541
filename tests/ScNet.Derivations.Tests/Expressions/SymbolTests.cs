using CsCheck;
using ScNet.Derivations.Expressions;

namespace ScNet.Derivations.Tests.Expressions;

[Trait("Kind", "Law")]
public sealed class SymbolTests
{
    [Theory]
    [InlineData("fly12", "C_fly12", @"C_{\mathrm{fly12}}")]
    [InlineData("a_b", "C_a_b", @"C_{\text{a\_b}}")]
    [InlineData("größe", "C_größe", @"C_{\text{größe}}")]
    [InlineData("fly 1", "C_'fly 1'", @"C_{\text{fly 1}}")]
    [InlineData("it's", "C_'it''s'", @"C_{\text{it's}}")]
    [InlineData(@"a\b", @"C_'a\\b'", @"C_{\text{a\textbackslash{}b}}")]
    [InlineData("a\nb", @"C_'a\u000Ab'", @"C_{\text{a\textbackslash{}u000Ab}}")]
    [InlineData("50%#&${}~^", "C_'50%#&${}~^'", @"C_{\text{50\%\#\&\$\{\}\textasciitilde{}\textasciicircum{}}}")]
    [InlineData("[x]--`", "C_'[x]--`'", @"C_{\text{{[}x{]}-{-}{`}}}")]
    public void Names_are_quoted_in_text_and_escaped_in_latex(string name, string text, string latex)
    {
        Assert.Equal(text, Symbol.Capacitance(name).Name);
        Assert.Equal(latex, Symbol.Capacitance(name).ToLatex());
    }

    [Fact]
    public void A_half_of_a_surrogate_pair_is_written_as_its_code()
    {
        Assert.Equal(@"C_'\uD83D'", Symbol.Capacitance("\uD83D").Name);
        Assert.Equal("C_'\U0001F50B'", Symbol.Capacitance("\U0001F50B").Name);
    }

    [Fact]
    public void Different_symbols_have_different_names() =>
        Gen.Select(Gen.String["a'\\ u0_\n"], Gen.String["a'\\ u0_\n"], Gen.Int[0, 2], Gen.Int[0, 2]).Holds((a, b, i, j) =>
        {
            if (a.Length > 0 && b.Length > 0)
            {
                Symbol left = Make(a, i), right = Make(b, j);
                Assert.Equal(left.Equals(right), left.Name == right.Name);
            }
        });

    [Fact]
    public void The_symbols_of_equal_components_and_of_ports_stand_alone()
    {
        Assert.Equal(
            ["C", "R", "ESR", "f", "V_in", "I_out"],
            new[] { Symbol.EqualCapacitance, Symbol.EqualOnResistance, Symbol.EqualSeriesResistance, Symbol.Frequency, Symbol.InputVoltage, Symbol.LoadCurrent }
                .Select(s => s.ToString()));
        Assert.Equal(@"\mathrm{ESR}_{\mathrm{fly}}", Symbol.SeriesResistance("fly").ToLatex());
    }

    [Fact]
    public void A_capacitor_named_out_is_not_the_output() =>
        Assert.NotEqual(new Symbol(SymbolKind.ElementVoltage, "out").Name, new Symbol(SymbolKind.OutputVoltage).Name);

    [Fact]
    public void Every_kind_has_a_notation_of_its_own()
    {
        SymbolKind[] ofElements = [SymbolKind.ElementVoltage, SymbolKind.NodePotential, SymbolKind.ElementCharge, SymbolKind.LoopCharge, SymbolKind.OnResistance, SymbolKind.SeriesResistance, SymbolKind.Capacitance, SymbolKind.InductorCurrent];
        string[] names = [.. Enum.GetValues<SymbolKind>().Select(kind => new Symbol(kind, ofElements.Contains(kind) ? "x" : string.Empty).Name)];
        Assert.Equal(names, names.Distinct());
        Assert.Throws<ArgumentOutOfRangeException>(() => new Symbol((SymbolKind)99).Name);
    }

    [Fact]
    public void An_empty_name_is_refused() => Assert.Throws<ArgumentException>(() => Symbol.OnResistance(string.Empty));

    private static Symbol Make(string name, int kind) => kind switch
    {
        0 => Symbol.Capacitance(name),
        1 => Symbol.OnResistance(name),
        _ => Symbol.SeriesResistance(name),
    };
}
