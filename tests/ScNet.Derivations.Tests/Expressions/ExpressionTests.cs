using CsCheck;
using Fractions;
using ScNet.Derivations.Expressions;

namespace ScNet.Derivations.Tests.Expressions;

[Trait("Kind", "Law")]
public sealed class ExpressionTests
{
    private static readonly Expression s_c = Expression.Of(Symbol.Capacitance("fly1"));
    private static readonly Expression s_f = Expression.Of(Symbol.Frequency);

    private static readonly Symbol[] s_symbols =
        [Symbol.Frequency, Symbol.InputVoltage, Symbol.LoadCurrent, Symbol.Capacitance("a"), Symbol.Capacitance("b"), Symbol.OnResistance("a")];

    private static readonly Gen<Expression> s_term =
        from numerator in Gen.Int[-4, 4]
        from denominator in Gen.Int[1, 4]
        from factors in Gen.Select(Gen.Int[0, s_symbols.Length - 1], Gen.Int[-2, 2]).Array[0, 3]
        select factors.Aggregate(Expression.Of(new Fraction(numerator, denominator)), (p, f) => p * Expression.Of(s_symbols[f.Item1], f.Item2));

    private static readonly Gen<Expression> s_any = s_term.Array[0, 5].Select(Expression.Sum);

    private static Expression Number(int numerator, int denominator = 1) => Expression.Of(new Fraction(numerator, denominator));

    [Fact]
    public void Like_terms_are_collected_and_those_that_cancel_vanish()
    {
        Expression r = Expression.Of(Symbol.OnResistance("s1"));
        Assert.Equal(Number(5, 6) * r, (Number(1, 2) * r) + (Number(1, 3) * r));
        Assert.Same(Expression.Zero, r - r);
        Assert.Equal(Number(1), s_f * Expression.Of(Symbol.Frequency, -1));
        Assert.Single((s_c + s_c).Terms);
    }

    [Fact]
    public void Sums_and_products_obey_the_laws_of_arithmetic_and_have_one_form() =>
        Gen.Select(s_any, s_any, s_any).Holds((a, b, c) =>
        {
            Assert.Equal(a + b, b + a);
            Assert.Equal((a + b) + c, a + (b + c));
            Assert.Equal(a * b, b * a);
            Assert.Equal((a * b) * c, a * (b * c));
            Assert.Equal(a * (b + c), (a * b) + (a * c));
            Assert.Equal(a - b, -(b - a));
            Assert.Equal((a + b).GetHashCode(), (b + a).GetHashCode());
            Assert.Equal((a + b).ToString(), (b + a).ToString());
            Assert.All(a.Terms, t => Assert.False(t.Coefficient.IsZero));
        });

    [Fact]
    public void The_value_of_a_sum_or_product_is_the_sum_or_product_of_the_values() =>
        Gen.Select(s_any, s_any, Gen.Double[0.5, 2].Array[s_symbols.Length]).Holds((a, b, values) =>
        {
            double Value(Symbol symbol) => values[Array.IndexOf(s_symbols, symbol)];
            double x = a.Evaluate(Value), y = b.Evaluate(Value);
            double size = 1 + a.Terms.Concat(b.Terms).Sum(t => Math.Abs(t.Coefficient.ToDouble()) * 4096);
            Assert.Equal(x + y, (a + b).Evaluate(Value), 1e-12 * size);
            Assert.Equal(x * y, (a * b).Evaluate(Value), 1e-12 * size * size);
        });

