using ScNet.Derivations.Working;
using ScNet.Results.Pages;

namespace ScNet.Derivations.Pages;

/// <summary>A worked solution, as a person reads it: explanations, tables, and equations in the rows of tables.</summary>
public static class WorkingPage
{
    /// <summary>The page of a solution.</summary>
    /// <param name="solution">The solution.</param>
    public static Page Of(WorkedSolution solution)
    {
        ArgumentNullException.ThrowIfNull(solution);
        return new Page(
            solution.Blocks.OfType<Heading>().First(h => h.Level == 1).Text.ToPlainText(),
            solution.Blocks.Where(b => b is not Heading { Level: 1 }).Select(Of),
            solution.HasResult);
    }

    private static PageBlock Of(Block block) => block switch
    {
        Heading heading => new PageHeading(heading.Text.ToPlainText(), heading.Level - 1),
        Paragraph paragraph => new PageRemarks([paragraph.Text.ToPlainText()]),
        Bullets bullets => new PageRemarks(bullets.Items.Select(i => i.ToPlainText())),
        Table table => new PageTable(
            string.Empty,
            table.Header.Select(h => new PageColumn(h, IsFigure: false)),
            table.Rows.Select(r => r.Select(l => (PageCell)l.ToPlainText()))),
        Equations equations => Of(equations.Rows),
        _ => throw new ArgumentOutOfRangeException(nameof(block), block, "Expected a block of a worked solution."),
    };

    private static PageTable Of(IReadOnlyList<EquationRow> rows)
    {
        (bool hasLabels, bool hasRemarks) = (rows.Any(r => r.Label.Length > 0), rows.Any(r => r.Remark.Spans.Count > 0));
        return new PageTable(
            string.Empty,
            [
                .. hasLabels ? [new PageColumn("of", IsFigure: false)] : Array.Empty<PageColumn>(),
                new PageColumn("equation", IsFigure: false),
                .. hasRemarks ? [new PageColumn("as", IsFigure: false)] : Array.Empty<PageColumn>(),
            ],
            rows.Select(r => (IEnumerable<PageCell>)
            [
                .. hasLabels ? [r.Label] : Array.Empty<PageCell>(),
                $"{r.Left} = {r.Right}",
                .. hasRemarks ? [r.Remark.ToPlainText()] : Array.Empty<PageCell>(),
            ]),
            nameColumns: hasLabels ? 1 : 0);
    }
}
