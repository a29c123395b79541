using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Fractions;

namespace ScNet.Derivations.Expressions;

/// <summary>
/// A sum of terms with exact coefficients, always in its canonical form: like terms collected, none
/// zero, in a fixed order that does not depend on how it was made. Immutable, with structural equality.
/// </summary>
/// <remarks>Everything a topology fixes is such a sum. Cost of sums: sorting the terms; of products: one term per pair.</remarks>
[ShownAsText("One expression fits in a line.")]
public sealed class Expression : IEquatable<Expression>
{
    private Expression(ImmutableArray<Term> terms) => Terms = terms;

    /// <summary>Zero, the sum without terms.</summary>
    public static Expression Zero { get; } = new([]);

    /// <summary>The terms in their order; none in zero.</summary>
    internal ImmutableArray<Term> Terms { get; }

    /// <summary>Whether it is zero.</summary>
    public bool IsZero => Terms.IsEmpty;

    /// <summary>The symbols that occur, each once, in their order in a term.</summary>
    public ImmutableArray<Symbol> Symbols => Terms.SelectMany(t => t.Factors).Select(f => f.Symbol).Distinct().ToImmutableArray().Sort(Symbol.Compare);

    /// <summary>A constant.</summary>
    /// <param name="value">The value.</param>
    /// <exception cref="ArgumentException">The fraction is infinite or not a number.</exception>
    public static Expression Of(Fraction value) => Sum([new Term(Quantity.Exact(value).ToFraction(), [])]);

    /// <summary>A power of a symbol.</summary>
    /// <param name="symbol">The symbol.</param>
    /// <param name="power">The exponent; negative for the denominator.</param>
    public static Expression Of(Symbol symbol, int power = 1)
    {
        ArgumentNullException.ThrowIfNull(symbol);
        return new Expression([new Term(Fraction.One, power == 0 ? [] : [new Factor(symbol, power)])]);
    }

    internal static Expression Of(Term term) => term.Coefficient.IsZero ? Zero : new Expression([term]);

    /// <summary>The sum of several expressions.</summary>
    /// <param name="parts">The expressions; none give zero.</param>
    public static Expression Sum(IEnumerable<Expression> parts)
    {
        return Sum(Guard.Copy(parts, nameof(parts)).SelectMany(p => p.Terms).ToList());
    }

