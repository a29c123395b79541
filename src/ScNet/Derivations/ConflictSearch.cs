using System.Numerics;
using Fractions;
using ScNet.Exact;

namespace ScNet.Derivations;

/// <summary>
/// Contradictions among statements and laws, reduced until none of their members can be left out, and
/// values that statements and laws imply; by exact elimination.
/// </summary>
/// <remarks>Method and proof: docs/theory/derivation-checks.md.</remarks>
internal sealed class ConflictSearch(Workbench bench)
{
    private const int FirstReach = 2;

    /// <summary>A smallest contradiction in which a statement takes part, or null. The others may contradict each other too.</summary>
    /// <param name="subject">The statement.</param>
    /// <param name="others">Statements that may take part.</param>
    public Conflict? Find(Statement subject, IReadOnlyCollection<Statement> others)
    {
        int start = bench.Unknowns.Of(subject.Subject);
        if (start < 0 || !subject.Value.Value.IsExact)
        {
            return null;
        }

        // near equations first: they make the shortest explanations, and most contradictions are near
        Neighbourhood near = new(bench, start);
        List<Statement> usable = [.. others.Where(s => s != subject && IsUsable(s))];
        for (int reach = FirstReach; ; reach *= 2)
        {
            bool isWhole = !near.Grow(reach);
            while (true)
            {
                List<Row> rows = [.. usable.Prepend(subject).Where(s => near.Contains(bench.Unknowns.Of(s.Subject))).Select(Row.Of(bench))];
                rows.AddRange(near.Equations.Select(e => new Row(null, e, Scaled(e.Terms, e.Constant))));
                List<Row>? members = Reduce(rows);
                if (members is null)
                {
                    break;
                }

                if (members.Exists(m => ReferenceEquals(m.Statement, subject)))
                {
                    EquationText text = new(bench.Equations);
                    return new Conflict(
                        members.Where(m => m.Statement is not null).Select(m => m.Statement!),
                        members.Where(m => m.Equation is not null).Select(m => text.Name(m.Equation!)));
                }

                // a contradiction of the others alone: it is not this statement's
                usable.Remove(members.FindLast(m => m.Statement is not null)!.Statement!);
            }

            if (isWhole)
            {
                return null;
            }
        }
    }

    /// <summary>The value of an unknown that the laws and some statements imply; undetermined where they leave it open or contradict each other.</summary>
    public Quantity Solve(int unknown, IEnumerable<Statement> statements)
    {
        List<Row> rows = [.. statements.Where(IsUsable).Select(Row.Of(bench))];
        rows.AddRange(bench.Equations.All.Where(bench.Holds).Select(e => new Row(null, e, Scaled(e.Terms, e.Constant))));
        (SparseRows<BigInteger> matrix, int columns) = Matrix(rows, unknown);
        Elimination<BigInteger> elimination = Elimination<BigInteger>.Run(matrix, columns - 1, 1);
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
            : Quantity.Exact(new Fraction(matrix.Values(row)[constant], matrix.Values(row)[matrix.Find(row, columns - 1)], true));
    }

    // A number is no fraction: it cannot stand in an exact equation.
    private bool IsUsable(Statement statement) => bench.Unknowns.Of(statement.Subject) >= 0
        && statement.Value.Value.IsExact && bench.Truth.Of(statement.Subject).Kind != QuantityKind.Numeric;

    private static List<Row>? Reduce(List<Row> rows)
    {
        (BigInteger[]? conflict, _) = Dependencies(rows);
        if (conflict is null)
        {
            return null;
        }

        // what takes part in one contradiction already contradicts itself
        List<Row> members = [.. rows.Where((_, k) => !conflict[k].IsZero)];
        while (true)
        {
            (conflict, BigInteger[]? other) = Dependencies(members);
            if (other is null)
            {
                return [.. members.Where((_, k) => !conflict![k].IsZero)];
            }

            // a member that follows from others is not needed; the last one, so that statements stay
            members.RemoveAt(Array.FindLastIndex(other, weight => !weight.IsZero));
        }
    }

    // The weights of a combination that contradicts itself, and those of one that vanishes, where there are such.
    private static (BigInteger[]? Conflict, BigInteger[]? Other) Dependencies(List<Row> rows)
    {
        (SparseRows<BigInteger> matrix, int columns) = Matrix(rows, Unknowns.None);
        Elimination<BigInteger> elimination = Elimination<BigInteger>.Run(matrix, columns, 0);
        int[] dependent = [.. Enumerable.Range(0, rows.Count).Where(r => !elimination.IsPivotRow(r)).OrderByDescending(matrix.Length)];
        if (dependent.Length == 0 || matrix.Length(dependent[0]) == 0)
        {
            return (null, null);
        }

        Rational<BigInteger>[] conflict = Combination(dependent[0]);
        if (dependent.Length == 1)
        {
            return (Weights(conflict), null);
        }

        Rational<BigInteger>[] other = Combination(dependent[1]);
        if (matrix.Length(dependent[1]) > 0)
        {
            // both contradict themselves: their difference, so weighted that the constants cancel, does not
            BigInteger own = matrix.Values(dependent[0])[0], others = matrix.Values(dependent[1])[0];
            other = [.. other.Select((weight, k) => (weight * own) - (conflict[k] * others))];
        }

        return (Weights(conflict), Weights(other));

        Rational<BigInteger>[] Combination(int row)
        {
            var weights = new Rational<BigInteger>[rows.Count];
            weights[row] = Rational<BigInteger>.One;
            elimination.CarryBack(weights);
            return weights;
        }

        static BigInteger[] Weights(Rational<BigInteger>[] weights) => [.. weights.Select(w => w.Numerator)];
    }

    // One column per unknown that occurs, the wanted one last, and the constants carried behind.
    private static (SparseRows<BigInteger> Matrix, int Columns) Matrix(List<Row> rows, int last)
    {
        Dictionary<int, int> column = [];
        foreach ((int unknown, _) in rows.SelectMany(r => r.Scaled.Terms))
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

        SparseRows<BigInteger> matrix = new(rows.Count + 1, rows.Sum(r => r.Scaled.Terms.Length + 1) + 4);
        foreach (Row entry in rows)
        {
            int row = matrix.AddRow();
            foreach ((int unknown, BigInteger coefficient) in entry.Scaled.Terms)
            {
                matrix.Append(row, column[unknown], coefficient);
            }

            if (!entry.Scaled.Constant.IsZero)
            {
                matrix.Append(row, column.Count, entry.Scaled.Constant);
            }
        }

        return (matrix, column.Count);
    }

    private static ((int Unknown, BigInteger Coefficient)[] Terms, BigInteger Constant) Scaled((int Unknown, Fraction Coefficient)[] terms, Fraction constant)
    {
        BigInteger common = terms.Select(t => t.Coefficient.Denominator).Append(constant.Denominator)
            .Aggregate(BigInteger.One, (a, b) => a * b / BigInteger.GreatestCommonDivisor(a, b));
        return ([.. terms.Select(t => (t.Unknown, t.Coefficient.Numerator * (common / t.Coefficient.Denominator)))],
            constant.Numerator * (common / constant.Denominator));
    }

    private sealed record Row(Statement? Statement, Equation? Equation, ((int Unknown, BigInteger Coefficient)[] Terms, BigInteger Constant) Scaled)
    {
        public static Func<Statement, Row> Of(Workbench bench) => statement => new Row(
            statement, null, ConflictSearch.Scaled([(bench.Unknowns.Of(statement.Subject), Fraction.One)], statement.Value.Value.ToFraction()));
    }
}
