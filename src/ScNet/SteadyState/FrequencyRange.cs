namespace ScNet.SteadyState;

/// <summary>Switching frequencies spread evenly over a range on a logarithmic scale, for a sweep.</summary>
public static class FrequencyRange
{
    private const double Rounding = 1e-9;

    // 8 MB of them
    private const int MostFrequencies = 1_000_000;

    /// <summary>A number of frequencies in hertz (Hz), both ends, exactly as given, among them.</summary>
    /// <param name="fromHz">The lowest frequency in hertz (Hz).</param>
    /// <param name="toHz">The highest frequency in hertz (Hz), above the lowest.</param>
    /// <param name="count">How many, from 2 to a million.</param>
    /// <exception cref="ArgumentOutOfRangeException">A frequency or the number is out of range.</exception>
    public static IReadOnlyList<double> Logarithmic(double fromHz, double toHz, int count)
    {
        double decades = Decades(fromHz, toHz);
        Guard.Count(count, 2, MostFrequencies, nameof(count));
        return [fromHz, .. Enumerable.Range(1, count - 2).Select(i => Math.Pow(10, Math.Log10(fromHz) + (decades * i / (count - 1)))), toHz];
    }

    /// <summary>As many frequencies in hertz (Hz) as make so many per decade, or a little more.</summary>
    /// <param name="fromHz">The lowest frequency in hertz (Hz).</param>
    /// <param name="toHz">The highest frequency in hertz (Hz), above the lowest.</param>
    /// <param name="pointsPerDecade">How many per decade, at least 1; a million on the whole at most.</param>
    /// <exception cref="ArgumentOutOfRangeException">A frequency or the number is out of range.</exception>
    public static IReadOnlyList<double> PerDecade(double fromHz, double toHz, int pointsPerDecade = 10)
    {
        double decades = Decades(fromHz, toHz);
        Guard.Count(pointsPerDecade, 1, (int)(MostFrequencies / Math.Max(1, decades)), nameof(pointsPerDecade));
        return Logarithmic(fromHz, toHz, Math.Max(2, 1 + (int)Math.Ceiling((pointsPerDecade * decades) - Rounding)));
    }

    private static double Decades(double fromHz, double toHz)
    {
        Guard.InRange(fromHz, allowZero: false, nameof(fromHz));
        Guard.InRange(toHz, allowZero: false, nameof(toHz));
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(toHz, fromHz);
        return Math.Log10(toHz) - Math.Log10(fromHz);
    }
}
