using ScNet.Analysis;
using ScNet.Derivations.Documents;
using ScNet.Derivations.Expressions;
using ScNet.Derivations.Pages;
using ScNet.Derivations.Working;
using ScNet.Results.Pages;
using ScNet.Topologies;

namespace ScNet.Derivations.Tests.Pages;

/// <summary>What a notebook and a report show of derivations.</summary>
public sealed class ShownDerivationsTests
{
    private static readonly Converter s_third = SeriesParallel.StepDown(3);
    private static readonly ModeAnalysis s_analysis = ModeAnalysis.Of(s_third);

    private static DerivationReport Wrong => Derivation.Of(s_third)
        .Ratio("1/3").Capacitor("fly1", "1/3", "-1/6").CapacitorVoltage("fly2", "1/2").SlowSwitchingLimit("2/(9*C*f)").FastSwitchingLimit("2*R").Check();

    private static AnalysisDifference Changed => AnalysisDifference.Between(AnalysisSnapshot.Of(s_third), AnalysisSnapshot.Of(SeriesParallel.StepDown(4)));

    [Fact]
    public void Every_type_of_result_and_every_list_of_it_shows_as_a_page()
    {
        object[] roots =
        [
            Derivation.Of(s_third).Ratio("1/3").SlowSwitchingLimit("2/(9*C*f)"), Wrong, Changed, AnalysisSnapshot.Of(s_third), ClosedForms.Of(s_analysis),
            DutyForms.Of(s_analysis), Formula.Of(s_analysis), new FormulaList(Formula.Of(s_analysis), []), WorkedSolution.Of(s_third, s_third.Modes[0]),
            DerivationReader.Read("[derivation]\nratio = \"1/3\"\n", s_third),
        ];
        IReadOnlyDictionary<Type, List<object>> found = ShownTypes.Reached(roots, typeof(Derivation).Assembly);
        Assert.Empty(ShownTypes.ThatShouldShow(typeof(Derivation).Assembly).Except(found.Keys));
        string faults = string.Join('\n', found.Where(f => ShownTypes.ThatShouldShow(f.Key.Assembly).Contains(f.Key)).SelectMany(f => ShownTypes.Faults(f.Key, f.Value[0])));
        Assert.True(faults.Length == 0, faults);
    }

    [Fact]
    public void A_check_shows_what_is_stated_derived_and_broken()
    {
        string html = ResultPage.ToHtml(Wrong);
        Assert.DoesNotContain("<pre>", html, StringComparison.Ordinal);
        Assert.Contains("charge of fly1 in phase 2", html, StringComparison.Ordinal);
        Assert.Contains("<td>-1/6</td>", html, StringComparison.Ordinal);
        Assert.Equal(DerivationPage.Of(null, Wrong).ToText(), ResultPage.Of(Wrong)!.ToText());
    }

    [Fact]
    public void A_difference_is_a_table_of_changes()
    {
        Page page = ResultPage.Of(Changed)!;
        PageTable table = Assert.IsType<PageTable>(Assert.Single(page.Blocks));
        Assert.Equal(Changed.Changes.Count, table.Rows.Count);
        Assert.Equal(["mode", "what", "before", "after", "change", "%"], table.Columns.Select(c => c.Heading));
    }

    [Fact]
    public void Closed_forms_stand_beside_their_symbols()
    {
        PageFigures figures = ResultPage.Of(ClosedForms.Of(s_analysis))!.Blocks.OfType<PageFigures>().Single();
        Assert.Equal("1/3", figures.Figures.Single(f => f.Name == "M").Value);
        ClosedForm[] two = [ClosedForms.Of(s_analysis).Ratio, ClosedForms.Of(s_analysis).FastSwitchingLimit];
        Assert.Equal(["M", "R_FSL"], ResultPage.Of(two)!.Blocks.OfType<PageFigures>().Single().Figures.Select(f => f.Name));
        DutyForm[] duties = [DutyForms.Of(s_analysis).Ratio];
        Assert.Equal("M", Assert.Single(ResultPage.Of(duties)!.Blocks.OfType<PageFigures>().Single().Figures).Name);
    }

    /// <summary>Every table, equation and paragraph of the text is on the page, in its order.</summary>
    [Fact]
    public void A_worked_solution_has_its_chapters_and_its_equations_in_tables()
    {
        WorkedSolution solution = WorkedSolution.Of(s_third, s_third.Modes[0]);
        Page page = ResultPage.Of(solution)!;
        Assert.Equal(solution.Blocks.Count, page.Blocks.Count + 1);
        Assert.Equal(solution.Blocks.OfType<Heading>().Skip(1).Select(h => h.Text.ToPlainText()), page.Blocks.OfType<PageHeading>().Select(h => h.Text));
        string[] cells = [.. page.Blocks.OfType<PageTable>().SelectMany(t => t.Rows).SelectMany(r => r).Select(c => c.Text)];
        Assert.All(solution.Blocks.OfType<Equations>().SelectMany(e => e.Rows), row => Assert.Contains($"{row.Left} = {row.Right}", cells));
        Assert.DoesNotContain("<pre>", page.ToHtml(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_snapshot_shows_every_value()
    {
        AnalysisSnapshot snapshot = AnalysisSnapshot.Of(s_third);
        Assert.Equal(snapshot.Modes.Sum(m => m.Entries.Count), ResultPage.Of(snapshot)!.Blocks.OfType<PageTable>().Sum(t => t.Rows.Count));
    }
}
