using System.Diagnostics.CodeAnalysis;

namespace ScNet.Derivations.Expressions;

/// <summary>
/// One quantity of a converter as an expression, or the reason why it has none. Immutable, with
/// structural equality.
/// </summary>
[ShownAsText("One equation fits in a line.")]
public sealed class ClosedForm : IEquatable<ClosedForm>
{
    private const int MaximumNames = 8;

    private ClosedForm(Symbol symbol, ClosedFormOutcome outcome, Expression? expression, IEnumerable<string> elements)
    {
        Symbol = symbol;
        Outcome = outcome;
        Expression = expression;
        Elements = [.. elements];
    }

    /// <summary>The quantity: what stands left of the equals sign.</summary>
    public Symbol Symbol { get; }

    /// <summary>Whether there is an expression, and why not.</summary>
    public ClosedFormOutcome Outcome { get; }

    /// <summary>Whether there is an expression.</summary>
    [MemberNotNullWhen(true, nameof(Expression))]
    public bool IsExact => Outcome == ClosedFormOutcome.Exact;

    /// <summary>The expression; null where there is none.</summary>
    public Expression? Expression { get; }

    /// <summary>Where component values decide: the elements whose charges they decide, in the converter's order. Otherwise none.</summary>
    public IReadOnlyList<string> Elements { get; }

    /// <summary>Why there is no expression; empty where there is one.</summary>
    public string Reason => Outcome switch
    {
        ClosedFormOutcome.Exact => string.Empty,
        ClosedFormOutcome.Undetermined => $"Nothing in the circuit determines {Symbol}.",
        _ => $"Component values decide the charge of {Names()}: no closed form with fractions exists for {Symbol}.",
    };

    /// <summary>The expression.</summary>
    /// <exception cref="InvalidOperationException">There is none; the message is <see cref="Reason"/>.</exception>
    public Expression Require() => Expression ?? throw new InvalidOperationException(Reason);

    /// <summary>The form for equal components; see <see cref="Expressions.Expression.WithEqualComponents"/>. A form without expression stays as it is.</summary>
    public ClosedForm WithEqualComponents() => Expression is null ? this : Of(Symbol, Expression.WithEqualComponents());

    /// <summary>The equation in TeX's math language, without delimiters; the reason where there is no expression.</summary>
    public string ToLatex() => Expression is null
        ? $"\\text{{{NameText.Latex(Reason)}}}"
        : $"{Symbol.ToLatex()} = {Expression.ToLatex()}";

    /// <summary>The equation in MathML Core; the reason where there is no expression.</summary>
    public string ToMathML() => ExpressionMathML.Document(Expression is null
        ? ExpressionMathML.Element("mtext", Reason)
        : ExpressionMathML.Element(
            "mrow", SymbolNotation.ToMathML(Symbol), ExpressionMathML.Operator("="), ExpressionMathML.Write(Expression.Terms)));

    /// <inheritdoc/>
    public bool Equals(ClosedForm? other) => other is not null
        && Outcome == other.Outcome
        && Symbol.Equals(other.Symbol)
        && Equals(Expression, other.Expression)
        && Elements.SequenceEqual(other.Elements);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as ClosedForm);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Symbol, Outcome, Expression, Elements.Count);

    /// <summary>The equation in plain text, "R_SSL = 2/(9·C·f)"; the reason where there is no expression.</summary>
    public override string ToString() => Expression is null ? Reason : $"{Symbol} = {Expression}";

    internal static ClosedForm Of(Symbol symbol, Expression expression) => new(symbol, ClosedFormOutcome.Exact, expression, []);

    internal static ClosedForm Undetermined(Symbol symbol) => new(symbol, ClosedFormOutcome.Undetermined, null, []);

    internal static ClosedForm DecidedByComponentValues(Symbol symbol, IEnumerable<string> elements) =>
        new(symbol, ClosedFormOutcome.DecidedByComponentValues, null, elements);

    private string Names()
    {
        string names = string.Join(", ", Elements.Take(MaximumNames).Select(e => $"'{NameText.Visible(e)}'"));
        return Elements.Count > MaximumNames
            ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{names} and {Elements.Count - MaximumNames} more")
            : names;
    }
}
