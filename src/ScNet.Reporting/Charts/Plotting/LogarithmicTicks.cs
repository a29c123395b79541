namespace ScNet.Reporting.Charts.Plotting;

/// <summary>Ticks at decades, with shorter ones at their multiples; over a short range the multiples by 2 and 5 have a text too.</summary>
internal static class LogarithmicTicks
{
    /// <param name="minimum">The least value.</param>
    /// <param name="maximum">The largest value.</param>
    /// <param name="unit">The unit.</param>
    /// <param name="mostTexts">So many decades have a text each; of more, every second or third.</param>
    public static (IReadOnlyList<AxisTick> Ticks, IReadOnlyList<double> Between) Of(double minimum, double maximum, string unit, int mostTexts)
    {
        int first = (int)Math.Floor(Math.Log10(minimum)), last = (int)Math.Ceiling(Math.Log10(maximum));
        (int Power, int Multiple, double Value)[] all = [.. Enumerable.Range(first, last - first + 1)
            .SelectMany(power => Enumerable.Range(1, 9).Select(m => (power, m, m * Math.Pow(10, power))))
            .Where(t => t.Item3 >= minimum * (1 - 1e-9) && t.Item3 <= maximum * (1 + 1e-9))];
        int decades = all.Count(t => t.Multiple == 1);
        int every = ((decades - 1) / mostTexts) + 1;
        bool HasText((int Power, int Multiple, double Value) t) => decades >= Math.Min(3, mostTexts) ? t.Multiple == 1 && t.Power % every == 0
            : t.Multiple is 1 or 2 or 5 || all.Length < 4;
        return (
            [.. all.Where(HasText).Select(t => new AxisTick(t.Value, EngineeringNumber.Of(t.Value, unit)))],
            [.. all.Where(t => !HasText(t) && (every == 1 || t.Multiple == 1)).Select(t => t.Value)]);
    }
}
