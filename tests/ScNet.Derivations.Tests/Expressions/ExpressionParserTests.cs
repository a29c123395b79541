using CsCheck;
using Fractions;
using ScNet.Derivations.Expressions;

namespace ScNet.Derivations.Tests.Expressions;

[Trait("Kind", "Law")]
public sealed class ExpressionParserTests
{
    // the budget of multiplying out, and what reading a text of the greatest length takes besides
    private const long MostBytes = ExpressionBudget.Bytes + 64_000_000;

    private static readonly Gen<string> s_name = Gen.OneOf(Gen.String["ab_12 é'\\u[]^²/\n\u200B\uD800"], Gen.String).Where(n => n.Length > 0);

    private static readonly Gen<Symbol> s_symbol = Gen.OneOf(
        AnyOf(Symbol.Frequency, Symbol.InputVoltage, Symbol.LoadCurrent, Symbol.EqualCapacitance, Symbol.EqualOnResistance, Symbol.EqualSeriesResistance),
        s_name.Select(Symbol.Capacitance),
        s_name.Where(n => n is not ("SSL" or "FSL")).Select(Symbol.OnResistance),
        s_name.Select(Symbol.SeriesResistance),
        Gen.Select(AnyOf(SymbolKind.ElementVoltage, SymbolKind.NodePotential, SymbolKind.ElementCharge), s_name, Gen.Int[0, 3]).Select((k, n, p) => new Symbol(k, n, p)),
        Gen.Select(AnyOf(SymbolKind.OutputCharge, SymbolKind.InputCharge, SymbolKind.Ratio, SymbolKind.OutputVoltage), Gen.Int[0, 3]).Select((k, p) => new Symbol(k, string.Empty, p)),
        AnyOf(SymbolKind.SlowSwitchingLimit, SymbolKind.ChargeSharing, SymbolKind.FastSwitchingLimit, SymbolKind.SlowSwitchingLoss, SymbolKind.ChargeSharingLoss, SymbolKind.FastSwitchingLoss).Select(k => new Symbol(k)));

    private static readonly Gen<Expression> s_term =
        from numerator in Gen.Int
        from denominator in Gen.Int[1, 1000]
        from factors in Gen.Select(s_symbol, Gen.Int[-12, 12]).Array[0, 4]
        select factors.Aggregate(Expression.Of(new Fraction(numerator, denominator)), (p, f) => p * Expression.Of(f.Item1, f.Item2));

    private static Gen<T> AnyOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(k => values[k]);

    [Fact]
    public void What_an_expression_writes_reads_back_as_the_same_expression() =>
        s_term.Array[0, 6].Select(Expression.Sum).Holds(e => Assert.Equal(e, Expression.Parse(e.ToString())));

    [Theory]
    [InlineData("1/(9*C_fly1*f) + 1/(9*C_fly2*f)", "1/(9·C_fly1·f) + 1/(9·C_fly2·f)")]
    [InlineData("2/9/C/f", "2/(9·C·f)")]
    [InlineData("2/9*C^-1*f^(-1)", "2/(9·C·f)")]
    [InlineData(" ( R_s1 + R_s2 ) * 0.5 ", "1/2·R_s1 + 1/2·R_s2")]
    [InlineData("R × 14 ⋅ 1/9", "14/9·R")]
    [InlineData("−V_in + --2*-V_in", "-3·V_in")]
    [InlineData("(I_out + 1)^2 - I_out^2 - 1", "2·I_out")]
    [InlineData("(2*f)^-2", "1/(4·f²)")]
    [InlineData("-f^2", "-f²")]
    [InlineData("C^0", "1")]
    [InlineData("0*C", "0")]
    [InlineData(".25", "1/4")]
    [InlineData("C_'fly 1'/C_'it''s \\\\ \\u000A'", "C_'fly 1'/C_'it''s \\\\ \\u000A'", true)]
    [InlineData("R_SSL*I_out^2", "R_SSL·I_out²", true)]
    public void Forms_that_hands_write_are_read(string text, string written, bool isSymbolOrderFree = false)
    {
        using CultureScope scope = new("de-DE");
        Expression expression = Expression.Parse(text);
        Assert.True(isSymbolOrderFree || expression.ToString() == written, expression.ToString());
        Assert.Equal(Expression.Parse(written), expression);
        Assert.True(Expression.TryParse(text, out Expression? same, out string error));
        Assert.Equal((expression, string.Empty), (same, error));
    }

