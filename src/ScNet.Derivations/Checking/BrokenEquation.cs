
namespace ScNet.Derivations.Checking;

/// <summary>The one equation that shows best why a statement is wrong.</summary>
/// <param name="Equation">The equation.</param>
/// <param name="IsAllStated">Whether it is short and every value in it is stated.</param>
/// <param name="UsesTruth">Whether the other values are those of the analysis, since the stated ones cancel.</param>
internal sealed record BrokenEquation(Equation Equation, bool IsAllStated, bool UsesTruth)
{
    /// <summary>
    /// Of all equations that mention the unknown, hold for the circuit and break on the statement: the one with the fewest values
    /// that are not stated, then with the fewest other wrong ones, then the shortest.
    /// </summary>
    public static BrokenEquation? Find(Workbench bench, Statement statement)
    {
        int unknown = bench.Unknowns.Of(statement.Subject);
        if (unknown < 0 || !statement.Value.Value.IsDetermined)
        {
            return null;
        }

        BrokenEquation? best = null;
        (int, int, int) bestScore = (int.MaxValue, 0, 0);
        foreach (bool usesTruth in new[] { false, true })
        {
            foreach (Equation equation in bench.Equations.With(unknown))
            {
                (int Obscure, int Wrong, int Length) score = Score(bench, equation, unknown, usesTruth);
                if (score.CompareTo(bestScore) < 0
                    && bench.Holds(equation)
                    && bench.IsBroken(equation, u => ValueOf(bench, statement, unknown, u, usesTruth)))
                {
                    (best, bestScore) = (new BrokenEquation(equation, score.Obscure == 0, usesTruth), score);
                }
            }

            if (best is not null)
            {
                break;
            }
        }

        return best;
    }

    /// <summary>The value with which the statement's unknown would satisfy the equation.</summary>
    public Quantity Solve(Workbench bench, Statement statement)
    {
        int unknown = bench.Unknowns.Of(statement.Subject);
        Quantity rest = Workbench.Residual(Equation, u => ValueOf(bench, statement, unknown, u, UsesTruth), unknown);
        return QuantityArithmetic.Divide(-rest, Equation.Terms.First(t => t.Unknown == unknown).Coefficient);
    }

    /// <summary>The value of an unknown in this equation, and whether it is stated.</summary>
    public (Quantity Value, bool IsStated) Value(Workbench bench, Statement statement, int unknown)
    {
        int own = bench.Unknowns.Of(statement.Subject);
        return (ValueOf(bench, statement, own, unknown, UsesTruth), unknown == own || (!UsesTruth && bench.StatedOf(unknown) is not null));
    }

    private static Quantity ValueOf(Workbench bench, Statement statement, int own, int unknown, bool usesTruth) =>
        unknown == own ? statement.Value.Value
        : !usesTruth && bench.StatedOf(unknown) is { } other ? other.Value.Value
        : bench.TruthOf(unknown);

    private static (int Unstated, int Wrong, int Length) Score(Workbench bench, Equation equation, int own, bool usesTruth)
    {
        int unstated = 0, wrong = 0;
        foreach ((int unknown, _) in equation.Terms)
        {
            if (unknown == own)
            {
                continue;
            }

            if (!usesTruth && bench.StatedOf(unknown) is { } other)
            {
                wrong += bench.Judge(other) == Verdict.Wrong ? 1 : 0;
            }
            else
            {
                unstated++;
            }
        }

        // a long equation shows nothing, even where all of it is stated
        return (unstated + (equation.Terms.Length > EquationText.MaximumTerms ? 2 : 0), wrong, equation.Terms.Length);
    }
}