    [Fact]
    public void Expressions_that_differ_in_a_coefficient_a_power_or_a_symbol_are_not_equal()
    {
        Assert.NotEqual(s_c, Number(2) * s_c);
        Assert.NotEqual(s_c, s_c * s_c);
        Assert.NotEqual(s_c, Expression.Of(Symbol.Capacitance("fly2")));
        Assert.NotEqual(Expression.Of(Symbol.OnResistance("fly1")), s_c);
        Assert.False(s_c.Equals(null));
    }

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    [InlineData("fa-IR")]
    [InlineData("sv-SE")]
    public void Every_notation_is_the_same_in_every_culture(string culture)
    {
        Expression loss = (Number(2, 9) * Expression.Of(Symbol.LoadCurrent, 2) * Expression.Of(Symbol.EqualCapacitance, -1) * Expression.Of(Symbol.Frequency, -1))
            - (Number(1234567, 2) * Expression.Of(Symbol.OnResistance("s1"))) - Number(1);
        using CultureScope scope = new(culture);
        Assert.Equal("2·I_out²/(9·C·f) - 1234567/2·R_s1 - 1", loss.ToString());
        Assert.Equal(@"\frac{2\,I_{\mathrm{out}}^{2}}{9\,C\,f} - \frac{1234567}{2}\,R_{\mathrm{s1}} - 1", loss.ToLatex());
        Assert.Equal(
            "<math xmlns=\"http://www.w3.org/1998/Math/MathML\"><mrow><mfrac><mrow><mn>2</mn><mo>·</mo><msubsup><mi>I</mi><mtext>out</mtext><mn>2</mn></msubsup></mrow>"
            + "<mrow><mn>9</mn><mo>·</mo><mi>C</mi><mo>·</mo><mi>f</mi></mrow></mfrac><mo>−</mo><mfrac><mn>1234567</mn><mn>2</mn></mfrac><mo>·</mo>"
            + "<msub><mi>R</mi><mtext>s1</mtext></msub><mo>−</mo><mn>1</mn></mrow></math>",
            loss.ToMathML());
    }

    [Fact]
    public void Fractions_are_written_with_brackets_only_where_they_are_needed()
    {
        Assert.Equal("0", Expression.Zero.ToString());
        Assert.Equal("0", Expression.Zero.ToLatex());
        Assert.Equal("-1", Number(-1).ToString());
        Assert.Equal("1/f", Expression.Of(Symbol.Frequency, -1).ToString());
        Assert.Equal("3/f", (Number(3) * Expression.Of(Symbol.Frequency, -1)).ToString());
        Assert.Equal("-1/(2·f)", (Number(-1, 2) * Expression.Of(Symbol.Frequency, -1)).ToString());
        Assert.Equal("8/3·C_fly1", (Number(8, 3) * s_c).ToString());
        Assert.Equal("-C_fly1", (-s_c).ToString());
        Assert.Equal("C_fly1/f¹²", (s_c * Expression.Of(Symbol.Frequency, -12)).ToString());
    }

    [Fact]
    public void Terms_stand_in_the_order_of_their_symbols_with_numbers_in_names_as_numbers()
    {
        string[] names = ["fly10", "fly2", "fly", "fly02", "a"];
        Assert.Equal(
            "C_a + C_fly + C_fly02 + C_fly2 + C_fly10 + 1",
            Expression.Sum([Number(1), .. names.Select(n => Expression.Of(Symbol.Capacitance(n)))]).ToString());
    }

    [Fact]
    public void The_order_of_names_is_a_total_order_that_ties_only_equal_names() =>
        Gen.Select(Gen.String["a1029"], Gen.String["a1029"], Gen.String["a1029"]).Holds((a, b, c) =>
        {
            int ab = NaturalOrder.Compare(a, b);
            Assert.Equal(Math.Sign(ab), -Math.Sign(NaturalOrder.Compare(b, a)));
            Assert.Equal(a == b, ab == 0);
            Assert.False(ab <= 0 && NaturalOrder.Compare(b, c) <= 0 && NaturalOrder.Compare(a, c) > 0);
        });

    [Fact]
    public void A_value_that_is_missing_is_named()
    {
        ArgumentException error = Assert.Throws<ArgumentException>(() => (s_c * s_f).Evaluate(new Dictionary<string, double> { ["C_fly1"] = 1 }));
        Assert.StartsWith("Expected a value for each of C_fly1, f, but there is none for f.", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_coefficient_of_hundreds_of_digits_still_has_a_value()
    {
        System.Numerics.BigInteger huge = System.Numerics.BigInteger.Pow(10, 400);
        Assert.Equal(2, Expression.Of(new Fraction(2 * huge, huge + 1)).Evaluate(_ => 0), 1e-15);
    }
}
