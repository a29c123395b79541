using ScNet.Results;

namespace ScNet.Derivations.Pages;

/// <summary>Checks, differences and formulas as documents for other programs, with the keys of <see cref="ResultTable"/>.</summary>
public static class DerivationTables
{
    private static readonly Figure<CheckRow>[] s_checks =
    [
        new("file", r => r.File),
        new("converter", r => r.Report?.Title),
        new("status", r => r.Report is null or { HasResult: false } ? "error" : "ok"),
        new("diagnostics", r => r.Report?.Diagnostics ?? r.Diagnostics, HasColumn: false),
        new("statement", r => r.Finding?.Statement.Description ?? r.Form?.Statement.Description),
        new("verdict", r => (r.Finding?.Verdict ?? r.Form?.Verdict)?.ToString().ToLowerInvariant()),
        new("stated", r => r.Finding is { } finding ? finding.Statement.Value.ToString() : r.Form?.Statement.Expression.ToString()),
        new("derived", r => r.Finding is { } finding ? finding.Derived.IsDetermined ? finding.Derived.ToString() : null : r.Form?.Derived?.Expression?.ToString()),
        new("breaks", r => r.IsRight ? null : r.Finding?.BrokenEquation),
        new("ifOthersAreRight", r => !r.IsRight && r.Finding?.IfOthersAreRight is { IsDetermined: true } implied ? implied.ToString() : null),
        new("conflictsWith", r => r.IsRight ? null : r.Finding?.Conflict?.Statements.Where(s => s != r.Finding.Statement).Select(s => s.ToString()), HasColumn: false),
        new("differences", r => r.Form?.Differences, HasColumn: false),
        new("slips", r => (r.Finding?.Slips ?? r.Form?.Slips)?.Select(s => s.Description), HasColumn: false),
    ];

    /// <summary>A row per statement with what the check says of it.</summary>
    /// <param name="reports">The file as the caller named it, what came of checking it, or null and why it could not be read.</param>
    public static ResultTable OfChecks(IEnumerable<(string File, DerivationReport? Report, IReadOnlyList<Diagnostic> Diagnostics)> reports)
    {
        ArgumentNullException.ThrowIfNull(reports);
        return ResultTable.OfAny([], s_checks, reports.SelectMany(r => r.Report is not { } report || report.Findings.Count + report.Forms.Count == 0
            ? new[] { new CheckRow(r.File, r.Report, r.Diagnostics, null, null) }
            : [
                .. report.Findings.Select(f => new CheckRow(r.File, report, r.Diagnostics, f, null)),
                .. report.Forms.Select(f => new CheckRow(r.File, report, r.Diagnostics, null, f)),
            ]));
    }

    /// <summary>A row per change between two analyses.</summary>
    /// <param name="before">What the earlier analysis is of, as the caller named it.</param>
    /// <param name="after">What the later analysis is of, as the caller named it.</param>
    /// <param name="difference">The difference.</param>
    public static ResultTable OfDifference(string before, string after, AnalysisDifference difference)
    {
        ArgumentNullException.ThrowIfNull(difference);
        return ResultTable.OfAny<SnapshotChange>(
            [new("before", before), new("after", after), new("relativeTolerance", difference.RelativeTolerance), new("isEmpty", difference.IsEmpty)],
            [
                new("mode", c => c.Mode),
                new("element", c => c.Element),
                new("what", c => c.Description),
                new("kind", c => c.Before is null ? "new" : c.After is null ? "gone" : "changed"),
                new("before", c => c.Before),
                new("after", c => c.After),
                new("amount", c => c.Amount),
                new("percent", c => c.Percent),
            ],
            difference.Changes);
    }

    /// <summary>A row per formula.</summary>
    /// <param name="rows">The rows: a mode with its formulas each.</param>
    public static ResultTable OfFormulas(IEnumerable<ResultRow<FormulaList>> rows)
    {
        rows = Guard.Copy(rows, nameof(rows));
        return ResultTable.OfAny<(ResultRow<FormulaList> Row, Formula? Formula)>(
            [],
            [
                new("file", r => r.Row.File),
                new("converter", r => r.Row.Outcome?.Converter.Name),
                new("mode", r => r.Row.Outcome?.Mode.Name),
                new("status", r => r.Row.Result is null ? "error" : "ok"),
                new("diagnostics", r => r.Row.Diagnostics, HasColumn: false),
                new("kind", r => r.Formula is null ? null : r.Row.Result!.Formulas.Contains(r.Formula) ? "closed-form" : "function-of-duties"),
                new("quantity", r => r.Formula?.Symbol),
                new("text", r => r.Formula?.Text),
                new("reason", r => r.Formula is { Reason.Length: > 0 } none ? none.Reason : null),
                new("latex", r => r.Formula is { Text: not null } known ? known.Latex : null),
                new("mathml", r => r.Formula is { Text: not null } known ? known.MathML : null),
            ],
            rows.SelectMany(r => r.Result is { } list ? list.Formulas.Concat(list.OfDuties).Select(f => (r, (Formula?)f)) : [(r, null)]));
    }

    private sealed record CheckRow(string File, DerivationReport? Report, IReadOnlyList<Diagnostic> Diagnostics, Finding? Finding, FormFinding? Form)
    {
        public bool IsRight => Finding?.Verdict == Verdict.Right;
    }
}

/// <summary>The formulas of a mode.</summary>
/// <param name="Formulas">The closed forms in the names of the elements.</param>
/// <param name="OfDuties">Functions of the duties; empty where they are not asked for.</param>
public sealed record FormulaList(IReadOnlyList<Formula> Formulas, IReadOnlyList<Formula> OfDuties)
{
    /// <summary>The closed forms in the names of the elements; a list of its own, which nobody changes.</summary>
    public IReadOnlyList<Formula> Formulas { get; init => field = Guard.Copy(value, nameof(Formulas)); } = Guard.Copy(Formulas, nameof(Formulas));

    /// <summary>Functions of the duties; empty where they are not asked for; a list of its own, which nobody changes.</summary>
    public IReadOnlyList<Formula> OfDuties { get; init => field = Guard.Copy(value, nameof(OfDuties)); } = Guard.Copy(OfDuties, nameof(OfDuties));
}
