namespace ScNet.Derivations.Checking;

/// <summary>Judges every statement, and prepares what is worked out about those that are not right when it is asked for.</summary>
internal static class DerivationCheck
{
    public static DerivationReport Run(IReadOnlyList<Statement> statements, IReadOnlyList<FormStatement> forms, double tolerance, DerivationScope scope)
    {
        if (!scope.Outcome.HasResult)
        {
            return new DerivationReport(
                scope.Title,
                [.. statements.Select(s => new Finding(s, Verdict.Undetermined, Quantity.Undetermined, [], null))],
                [.. forms.Select(f => new FormFinding(f, Verdict.Undetermined, null, [], []))],
                [],
                scope.Outcome.Diagnostics);
        }

        Workbench bench = new(statements, tolerance, scope);
        Statement[] wrong = [.. statements.Where(s => bench.Judge(s) == Verdict.Wrong)];
        IReadOnlyList<Slip> slips = wrong.Length == 0 ? [] : SlipSearch.Of(bench, wrong);
        ILookup<Statement, Slip> slipsOf = slips.SelectMany(slip => slip.Explains.Select(s => (s, slip))).ToLookup(p => p.s, p => p.slip);
        return new DerivationReport(
            scope.Title,
            [.. statements.Select(s => Find(bench, s, [.. slipsOf[s]]))],
            FindForms(forms, bench),
            slips,
            []);
    }

    private static FormFinding[] FindForms(IReadOnlyList<FormStatement> forms, Workbench bench)
    {
        if (forms.Count == 0)
        {
            return [];
        }

        FormCheck check = new(bench.Scope, bench);
        return [.. forms.Select(check.Find)];
    }

    private static Finding Find(Workbench bench, Statement statement, Slip[] slips)
    {
        Verdict verdict = bench.Judge(statement);
        return new Finding(
            statement,
            verdict,
            bench.Truth.Of(statement.Subject),
            slips,
            verdict == Verdict.Right ? null : () => Explain(bench, statement));
    }

    private static Explanation Explain(Workbench bench, Statement statement)
    {
        Quantity derived = bench.Truth.Of(statement.Subject);
        if (bench.Unknowns.Of(statement.Subject) < 0)
        {
            return LimitCheck.Explain(bench, statement);
        }

        BrokenEquation? broken = BrokenEquation.Find(bench, statement);
        string? text = broken is null ? null : new EquationText(bench.Equations)
            .Broken(broken.Equation, u => broken.Value(bench, statement, u));
        if (broken is { IsAllStated: true })
        {
            return new Explanation(text, broken.Solve(bench, statement), Local(bench, statement, broken.Equation));
        }

        ConflictSearch search = new(bench);
        Quantity implied = derived.IsExact ? derived
            : search.Solve(bench.Unknowns.Of(statement.Subject), s => IsOther(s) && s.Subject != statement.Subject);
        return new Explanation(text, implied, search.Find(statement, IsOther));

        // the statements that the circuit bears out, and those about which it says nothing
        bool IsOther(Statement s) => s != statement && s.Value.Value.IsDetermined && bench.Judge(s) != Verdict.Wrong;
    }

    // An equation all of whose values are stated is a contradiction as it stands, and loses it with any one of them.
    private static Conflict Local(Workbench bench, Statement statement, Equation equation)
    {
        int own = bench.Unknowns.Of(statement.Subject);
        return new Conflict(
            equation.Terms.Select(t => t.Unknown == own ? statement : bench.StatedOf(t.Unknown)!),
            [new EquationText(bench.Equations).Name(equation)],
            [equation]);
    }
}
