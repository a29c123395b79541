using System.Globalization;
using Fractions;

namespace ScNet.Cli.Commands;

/// <summary>
/// Values as they are written on the command line: numbers and evenly spaced ranges, separated by commas, exactly as the decimals
/// written. "1..2" has eleven points, "1..2:5" as many as are said; both ends belong to it.
/// </summary>
internal static class ValueList
{
    /// <summary>How many points a range has where nothing else is said.</summary>
    public const int UsualPoints = 11;

    private const int MaximumPoints = 10_000;

    /// <summary>The values in the order written; what is wrong goes to <paramref name="addError"/>.</summary>
    /// <param name="text">What is written.</param>
    /// <param name="expected">What is expected and where, such as "positive numbers of volts (V) after --input-voltage".</param>
    /// <param name="isAccepted">Whether a value may be.</param>
    /// <param name="addError">Receives what is wrong.</param>
    public static Fraction[] Parse(string text, string expected, Func<Fraction, bool> isAccepted, Action<string> addError)
    {
        List<Fraction> values = [];
        foreach (string part in text.Split(','))
        {
            if (!TryAdd(values, part, isAccepted))
            {
                addError($"Expected {expected}, or rising ranges of 2 to {MaximumPoints.ToString(CultureInfo.InvariantCulture)} points, such as 1,2.5 or 1..2 or 1..2:5, but got '{part}'.");
            }

            if (values.Count > MaximumPoints)
            {
                addError(string.Create(CultureInfo.InvariantCulture, $"Expected {expected}, at most {MaximumPoints} in all, but there are more. Ask for fewer points."));
                break;
            }
        }

        return [.. values];
    }

    private static bool TryAdd(List<Fraction> values, string part, Func<Fraction, bool> isAccepted)
    {
        int dots = part.IndexOf("..", StringComparison.Ordinal);
        if (dots < 0)
        {
            bool isValue = TryParse(part, isAccepted, out Fraction value);
            values.Add(value);
            return isValue;
        }

        int colon = part.IndexOf(':', StringComparison.Ordinal);
        int count = UsualPoints;
        string last = colon < 0 ? part[(dots + 2)..] : part[Math.Min(colon, dots + 2)..colon];
        if ((colon >= 0 && !(int.TryParse(part.AsSpan(colon + 1), NumberStyles.None, CultureInfo.InvariantCulture, out count) && count is >= 2 and <= MaximumPoints))
            || !TryParse(part[..dots], isAccepted, out Fraction from) || !TryParse(last, isAccepted, out Fraction to) || from >= to)
        {
            return false;
        }

        values.AddRange(Enumerable.Range(0, count).Select(k => from + ((to - from) * new Fraction(k, count - 1))));
        return true;
    }

    // within the range that the library takes
    private static bool TryParse(string text, Func<Fraction, bool> isAccepted, out Fraction value)
    {
        value = Fraction.Zero;
        return SharedOptions.TryParseSigned(text, out _) && ExactDecimal.TryParse(text, out value) && isAccepted(value);
    }
}
