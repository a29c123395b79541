using ScNet.Design.Losses;
using ScNet.Reporting.Html;

namespace ScNet.Reporting.Tests.Html;

public sealed class OriginsTests
{
    private static readonly Origin[] s_all =
    [
        .. Origins.OfTopology(hasInductors: true), .. Origins.OfImpedance(), .. Origins.OfStress(), .. Origins.OfOperation(),
        .. Origins.OfLosses(), .. Origins.OfComparison(hasSilicon: true), .. Origins.OfDesign(),
    ];

    [Fact]
    public void Every_section_of_the_theory_that_is_named_is_there()
    {
        Assert.NotEmpty(s_all);
        Assert.All(s_all, o => Assert.Contains("## " + o.Section, File.ReadAllLines(RepositoryFiles.PathOf($"docs/theory/{o.Theory}.md"))));
    }

    [Fact]
    public void Every_figure_has_a_formula_and_a_source() =>
        Assert.All(s_all, o => Assert.All(new[] { o.Figure, o.Formula, o.Source }, text => Assert.False(string.IsNullOrWhiteSpace(text))));

    [Fact]
    public void Every_kind_of_loss_is_named() => Assert.Equal(Enum.GetValues<LossKind>().Length, Origins.OfLosses().Count);

    [Theory]
    [InlineData("R_out(f)", "R<sub>out</sub>(f)")]
    [InlineData("(a_i^{j})²/(2·C_i·f)", "(a<sub>i</sub><sup>j</sup>)&#178;/(2&#183;C<sub>i</sub>&#183;f)")]
    [InlineData("x^{1/2.54}_", "x<sup>1/2.54</sup>_")]
    [InlineData("a < b_<", "a &lt; b_&lt;")]
    [InlineData("e^{A·T", "e<sup>A&#183;T</sup>")]
    public void Indices_and_powers_are_lowered_and_raised(string formula, string html) => Assert.Equal(html, FormulaHtml.Of(formula));
}
