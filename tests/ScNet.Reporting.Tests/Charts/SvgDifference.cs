using System.Globalization;
using System.Text.RegularExpressions;

namespace ScNet.Reporting.Tests.Charts;

/// <summary>Compares two SVG documents: text to the letter, numbers to what the last digit of a machine's mathematics may move.</summary>
internal static partial class SvgDifference
{
    private const double Tolerance = 0.0201;

    /// <summary>Where they differ first; null where they are the same.</summary>
    public static string? Of(string expected, string actual)
    {
        string[] left = Token().Split(expected), right = Token().Split(actual);
        for (int i = 0; i < Math.Max(left.Length, right.Length); i++)
        {
            string a = i < left.Length ? left[i] : string.Empty, b = i < right.Length ? right[i] : string.Empty;
            bool isSame = a == b || (double.TryParse(a, CultureInfo.InvariantCulture, out double x) && double.TryParse(b, CultureInfo.InvariantCulture, out double y) && Math.Abs(x - y) <= Tolerance);
            if (!isSame)
            {
                return $"expected '{a}', but got '{b}' after {string.Concat(left.Take(i))[^Math.Min(80, string.Concat(left.Take(i)).Length)..]}";
            }
        }

        return null;
    }

    [GeneratedRegex(@"(-?\d+(?:\.\d+)?)")]
    private static partial Regex Token();
}
