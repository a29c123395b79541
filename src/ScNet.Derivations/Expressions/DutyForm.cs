using System.Diagnostics.CodeAnalysis;

namespace ScNet.Derivations.Expressions;

/// <summary>One quantity of a mode as an exact function of the duties, or the reason why there is none. Immutable.</summary>
[ShownAsText("One equation fits in a line.")]
public sealed class DutyForm
{
    internal DutyForm(Symbol symbol, DutyFormOutcome outcome, RationalExpression? expression)
    {
        Symbol = symbol;
        Outcome = outcome;
        Expression = expression;
    }

    /// <summary>The quantity: what stands left of the equals sign.</summary>
    public Symbol Symbol { get; }

    /// <summary>Whether there is an expression, and why not.</summary>
    public DutyFormOutcome Outcome { get; }

    /// <summary>Whether there is an expression.</summary>
    [MemberNotNullWhen(true, nameof(Expression))]
    public bool IsExact => Outcome == DutyFormOutcome.Exact;

    /// <summary>The expression; null where there is none.</summary>
    public RationalExpression? Expression { get; }

    /// <summary>Why there is no expression; empty where there is one.</summary>
    public string Reason => Outcome switch
    {
        DutyFormOutcome.Exact => string.Empty,
        DutyFormOutcome.Undetermined => $"Averages over the period leave {Symbol} open where the duties are free as here.",
        DutyFormOutcome.NeedsTiedDuties => $"{Symbol} exists only where the duties meet a condition: give durations of the phases that are tied to each other.",
        _ => $"The form of {Symbol} has too many terms: give durations with fewer free duties.",
    };

    /// <summary>The expression.</summary>
    /// <exception cref="InvalidOperationException">There is none; the message is <see cref="Reason"/>.</exception>
    public RationalExpression Require() => Expression ?? throw new InvalidOperationException(Reason);

    /// <summary>The equation in TeX's math language, without delimiters; the reason where there is no expression.</summary>
    public string ToLatex() => Expression is null ? $"\\text{{{NameText.Latex(Reason)}}}" : $"{Symbol.ToLatex()} = {Expression.ToLatex()}";

    /// <summary>The equation in MathML Core; the reason where there is no expression.</summary>
    public string ToMathML() => ExpressionMathML.Document(Expression is null
        ? ExpressionMathML.Element("mtext", Reason)
        : ExpressionMathML.Element("mrow", SymbolNotation.ToMathML(Symbol), ExpressionMathML.Operator("="), Expression.MathML()));

    /// <summary>The equation in plain text, "M = 1/D2"; the reason where there is no expression.</summary>
    public override string ToString() => Expression is null ? Reason : $"{Symbol} = {Expression}";
}
