namespace ScNet.Derivations;

/// <summary>The text of a report: first the verdict, then what is wrong and why.</summary>
internal static class ReportText
{
    private const int MaximumFindings = 8;
    private const int MaximumSlips = 6;
    private const int MaximumStatements = 8;

    public static string Of(DerivationReport report)
    {
        List<string> lines = [$"{report.Title}: {Headline(report)}"];
        if (!report.HasResult)
        {
            return string.Join('\n', [.. lines, .. report.Diagnostics.Select(d => $"  {d}")]);
        }

        Slip[] wide = [.. report.Slips.Where(s => s.Explains.Count > 1)];
        lines.AddRange(wide.Take(MaximumSlips).Select(s => $"  slip: {s.Description} (explains {s.Explains.Count} of {report.Wrong.Count()})"));
        AddMore(lines, wide.Length, MaximumSlips, "slip");
        Finding[] all = [.. report.Wrong, .. report.Undetermined];
        Finding[] shown = all[..Math.Min(all.Length, MaximumFindings)];
        int width = shown.Select(f => f.Statement.Description.Length).DefaultIfEmpty().Max();
        int valueWidth = shown.Select(f => f.Statement.Value.ToString().Length).DefaultIfEmpty().Max();
        foreach (Finding finding in shown)
        {
            Statement statement = finding.Statement;
            string derived = finding.Verdict == Verdict.Undetermined ? "not determined by the circuit"
                : finding.Derived.IsDetermined ? $"derived {finding.Derived}" : "derived ? (nothing fixes it)";
            lines.Add($"  {statement.Description.PadRight(width)}  stated {statement.Value.ToString().PadRight(valueWidth)}  {derived}");
            lines.AddRange(Reasons(finding).Select(r => $"    {r.Word,-9} {r.Text}"));
        }

        AddMore(lines, all.Length, MaximumFindings, "statement");
        lines.AddRange(report.Forms.Where(f => f.Verdict != Verdict.Right).SelectMany(FormText.Of));
        return string.Join('\n', lines);
    }

    /// <summary>"right, 2 statements."</summary>
    public static string Headline(DerivationReport report)
    {
        int all = report.Findings.Count + report.Forms.Count;
        int wrong = report.Wrong.Count() + report.Forms.Count(f => f.Verdict == Verdict.Wrong);
        int open = report.Undetermined.Count() + report.Forms.Count(f => f.Verdict == Verdict.Undetermined);
        string statements = all == 1 ? "statement" : "statements";
        return !report.HasResult ? "the mode has no result, so nothing can be compared."
            : all == 0 ? "nothing is stated."
            : report.IsRight ? $"right, {all} {statements}."
            : wrong == 0 ? $"{open} of {all} {statements} not determined."
            : open == 0 ? $"wrong, {wrong} of {all} {statements}."
            : $"wrong, {wrong} of {all} {statements}; {open} not determined.";
    }

    /// <summary>Why a statement is not right, a word and a text each.</summary>
    public static IEnumerable<(string Word, string Text)> Reasons(Finding finding)
    {
        if (finding.BrokenEquation is { } equation)
        {
            yield return ("breaks", equation);
        }

        // a statement that contradicts the circuit by itself is told by the equation
        if (finding.Conflict is { } conflict && (conflict.Statements.Count > 1 || finding.BrokenEquation is null))
        {
            Statement[] others = [.. conflict.Statements.Where(s => s != finding.Statement)];
            string more = others.Length > MaximumStatements ? $"; and {others.Length - MaximumStatements} more" : string.Empty;
            yield return ("conflicts", others.Length == 0
                ? $"with the circuit: {string.Join("; ", conflict.Equations)}"
                : $"with {string.Join("; ", others.Take(MaximumStatements))}{more}");
        }

        if (finding.IfOthersAreRight is { IsDetermined: true } implied && implied != finding.Derived)
        {
            yield return implied == finding.Statement.Value.Value
                ? ("agrees", "with the other statements")
                : ("would be", $"{implied} if the others are right");
        }

        if (finding.Slips is [{ Explains.Count: 1 }, ..] slips)
        {
            yield return ("slip", string.Join(", or ", slips.Select(s => s.Description)));
        }
    }

    private static void AddMore(List<string> lines, int count, int shown, string what)
    {
        if (count > shown)
        {
            lines.Add($"  and {count - shown} more {what}{(count - shown == 1 ? string.Empty : "s")}");
        }
    }
}
