using Fractions;

namespace ScNet.Derivations.Checking;

/// <summary>What a check knows: statements by unknown, the analysis, and the equations once someone needs them.</summary>
internal sealed class Workbench
{
    private const double RoundingError = 1e-12;
    private const int SharedTerms = 400_000;
    private const int MinimumTermsOfExplanation = 400;

    private readonly Dictionary<int, Statement> _stated = [];
    private readonly ILookup<int, (int Place, Statement Statement)> _about;
    private readonly Lazy<EquationSet> _equations;
    private readonly Lazy<int> _maximumTerms;
    private readonly double _tolerance;

    public Workbench(IReadOnlyList<Statement> statements, double tolerance, DerivationScope scope)
    {
        Scope = scope;
        Statements = statements;
        Truth = new Truth(scope.Analysis);
        Unknowns = new Unknowns(scope.Converter);
        _tolerance = tolerance;
        foreach (Statement statement in Statements)
        {
            if (Unknowns.Of(statement.Subject) is var unknown and >= 0 && statement.Value.Value.IsDetermined)
            {
                _stated.TryAdd(unknown, statement);
            }
        }

        _about = Statements.Select((statement, place) => (place, statement)).ToLookup(s => Unknowns.Of(s.statement.Subject));
        _maximumTerms = new(() => Math.Max(MinimumTermsOfExplanation, SharedTerms / Math.Max(1, Statements.Count(s => Judge(s) != Verdict.Right))));
        _equations = new(() => EquationSet.Of(
            scope.Analysis,
            Statements.Where(s => s.Kind == StatementKind.BlockingVoltage).Select(s => (s.Subject.Element, s.Subject.Phase))));
    }

    /// <summary>
    /// How many terms of equations the explanation of one finding may take in. All findings together share
    /// a number of them, so that many explanations cost no more than in proportion to their number: one wrong
    /// value among a thousand is explained from afar, a thousand of them are explained from near by.
    /// </summary>
    public int MaximumTermsOfExplanation => _maximumTerms.Value;

    public DerivationScope Scope { get; }

    public IReadOnlyList<Statement> Statements { get; }

    public Truth Truth { get; }

    public Unknowns Unknowns { get; }

    public EquationSet Equations => _equations.Value;

    /// <summary>The statement about an unknown, the first one where there are several; null where there is none.</summary>
    public Statement? StatedOf(int unknown) => _stated.GetValueOrDefault(unknown);

    /// <summary>Every statement about some unknowns, in the order in which they were stated. Cost: that of what is found.</summary>
    public IEnumerable<Statement> About(IEnumerable<int> unknowns) =>
        unknowns.SelectMany(u => _about[u]).OrderBy(s => s.Place).Select(s => s.Statement);

    public Quantity TruthOf(int unknown) => Truth.Of(Unknowns.At(unknown));

    public Verdict Judge(Statement statement)
    {
        Quantity stated = statement.Value.Value, derived = Truth.Of(statement.Subject);
        return !stated.IsDetermined ? (derived.IsDetermined ? Verdict.Wrong : Verdict.Right)
            : !derived.IsDetermined ? Verdict.Undetermined
            : AreEqual(stated, derived) ? Verdict.Right : Verdict.Wrong;
    }

    /// <summary>Exact values by value, numbers within the tolerance.</summary>
    public bool AreEqual(Quantity left, Quantity right)
    {
        if (!left.IsDetermined || !right.IsDetermined || (left.IsExact && right.IsExact))
        {
            return left.IsDetermined && left == right;
        }

        double a = left.ToDouble(), b = right.ToDouble();
        return Math.Abs(a - b) <= Math.Max(RoundingError, _tolerance * Math.Max(Math.Abs(a), Math.Abs(b)));
    }

    /// <summary>Whether an equation holds for the values that the analysis found. All do unless component values mix the flows of both limits.</summary>
    public bool Holds(Equation equation) => Truth.HasExactFlow || !IsBroken(equation, TruthOf, RoundingError * 1e3);

    /// <summary>Whether values break an equation by more than rounding; false where one of them is undetermined.</summary>
    public bool IsBroken(Equation equation, Func<int, Quantity> value) => IsBroken(equation, value, Math.Max(RoundingError, _tolerance));

    /// <summary>What is left of an equation: Σ coefficient · value - constant, but for one unknown.</summary>
    public static Quantity Residual(Equation equation, Func<int, Quantity> value, int except = Unknowns.None)
    {
        Quantity sum = Quantity.Exact(-equation.Constant);
        foreach ((int unknown, Fraction coefficient) in equation.Terms)
        {
            if (unknown != except)
            {
                sum = QuantityArithmetic.Add(sum, QuantityArithmetic.Multiply(coefficient, value(unknown)));
            }
        }

        return sum;
    }

    private static bool IsBroken(Equation equation, Func<int, Quantity> value, double tolerance)
    {
        Quantity residual = Residual(equation, value);
        if (!residual.IsDetermined || residual.IsExact)
        {
            return residual.IsDetermined && residual.Sign != 0;
        }

        double scale = Math.Abs(equation.Constant.ToDouble())
            + equation.Terms.Sum(t => Math.Abs(t.Coefficient.ToDouble() * value(t.Unknown).ToDouble()));
        return Math.Abs(residual.ToDouble()) > tolerance * scale;
    }
}