    [Theory]
    [InlineData("", "Column 1: expected a number, a symbol or '(', but found the end.")]
    [InlineData("2 * ", "Column 5: expected a number, a symbol or '(', but found the end.")]
    [InlineData("2 + )", "Column 5: expected a number, a symbol or '(', but found ')'.")]
    [InlineData("2 C", "Column 3: expected an operator or the end, but found 'C'.")]
    [InlineData("(2*C", "Column 5: expected an operator or ')', but found the end.")]
    [InlineData("R_SSL = 2", "Column 7: expected an operator or the end; give only what stands right of the equals sign, but found '='.")]
    [InlineData("1/(C_a + C_b)", "Column 3: expected a product to divide by, but 'C_a + C_b' is a sum; a closed form is a sum of fractions whose denominators are products.")]
    [InlineData("(C + 1)^-1", "Column 8: expected a product to divide by, but 'C + 1' is a sum; a closed form is a sum of fractions whose denominators are products.")]
    [InlineData("1/(C - C)", "Column 3: cannot divide by zero.")]
    [InlineData("C^f", "Column 3: expected a whole number as power, but found 'f'.")]
    [InlineData("C^(2", "Column 5: expected ')', but found the end.")]
    [InlineData("f^1001", "Column 2: expected a power from -1000 to 1000.")]
    [InlineData("2^99999999999999999999", "Column 2: expected a power from -1000 to 1000.")]
    [InlineData("3 + fly1", "Column 5: expected a symbol such as C_fly1, R_s1, ESR_fly1, C, R, ESR, f, V_in or I_out, but found 'fly1'.")]
    [InlineData("C_", "Column 1: expected a symbol such as C_fly1, R_s1, ESR_fly1, C, R, ESR, f, V_in or I_out, but found 'C_'.")]
    [InlineData("v_s1[0]", "Column 6: expected the number of a phase, from 1, and ']'.")]
    [InlineData("C_'fly", "Column 3: expected a quote at the end of the name.")]
    [InlineData("C_''", "Column 3: expected a name between the quotes.")]
    [InlineData("C_'\\x'", "Column 4: expected \\\\ or \\u and four hexadecimal digits.")]
    [InlineData("1.", "Column 3: expected a digit after the decimal point, but found the end.")]
    [InlineData("\u0001", "Column 1: expected a number, a symbol or '(', but found '\\u0001'.")]
    public void A_text_that_is_no_expression_says_where_and_what_is_expected(string text, string message)
    {
        using CultureScope scope = new("ar-SA");
        Assert.Equal(message, Assert.Throws<FormatException>(() => Expression.Parse(text)).Message);
        Assert.False(Expression.TryParse(text, out Expression? none, out string error));
        Assert.Null(none);
        Assert.Equal(message, error);
    }

    [Fact]
    public void No_text_is_misuse_to_parse_and_an_error_to_try()
    {
        Assert.Throws<ArgumentNullException>(() => Expression.Parse(null!));
        Assert.False(Expression.TryParse(null, out _, out string error));
        Assert.Equal("Column 1: expected a number, a symbol or '(', but found the end.", error);
    }

    [Fact]
    public void Any_text_is_read_or_refused() =>
        Gen.String["()+-*/^²·.'\\_[]12 CRfv\u0000"].Holds(text => Assert.Equal(Expression.TryParse(text, out _, out string error), error.Length == 0));

