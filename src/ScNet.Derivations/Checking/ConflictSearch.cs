using System.Numerics;
using ScNet.Kernel;

namespace ScNet.Derivations.Checking;

/// <summary>
/// Contradictions among statements and laws of which no member can be left out, and values that statements
/// and laws imply; by exact elimination.
/// </summary>
/// <remarks>
/// Method and proof: docs/theory/derivation-checks.md. Cost of a contradiction: a few near-linear eliminations of the
/// equations near the statement, of a value one; neither looks further than <see cref="Workbench.MaximumTermsOfExplanation"/>.
/// </remarks>
internal sealed class ConflictSearch(Workbench bench)
{
    private const int FirstReach = 2;
    private const int MaximumCandidates = 16;

    /// <summary>A smallest contradiction in which a statement takes part, or null. The others may contradict each other too.</summary>
    /// <param name="subject">The statement.</param>
    /// <param name="mayTakePart">Which other statements may take part.</param>
    public Conflict? Find(Statement subject, Func<Statement, bool> mayTakePart)
    {
        int start = bench.Unknowns.Of(subject.Subject);
        if (start < 0 || !subject.Value.Value.IsExact)
        {
            return null;
        }

        // near equations first: they make the shortest explanations, and most contradictions are near
        Neighbourhood near = new(bench, start, bench.MaximumTermsOfExplanation);
        HashSet<Statement> leftOut = new([subject], ReferenceEqualityComparer.Instance);
        for (int reach = FirstReach; ; reach *= 2)
        {
            bool hasMore = near.Grow(reach);
            while (true)
            {
                LinearRow[] rows =
                [
                    Row(subject),
                    .. bench.About(near.Unknowns).Where(s => mayTakePart(s) && IsUsable(s) && !leftOut.Contains(s)).Select(Row),
                    .. near.Equations.Select(LinearRow.Of),
                ];
                LinearRow[]? members = OnMachineIntegersFirst(() => Contradiction<long>(rows), () => Contradiction<BigInteger>(rows));
                if (members is null)
                {
                    break;
                }

                if (ReferenceEquals(members[0].Statement, subject))
                {
                    Equation[] laws = [.. members.Select(m => m.Equation).OfType<Equation>()];
                    return new Conflict(
                        members.Select(m => m.Statement).OfType<Statement>(), laws.Select(new EquationText(bench.Equations).Name), laws);
                }

                // a contradiction of the others alone: it is not this statement's
                Statement last = members.Last(m => m.Statement is not null).Statement!;
                leftOut.Add(last);
            }

            if (!hasMore)
            {
                return null;
            }
        }
    }

    /// <summary>The value of an unknown that the laws and some statements imply; undetermined where they leave it open or contradict each other.</summary>
    public Quantity Solve(int unknown, Func<Statement, bool> mayTakePart)
    {
        Neighbourhood near = new(bench, unknown, bench.MaximumTermsOfExplanation);
        near.Grow(int.MaxValue);
        LinearRow[] rows =
        [
            .. bench.About(near.Unknowns).Where(s => mayTakePart(s) && IsUsable(s)).Select(Row),
            .. near.Equations.Select(LinearRow.Of),
        ];
        return OnMachineIntegersFirst(() => Solve<long>(rows, unknown), () => Solve<BigInteger>(rows, unknown));
    }

    private static Quantity Solve<T>(LinearRow[] rows, int unknown)
        where T : struct, IBinaryInteger<T>
    {
        (SparseRows<T> matrix, int columns) = Matrix<T>(rows, unknown);
        Elimination<T> elimination = Elimination<T>.Run(matrix, columns - 1, 1);
        if (!elimination.IsPivotColumn(columns - 1)
            || Enumerable.Range(0, matrix.Count).Any(r => !elimination.IsPivotRow(r) && matrix.Length(r) > 0))
        {
            return Quantity.Undetermined;
        }

        // pivoted last, the unknown stands alone in its row
        int row = elimination.Pivots[^1].Row;
        int constant = matrix.Find(row, columns);
        return constant < 0
            ? Quantity.Zero
            : Rational<T>.Of(matrix.Values(row)[constant], matrix.Values(row)[matrix.Find(row, columns - 1)]).ToQuantity();
    }

    // A row that elimination turns into 0 = constant is a combination of itself and pivot rows. Those are
    // independent, so there is one such combination and every member of it is needed.
    private static LinearRow[]? Contradiction<T>(LinearRow[] rows)
        where T : struct, IBinaryInteger<T>
    {
        (SparseRows<T> matrix, int columns) = Matrix<T>(rows, Unknowns.None);
        Elimination<T> elimination = Elimination<T>.Run(matrix, columns, 0);
        return Enumerable.Range(0, rows.Length).Where(r => !elimination.IsPivotRow(r) && matrix.Length(r) > 0).Take(MaximumCandidates)
            .Select(Members)
            .OrderByDescending(members => members[0] == rows[0])
            .ThenBy(members => members.Count(m => m.Equation is not null)).ThenBy(members => members.Length)
            .FirstOrDefault();

        LinearRow[] Members(int row)
        {
            var weights = new Rational<T>[rows.Length];
            weights[row] = Rational<T>.One;
            elimination.CarryBack(weights);
            return [.. rows.Where((_, k) => !weights[k].IsZero)];
        }
    }

    // One column per unknown that occurs, the wanted one last, and the constants carried behind.
    private static (SparseRows<T> Matrix, int Columns) Matrix<T>(LinearRow[] rows, int last)
        where T : struct, IBinaryInteger<T>
    {
        Dictionary<int, int> column = [];
        foreach ((int unknown, _) in rows.SelectMany(r => r.Terms))
        {
            if (unknown != last)
            {
                column.TryAdd(unknown, column.Count);
            }
        }

        if (last != Unknowns.None)
        {
            column.Add(last, column.Count);
        }

        SparseRows<T> matrix = new(rows.Length, rows.Sum(r => r.Terms.Length + 1));
        foreach (LinearRow entry in rows)
        {
            int row = matrix.AddRow();
            foreach ((int unknown, BigInteger coefficient) in entry.Terms)
            {
                matrix.Append(row, column[unknown], T.CreateChecked(coefficient));
            }

            if (!entry.Constant.IsZero)
            {
                matrix.Append(row, column.Count, T.CreateChecked(entry.Constant));
            }
        }

        return (matrix, column.Count);
    }

    private static TResult OnMachineIntegersFirst<TResult>(Func<TResult> machine, Func<TResult> big)
    {
        try
        {
            return machine();
        }
        catch (OverflowException)
        {
            return big();
        }
    }

    // A number is no fraction: it cannot stand in an exact equation.
    private bool IsUsable(Statement statement) => bench.Unknowns.Of(statement.Subject) >= 0
        && statement.Value.Value.IsExact && bench.Truth.Of(statement.Subject).Kind != QuantityKind.Numeric;

    private LinearRow Row(Statement statement) => LinearRow.Of(statement, bench.Unknowns.Of(statement.Subject));
}
