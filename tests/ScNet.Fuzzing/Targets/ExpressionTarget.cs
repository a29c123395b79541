using System.Globalization;
using ScNet.Derivations.Expressions;

namespace ScNet.Fuzzing.Targets;

/// <summary>Expressions: what is accepted reads the same from its own text, what is not says a column of the text.</summary>
internal static class ExpressionTarget
{
    // a product of sums can be long, and then be refused when it is read again
    private const int MaximumPrinted = 2_000;

    // powers of powers can have more digits, and products of powers higher ones, than what is read
    private const int MaximumDigits = 1_000, MaximumPower = 1_000;
    private const string Superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹";

    private const string Column = "Column ";

    public static void Try(byte[] bytes)
    {
        string text = TextInput.Of(bytes);
        if (!Expression.TryParse(text, out Expression? expression, out string error))
        {
            int colon = error.IndexOf(':', StringComparison.Ordinal);
            Property.Holds(
                error.StartsWith(Column, StringComparison.Ordinal) && int.TryParse(error.AsSpan(Column.Length, colon - Column.Length), NumberStyles.None, CultureInfo.InvariantCulture, out int column) && column >= 1 && column <= text.Length + 1,
                $"a column from 1 to {text.Length + 1}, but got '{error}'");
            return;
        }

        string printed = expression.ToString();
        _ = expression.ToLatex();
        _ = expression.ToMathML();
        if (printed.Length <= MaximumPrinted && IsWithinLimits(printed))
        {
            Property.Holds(Expression.TryParse(printed, out Expression? again, out error), $"to read '{printed}', but got '{error}'");
            Property.Same(printed, again!.ToString(), "the expression that was read and the one that was printed and read");
            Property.Holds(expression.Equals(again), $"equal expressions, read and printed and read, for '{printed}'");
        }
    }

    private static bool IsWithinLimits(string text)
    {
        int length = 0;
        long power = 0;
        bool isWithin = true;
        foreach (char c in text)
        {
            length = char.IsAsciiDigit(c) ? length + 1 : 0;
            int digit = Superscripts.IndexOf(c, StringComparison.Ordinal);
            power = digit < 0 ? 0 : (power * 10) + digit;
            isWithin &= length <= MaximumDigits && power <= MaximumPower;
        }

        return isWithin;
    }
}
