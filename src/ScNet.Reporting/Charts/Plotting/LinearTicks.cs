using System.Globalization;

namespace ScNet.Reporting.Charts.Plotting;

/// <summary>Ticks at multiples of 1, 2 or 5 times a power of ten, all with the same prefix.</summary>
internal static class LinearTicks
{
    // what rounding may add to a whole number of steps
    private const double Rounding = 1e-9;

    private const int MostDecimals = 9;

    public static (double Minimum, double Maximum, IReadOnlyList<AxisTick> Ticks) Of(double minimum, double maximum, string unit, int steps, bool isExtended)
    {
        if (!(maximum > minimum))
        {
            // all values are one: a range about it
            double half = minimum == 0 ? 1 : Math.Abs(minimum) / 10;
            (minimum, maximum) = (minimum - half, maximum + half);
        }

        double step = Step((maximum - minimum) / steps);
        double first = Math.Ceiling((minimum / step) - Rounding), last = Math.Floor((maximum / step) + Rounding);
        if (isExtended)
        {
            (first, last) = (Math.Floor((minimum / step) + Rounding), Math.Ceiling((maximum / step) - Rounding));
            (minimum, maximum) = (first * step, last * step);
        }

        (double factor, string prefix) = unit is "%" or "" ? (1, string.Empty) : EngineeringNumber.PrefixOf(Math.Max(Math.Abs(minimum), Math.Abs(maximum)));
        int decimals = Math.Clamp((int)Math.Ceiling(-Math.Log10(step / factor) - Rounding), 0, MostDecimals);
        string format = "F" + decimals.ToString(CultureInfo.InvariantCulture);
        return (minimum, maximum, [.. Enumerable.Range(0, (int)(last - first) + 1).Select(k => Tick((first + k) * step))]);

        AxisTick Tick(double value)
        {
            string text = ((value / factor) + 0.0).ToString(format, CultureInfo.InvariantCulture);
            return new AxisTick(value, unit.Length == 0 ? text : $"{text} {prefix}{unit}");
        }
    }

    /// <summary>The least of 1, 2 or 5 times a power of ten that is not below a length.</summary>
    private static double Step(double length)
    {
        double power = Math.Pow(10, Math.Floor(Math.Log10(length)));
        double mantissa = length / power;
        return power * (mantissa <= 1 + Rounding ? 1 : mantissa <= 2 + Rounding ? 2 : mantissa <= 5 + Rounding ? 5 : 10);
    }
}
