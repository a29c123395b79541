using ScNet.SteadyState;

namespace ScNet.Reporting.Charts.Plotting;

/// <summary>The range of switching frequencies of a chart.</summary>
internal static class ChartFrequencies
{
    /// <summary>The corner frequency in hertz; null where the limits have none.</summary>
    public static double? Corner(OutputImpedance impedance) =>
        impedance.CornerFrequencyHz is var corner && corner > 0 && double.IsFinite(corner) ? corner : null;

    /// <summary>The range asked for, or so many decades on either side of the corner frequency, rounded to decades.</summary>
    public static (double FromHz, double ToHz) Range(OutputImpedance impedance, Interval<double>? frequencyHz, int decades)
    {
        if (frequencyHz is { } range)
        {
            return range.IsDetermined && range.Minimum > 0 && range.Maximum > range.Minimum && double.IsFinite(range.Maximum.Value)
                ? (range.Minimum.Value, range.Maximum.Value)
                : throw new ArgumentException($"Expected a range of positive frequencies, but got {range}.", nameof(frequencyHz));
        }

        double middle = Corner(impedance)
            ?? throw new ArgumentException("Expected a range of frequencies, as the limits of this mode have no corner frequency.", nameof(frequencyHz));
        double power = Math.Round(Math.Log10(middle));
        return (Math.Pow(10, power - decades), Math.Pow(10, power + decades));
    }
}
