namespace ScNet.Derivations.Expressions;

/// <summary>
/// One quantity of a converter as an expression, or the reason why it has none. Immutable, with
/// structural equality.
/// </summary>
public sealed class ClosedForm : IEquatable<ClosedForm>
{
    private const int MostNames = 8;

    private readonly Expression? _expression;
    private readonly string[] _elements;

    private ClosedForm(Symbol symbol, ClosedFormOutcome outcome, Expression? expression, string[] elements)
    {
        Symbol = symbol;
        Outcome = outcome;
        _expression = expression;
        _elements = elements;
    }

    /// <summary>The quantity: what stands left of the equals sign.</summary>
    public Symbol Symbol { get; }

    /// <summary>Whether there is an expression, and why not.</summary>
    public ClosedFormOutcome Outcome { get; }

    /// <summary>Whether there is an expression.</summary>
    public bool IsExact => Outcome == ClosedFormOutcome.Exact;

    /// <summary>The expression.</summary>
    /// <exception cref="InvalidOperationException">There is none; the message is <see cref="Reason"/>.</exception>
    public Expression Expression => _expression ?? throw new InvalidOperationException(Reason);

    /// <summary>Where component values decide: the elements whose charges they decide, in the converter's order. Otherwise none.</summary>
    public IReadOnlyList<string> Elements => _elements;

    /// <summary>Why there is no expression; empty where there is one.</summary>
    public string Reason => Outcome switch
    {
        ClosedFormOutcome.Exact => string.Empty,
        ClosedFormOutcome.Undetermined => $"Nothing in the circuit determines {Symbol}.",
        _ => $"Component values decide the charge of {Names()}: no closed form with fractions exists for {Symbol}.",
    };

    /// <summary>Gives the expression, or returns false and zero where there is none.</summary>
    /// <param name="expression">The expression.</param>
    public bool TryGetExpression(out Expression expression)
    {
        expression = _expression ?? Expression.Zero;
        return IsExact;
    }

    /// <summary>The form for equal components; see <see cref="Expression.WithEqualComponents"/>. A form without expression stays as it is.</summary>
    public ClosedForm WithEqualComponents() => _expression is null ? this : Of(Symbol, _expression.WithEqualComponents());

    /// <summary>The equation in TeX's math language, without delimiters; the reason where there is no expression.</summary>
    public string ToLatex() => _expression is null
        ? $"\\text{{{NameText.Latex(Reason)}}}"
        : $"{Symbol.ToLatex()} = {_expression.ToLatex()}";

    /// <summary>The equation in MathML Core; the reason where there is no expression.</summary>
    public string ToMathML() => ExpressionMathML.Document(_expression is null
        ? ExpressionMathML.Element("mtext", Reason)
        : ExpressionMathML.Element(
            "mrow", SymbolNotation.ToMathML(Symbol), ExpressionMathML.Operator("="), ExpressionMathML.Write(_expression.Terms)));

    /// <inheritdoc/>
    public bool Equals(ClosedForm? other) => other is not null
        && Outcome == other.Outcome
        && Symbol.Equals(other.Symbol)
        && Equals(_expression, other._expression)
        && _elements.AsSpan().SequenceEqual(other._elements);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as ClosedForm);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Symbol, Outcome, _expression, _elements.Length);

    /// <summary>The equation in plain text, "R_SSL = 2/(9·C·f)"; the reason where there is no expression.</summary>
    public override string ToString() => _expression is null ? Reason : $"{Symbol} = {_expression}";

    internal static ClosedForm Of(Symbol symbol, Expression expression) => new(symbol, ClosedFormOutcome.Exact, expression, []);

    internal static ClosedForm Undetermined(Symbol symbol) => new(symbol, ClosedFormOutcome.Undetermined, null, []);

    internal static ClosedForm DecidedByComponentValues(Symbol symbol, string[] elements) =>
        new(symbol, ClosedFormOutcome.DecidedByComponentValues, null, elements);

    private string Names()
    {
        string names = string.Join(", ", _elements.Take(MostNames).Select(e => $"'{NameText.Visible(e)}'"));
        return _elements.Length > MostNames
            ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{names} and {_elements.Length - MostNames} more")
            : names;
    }
}
