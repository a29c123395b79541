using System.Globalization;
using System.Numerics;
using Fractions;

namespace ScNet.Derivations.Expressions;

/// <summary>Reads sums of products by descent; every step is charged to a budget, so that no text takes long.</summary>
internal sealed class ExpressionParser
{
    private const int MaximumCharacters = 200_000;
    private const int MaximumNested = 100;
    private const int MaximumDigits = 1_000;
    private const int MaximumPower = 1_000;
    private const string Times = "*·⋅×";
    private const string Minus = "-−";
    private const string Superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹";
    private const string Operand = "a number, a symbol or '('";

    private readonly ExpressionBudget _budget = new();
    private readonly string _text;
    private int _position;
    private int _nested;

    private ExpressionParser(string text) => _text = text;

    /// <summary>The expression that a text says.</summary>
    /// <exception cref="FormatException">It says none; the message has the column.</exception>
    public static Expression Read(string text)
    {
        if (text.Length > MaximumCharacters)
        {
            throw new FormatException($"Expected {MaximumCharacters} characters at most, but there are {text.Length}.");
        }

        ExpressionParser parser = new(text);
        Expression sum = parser.Sum();
        return parser.Peek() switch
        {
            '\0' when parser._position >= text.Length => sum,
            '=' => throw parser.Unexpected("an operator or the end; give only what stands right of the equals sign"),
            _ => throw parser.Unexpected("an operator or the end"),
        };
    }

    private Expression Sum()
    {
        List<Expression> parts = [Product()];
        while (true)
        {
            if (TryTake("+"))
            {
                parts.Add(Product());
            }
            else if (TryTake(Minus))
            {
                Expression product = Product();
                parts.Add(Limited(() => _budget.Negative(product)));
            }
            else
            {
                return Limited(() => _budget.Sum(parts));
            }
        }
    }

    private Expression Product()
    {
        Expression product = Signed();
        while (true)
        {
            if (TryTake(Times))
            {
                Expression right = Signed();
                product = Limited(() => _budget.Product(product, right));
            }
            else if (TryTake("/"))
            {
                Peek();
                int column = _position;
                Expression right = Signed();
                Expression inverse = Inverse(right, column);
                product = Limited(() => _budget.Product(product, inverse));
            }
            else
            {
                return product;
            }
        }
    }

    private Expression Signed()
    {
        bool isNegative = false;
        while (Peek() is '+' or '-' or '−')
        {
            isNegative ^= _text[_position++] != '+';
        }

        Expression power = Power();
        return isNegative ? Limited(() => _budget.Negative(power)) : power;
    }

    private Expression Power()
    {
        Expression operand = Atom();
        Peek();
        int column = _position;
        if (TryExponent() is not { } power)
        {
            return operand;
        }

        if (Math.Abs(power) > MaximumPower)
        {
            throw Error(column, $"expected a power from -{MaximumPower} to {MaximumPower}.");
        }

        Expression positive = power >= 0 ? operand : Inverse(operand, column);
        return Limited(() => _budget.Power(positive, (int)Math.Abs(power)));
    }

    private long? TryExponent()
    {
        int start = _position;
        while (_position < _text.Length && Superscripts.Contains(_text[_position], StringComparison.Ordinal))
        {
            _position++;
        }

        if (_position > start)
        {
            return Whole(string.Concat(_text[start.._position].Select(c => (char)('0' + Superscripts.IndexOf(c, StringComparison.Ordinal)))));
        }

        if (!TryTake("^"))
        {
            return null;
        }

        bool isBracketed = TryTake("("), isNegative = TryTake(Minus);
        Peek();
        string digits = Digits();
        if (digits.Length == 0)
        {
            throw Unexpected("a whole number as power");
        }

        if (isBracketed && !TryTake(")"))
        {
            throw Unexpected("')'");
        }

        return isNegative ? -Whole(digits) : Whole(digits);
    }

    private Expression Atom()
    {
        char c = Peek();
        if (c == '(')
        {
            if (_nested == MaximumNested)
            {
                throw Error(_position, $"expected {MaximumNested} nested brackets at most.");
            }

            _position++;
            _nested++;
            Expression inner = Sum();
            _nested--;
            return TryTake(")") ? inner : throw Unexpected("an operator or ')'");
        }

        return char.IsAsciiDigit(c) || c == '.' ? Number()
            : char.IsLetter(c) ? Expression.Of(SymbolReader.Read(_text, ref _position))
            : throw Unexpected(Operand);
    }

    private Expression Number()
    {
        int start = _position;
        string whole = Digits(), decimals = string.Empty;
        if (_position < _text.Length && _text[_position] == '.')
        {
            _position++;
            decimals = Digits();
            if (decimals.Length == 0)
            {
                throw Unexpected("a digit after the decimal point");
            }
        }

        if (whole.Length + decimals.Length > MaximumDigits)
        {
            throw Error(start, $"expected a number of {MaximumDigits} digits at most.");
        }

        BigInteger digits = BigInteger.Parse(whole + decimals, NumberStyles.None, CultureInfo.InvariantCulture);
        return Expression.Of(new Fraction(digits, BigInteger.Pow(10, decimals.Length), true));
    }

    private string Digits()
    {
        int start = _position;
        while (_position < _text.Length && char.IsAsciiDigit(_text[_position]))
        {
            _position++;
        }

        return _text[start.._position];
    }

    // anything too long is beyond every limit
    private static long Whole(string digits) =>
        long.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out long value) ? value : long.MaxValue;

    private Expression Inverse(Expression divisor, int position) => divisor.Terms.Length switch
    {
        0 => throw Error(position, "cannot divide by zero."),
        1 => Limited(() => _budget.Inverse(divisor.Terms[0])),
        _ => throw Error(position, $"expected a product to divide by, but {Shortened(divisor)} is a sum; a closed form is a sum of fractions whose denominators are products."),
    };

    private static string Shortened(Expression sum) =>
        sum.Terms.Length > 3 ? $"this one of {sum.Terms.Length.ToString(CultureInfo.InvariantCulture)} terms" : $"'{sum}'";

    private Expression Limited(Func<Expression?> result) => result()
        ?? throw Error(_position, "what stands up to here is too large to be multiplied out.");

    private char Peek()
    {
        while (_position < _text.Length && char.IsWhiteSpace(_text[_position]))
        {
            _position++;
        }

        return _position < _text.Length ? _text[_position] : '\0';
    }

    private bool TryTake(string oneOf)
    {
        char c = Peek();
        if (_position >= _text.Length || !oneOf.Contains(c, StringComparison.Ordinal))
        {
            return false;
        }

        _position++;
        return true;
    }

    private FormatException Unexpected(string expected)
    {
        Peek();
        string found = _position >= _text.Length ? "the end" : $"'{NameText.Visible(_text.Substring(_position, 1))}'";
        return Error(_position, $"expected {expected}, but found {found}.");
    }

    private static FormatException Error(int position, string message) =>
        new(string.Create(CultureInfo.InvariantCulture, $"Column {position + 1}: {message}"));
}