    public static TheoryData<string, string> HugeTexts => new()
    {
        { "nested brackets", new string('(', 150_000) },
        { "signs", new string('-', 199_999) + "1" },
        { "too long", new string('1', 200_001) },
        { "long number", new string('7', 199_999) },
        { "short power of a sum", "(C_a+C_b+C_c+C_d+C_e+C_f+C_g+C_h+C_i+C_j+C_k+C_l+1)^1000" },
        { "short product of powers", "(C_a+C_b+C_c+C_d+C_e+C_f+1)^7*(C_a+C_b+C_c+C_d+C_e+C_f+1)^7" },
        { "dense power", "(1 + f + f^2 + f^3)^999" },
        { "long coefficients", "(7777777*f + 1/7777777)^900" },
        { "negated again and again", string.Concat(Enumerable.Repeat("-(", 99)) + string.Join('+', Enumerable.Range(0, 20_000).Select(k => $"C_{k}")) + new string(')', 99) },
        { "added again and again", new string('(', 99) + string.Join('+', Enumerable.Range(0, 20_000).Select(k => $"C_{k}")) + string.Concat(Enumerable.Repeat("+1)", 99)) },
        { "long names", "(" + string.Join('+', Enumerable.Range(0, 20).Select(k => $"C_{new string('a', 5_000)}{k}")) + ")^4" },
        { "power of a sum", "((C_a + C_b + C_c + C_d + 1)^1000)^1000" },
        { "powers of powers", "(((((7*f)^1000)^1000)^1000)^1000)^1000" },
        { "products of sums", string.Join('*', Enumerable.Repeat("(C + R + f + 1)", 10_000)) },
        { "products of numbers", string.Join('*', Enumerable.Repeat(new string('7', 900), 200)) },
        { "different symbols", string.Join('*', Enumerable.Range(0, 20_000).Select(k => $"C_{k}")) },
        { "different denominators", string.Join('+', Enumerable.Range(10_000, 20_000).Select(k => $"1/{k}")) },
        { "many quotes", string.Concat(Enumerable.Repeat("C_'", 60_000)) },
        { "many brackets", string.Concat(Enumerable.Repeat("v_a[", 49_000)) },
        { "many terms", string.Join('+', Enumerable.Range(0, 20_000).Select(k => $"C_{k % 100}")) },
    };

    [Theory]
    [MemberData(nameof(HugeTexts))]
    public void Any_text_costs_little_memory_and_does_not_overflow_the_stack(string name, string text)
    {
        bool isRead = false;
        long bytes = Allocations.Of(() => isRead = Expression.TryParse(text, out _, out _));
        Assert.Equal(name is "signs" or "many terms", isRead);
        Assert.True(bytes < MostBytes, $"{name}: {bytes} bytes");
    }

    [Fact]
    public void A_power_that_costs_too_much_is_refused_before_anything_is_multiplied_out()
    {
        const string text = "(C_a+C_b+C_c+C_d+C_e+C_f+C_g+C_h+C_i+C_j+C_k+C_l+1)^1000";
        Assert.InRange(Allocations.Of(() => _ = Expression.TryParse(text, out _, out _)), 1, 400_000);
        Assert.False(Expression.TryParse(text, out _, out string error));
        Assert.Equal("Column 57: what stands up to here is too large to be multiplied out.", error);
    }

    [Fact]
    public void Powers_and_products_within_the_budget_are_multiplied_out()
    {
        Assert.Equal(101, Expression.Parse("(1 + f)^100").Terms.Length);
        Assert.Equal(201, Expression.Parse("(1 + f + f^-1)^100").Terms.Length);
        Assert.Equal(1001, Expression.Parse("(C_a + C_b + C_c + C_d + 1)^10").Terms.Length);
        Assert.Equal(Expression.Parse("1001*f^1000"), Expression.Parse("1001*(f^10)^100"));
    }

    [Fact]
    public void Random_powers_and_products_stay_within_the_budget()
    {
        Gen<string> sum = Gen.Select(AnyOf("f", "C", "2", "1/3", "R_a", "C_b^-1", "77777777"), AnyOf("+", "-", "*"), (a, o) => $"{a}{o}").Array[1, 8].Select(parts => $"({string.Concat(parts)}1)");
        Gen.Select(sum, Gen.Int[0, 60], AnyOf("*", "+", "/"), sum, Gen.Int[-1, 60]).Holds(c =>
        {
            string text = $"{c.Item1}^{c.Item2}{c.Item3}{c.Item4}^{c.Item5}";
            long bytes = Allocations.Of(() => _ = Expression.TryParse(text, out _, out _));
            Assert.True(bytes < MostBytes, $"{text}: {bytes} bytes");
        });
    }

    [Fact]
    public void The_closed_form_of_a_large_converter_reads_back()
    {
        Expression large = Expression.Sum(Enumerable.Range(1, 3_000).Select(k =>
            Expression.Of(new Fraction(k, (2 * k) + 1)) * Expression.Of(Symbol.Capacitance($"fly{k}"), -1) * Expression.Of(Symbol.Frequency, -1)));
        Assert.Equal(large, Expression.Parse(large.ToString()));
    }
}