    /// <summary>
    /// Reads the plain text that <see cref="ToString"/> writes, and what hands write for it: + - * · / ^ ( ),
    /// whole and decimal numbers, powers by whole numbers, and symbols by <see cref="Symbol.Name"/>:
    /// "1/(9*C_fly1*f) + 1/(9*C_fly2*f)". What can be divided by is a product, not a sum.
    /// </summary>
    /// <param name="text">The text.</param>
    /// <returns>The expression. R_SSL and R_FSL are the limits, not resistances of switches with such names.</returns>
    /// <exception cref="FormatException">The text is no such expression; the message says in which column, and what is expected.</exception>
    /// <remarks>Any text ends soon: 200 000 characters, 100 nested brackets, 1000 digits and powers of 1000 at most, and no more than 64 MB for multiplying out.</remarks>
    public static Expression Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return ExpressionParser.Read(text);
    }

    /// <summary>Reads what <see cref="Parse"/> reads, or returns false and says why not.</summary>
    /// <param name="text">The text.</param>
    /// <param name="expression">The expression; null where there is none.</param>
    /// <param name="error">In which column something else is expected, and what; empty where there is an expression.</param>
    public static bool TryParse(string? text, [NotNullWhen(true)] out Expression? expression, out string error)
    {
        (expression, error) = (null, string.Empty);
        try
        {
            expression = ExpressionParser.Read(text ?? string.Empty);
            return true;
        }
        catch (FormatException exception)
        {
            error = exception.Message;
            return false;
        }
    }

    /// <summary>The sum.</summary>
    public static Expression operator +(Expression left, Expression right) => Sum([left, right]);

    /// <summary>The difference.</summary>
    public static Expression operator -(Expression left, Expression right) => Sum([left, -right]);

    /// <summary>The opposite.</summary>
    public static Expression operator -(Expression value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return new Expression([.. value.Terms.Select(t => t.WithCoefficient(-t.Coefficient))]);
    }

    /// <summary>The product.</summary>
    public static Expression operator *(Expression left, Expression right)
    {
        ArgumentNullException.ThrowIfNull(left);
        ArgumentNullException.ThrowIfNull(right);
        return Sum(left.Terms.SelectMany(a => right.Terms.Select(a.Times)).ToList());
    }

    /// <summary>The sum.</summary>
    public static Expression Add(Expression left, Expression right) => left + right;

    /// <summary>The difference.</summary>
    public static Expression Subtract(Expression left, Expression right) => left - right;

    /// <summary>The opposite.</summary>
    public static Expression Negate(Expression value) => -value;

    /// <summary>The product.</summary>
    public static Expression Multiply(Expression left, Expression right) => left * right;

    /// <summary>The expression with other symbols; like terms are collected again.</summary>
    /// <param name="replace">Gives the symbol that takes the place of another.</param>
    public Expression Replace(Func<Symbol, Symbol> replace)
    {
        ArgumentNullException.ThrowIfNull(replace);
        return Sum(Terms.Select(t => t.Replace(replace)).ToList());
    }

    /// <summary>
    /// The expression for equal components: every capacitance C, every on-resistance R, every series
    /// resistance ESR.
    /// </summary>
    public Expression WithEqualComponents() => Replace(symbol => symbol.Kind switch
    {
        SymbolKind.Capacitance => Symbol.EqualCapacitance,
        SymbolKind.OnResistance => Symbol.EqualOnResistance,
        SymbolKind.SeriesResistance => Symbol.EqualSeriesResistance,
        _ => symbol,
    });

    /// <summary>The value for given values of the symbols, in SI units.</summary>
    /// <param name="value">Gives the value of a symbol.</param>
    public double Evaluate(Func<Symbol, double> value)
    {
        ArgumentNullException.ThrowIfNull(value);
        double sum = 0;
        foreach (Term term in Terms)
        {
            double product = Quantity.Exact(term.Coefficient).ToDouble();
            foreach (Factor factor in term.Factors)
            {
                double x = value(factor.Symbol);
                for (int k = Math.Abs(factor.Power); k > 0; k--)
                {
                    product = factor.Power > 0 ? product * x : product / x;
                }
            }

            sum += product;
        }

        return sum;
    }

    /// <summary>The value for values given by the names of the symbols, in SI units.</summary>
    /// <param name="valuesByName">Values by <see cref="Symbol.Name"/>: "C_fly1", "f". More than needed do no harm.</param>
    /// <exception cref="ArgumentException">The value of a symbol is missing.</exception>
    public double Evaluate(IReadOnlyDictionary<string, double> valuesByName)
    {
        ArgumentNullException.ThrowIfNull(valuesByName);
        return Evaluate(symbol => valuesByName.TryGetValue(symbol.Name, out double value)
            ? value
            : throw new ArgumentException($"Expected a value for each of {string.Join(", ", Symbols)}, but there is none for {symbol}.", nameof(valuesByName)));
    }

    /// <summary>The expression in TeX's math language, without delimiters: "\frac{2}{9\,C\,f}".</summary>
    public string ToLatex() => ExpressionLatex.Write(Terms);

    /// <summary>The expression in MathML Core: a math element with its namespace, without line breaks.</summary>
    public string ToMathML() => ExpressionMathML.Document(ExpressionMathML.Write(Terms));

    /// <inheritdoc/>
    public bool Equals(Expression? other) => other is not null && Terms.AsSpan().SequenceEqual(other.Terms.AsSpan());

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Expression);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        HashCode hash = default;
        foreach (Term term in Terms)
        {
            hash.Add(term);
        }

        return hash.ToHashCode();
    }

    /// <summary>The expression in plain text: "1/(9·C_fly1·f) + 1/(9·C_fly2·f)".</summary>
    public override string ToString() => ExpressionText.Write(Terms);

    private static Expression Sum(List<Term> terms)
    {
        terms.Sort(Term.Compare);
        List<Term> collected = new(terms.Count);
        for (int k = 0; k < terms.Count;)
        {
            Term first = terms[k];
            Fraction coefficient = first.Coefficient;
            for (k++; k < terms.Count && terms[k].HasFactorsOf(first); k++)
            {
                coefficient += terms[k].Coefficient;
            }

            if (!coefficient.IsZero)
            {
                collected.Add(first.Coefficient == coefficient ? first : first.WithCoefficient(coefficient.Reduce()));
            }
        }

        return collected.Count == 0 ? Zero : new Expression([.. collected]);
    }
}
