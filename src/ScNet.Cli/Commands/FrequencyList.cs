using System.Globalization;
using ScNet.SteadyState;

namespace ScNet.Cli.Commands;

/// <summary>
/// Frequencies as they are written on the command line: numbers and logarithmic ranges, separated by
/// commas. "1e5..1e8" has ten points per decade, "1e5..1e8:31" as many as are said; both ends belong to it.
/// </summary>
internal static class FrequencyList
{
    /// <summary>How many points a decade has where nothing else is said.</summary>
    public const int PointsPerDecade = 10;

    private const int FewestPoints = 2;
    private const int MaximumPoints = 100_000;

    /// <summary>The frequencies in hertz in the order written; what is wrong goes to <paramref name="addError"/>.</summary>
    public static double[] Parse(string text, string option, Action<string> addError)
    {
        List<double> frequencies = [];
        foreach (string part in text.Split(','))
        {
            int dots = part.IndexOf("..", StringComparison.Ordinal);
            if (dots >= 0)
            {
                AddRange(frequencies, part, dots, option, addError);
            }
            else if (SharedOptions.TryParse(part, out double value))
            {
                frequencies.Add(value);
            }
            else
            {
                addError(Expected(option, part));
            }

            if (frequencies.Count > MaximumPoints)
            {
                addError(string.Create(CultureInfo.InvariantCulture, $"Expected at most {MaximumPoints} frequencies in all after {option}, but there are more. Ask for fewer points."));
                break;
            }
        }

        return [.. frequencies];
    }

    private static void AddRange(List<double> frequencies, string part, int dots, string option, Action<string> addError)
    {
        int colon = part.IndexOf(':', StringComparison.Ordinal);
        string last = colon < 0 ? part[(dots + 2)..] : part[Math.Min(colon, dots + 2)..colon];
        if (!SharedOptions.TryParse(part[..dots], out double from) || !SharedOptions.TryParse(last, out double to))
        {
            addError(Expected(option, part));
            return;
        }

        if (from >= to)
        {
            addError($"Expected the ranges after {option} to rise, such as 1e5..1e8, but got '{part}'.");
            return;
        }

        int count = 0;
        if (colon >= 0 && !(int.TryParse(part.AsSpan(colon + 1), NumberStyles.None, CultureInfo.InvariantCulture, out count)
            && count is >= FewestPoints and <= MaximumPoints))
        {
            addError(string.Create(
                CultureInfo.InvariantCulture, $"Expected a whole number of points from {FewestPoints} to {MaximumPoints} after the colon of a range after {option}, such as 1e5..1e8:31, but got '{part}'."));
            return;
        }

        frequencies.AddRange(colon < 0 ? FrequencyRange.PerDecade(from, to, PointsPerDecade) : FrequencyRange.Logarithmic(from, to, count));
    }

    private static string Expected(string option, string part) =>
        $"Expected positive numbers of hertz (Hz) or ranges after {option}, such as 1e6,1e7 or 1e5..1e8 or 1e5..1e8:31 (from 1e-60 to 1e60), but got '{part}'.";
}
