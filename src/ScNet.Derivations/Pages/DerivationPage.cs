using ScNet.Results.Pages;

namespace ScNet.Derivations.Pages;

/// <summary>What is right and wrong in a derivation, as a person reads it.</summary>
public static class DerivationPage
{
    private const int MostFindings = 20;
    private const int MostDifferences = 8;

    /// <summary>The page of one derivation.</summary>
    /// <param name="report">What came of checking it.</param>
    public static Page Of(DerivationReport report) => Of(null, report);

    /// <summary>The page of one derivation.</summary>
    /// <param name="file">The file as the caller named it, or null where there is none.</param>
    /// <param name="report">What came of checking it.</param>
    public static Page Of(string? file, DerivationReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        string path = file is null ? string.Empty : $" ({file})";
        string title = $"{report.Title}{path}: {ReportText.Headline(report).TrimEnd('.')}";
        if (!report.HasResult)
        {
            return new Page(title, [new PageRemarks(report.Diagnostics.Select(d => d.ToString()), isCaution: true)]);
        }

        Slip[] wide = [.. report.Slips.Where(s => s.Explains.Count > 1)];
        Finding[] findings = [.. report.Wrong, .. report.Undetermined];
        FormFinding[] forms = [.. report.Forms.Where(f => f.Verdict != Verdict.Right)];
        return new Page(
            title,
            [
                .. wide.Length > 0
                    ? [new PageRemarks(wide.Select(s => FormattableString.Invariant($"Slip: {s.Description} (explains {s.Explains.Count} of {report.Wrong.Count()})")))]
                    : Array.Empty<PageBlock>(),
                .. findings.Take(MostFindings).SelectMany(Blocks),
                .. findings.Length > MostFindings ? [new PageRemarks([FormattableString.Invariant($"and {findings.Length - MostFindings} more that are not right")])] : Array.Empty<PageBlock>(),
                .. forms.SelectMany(Blocks),
            ]);
    }

    private static IEnumerable<PageBlock> Blocks(Finding finding) =>
    [
        new PageHeading(finding.Statement.Description, level: 2),
        new PageFigures(
        [
            new("stated", finding.Statement.Value.ToString()),
            new("derived", finding.Verdict == Verdict.Undetermined ? "not determined by the circuit" : finding.Derived.IsDetermined ? finding.Derived.ToString() : "? (nothing fixes it)"),
            .. ReportText.Reasons(finding).Select(r => new PageFigure(r.Word, r.Text)),
        ]),
    ];

    private static IEnumerable<PageBlock> Blocks(FormFinding finding) =>
    [
        new PageHeading(finding.Statement.Description, level: 2),
        new PageFigures(
        [
            new("stated", FormText.Short(finding.Statement.Expression)),
            .. finding.Derived is { IsExact: true } derived
                ? [new("derived", FormText.Short(derived.Expression)), .. finding.TermDifferences.Take(MostDifferences).Select(Difference)]
                : new PageFigure[] { new("no form", finding.Derived?.Reason ?? "the mode has no result") },
            .. finding.TermDifferences.Count > MostDifferences
                ? [new("and", FormattableString.Invariant($"{finding.TermDifferences.Count - MostDifferences} more terms that differ"))]
                : Array.Empty<PageFigure>(),
            .. finding.Slips.Count > 0 ? [new PageFigure("slip", string.Join(", or ", finding.Slips))] : Array.Empty<PageFigure>(),
        ]),
    ];

    private static PageFigure Difference(FormDifference difference) => difference.Stated is null ? new("missing", $"{difference.Derived}")
        : difference.Derived is null ? new("extra", $"{difference.Stated}")
        : new("differs", $"{difference}");
}
