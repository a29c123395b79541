namespace ScNet.Reconfiguration;

/// <summary>The orders by which the best pattern is chosen; every one ends in the pattern itself, so that ties are broken the same way always.</summary>
internal static class PatternOrder
{
    // Impedances that differ by rounding only count as equal.
    private const double Rounding = 1e-12;

    public static IComparer<GatePattern> BySlowLimit { get; } = Comparer<GatePattern>.Create((a, b) =>
        First(Ohms(a.SlowOhmsAtOneHertz, b.SlowOhmsAtOneHertz), Ohms(a.FastOhms, b.FastOhms), Stress(a, b), Effort(a, b)));

    public static IComparer<GatePattern> ByFastLimit { get; } = Comparer<GatePattern>.Create((a, b) =>
        First(Ohms(a.FastOhms, b.FastOhms), Ohms(a.SlowOhmsAtOneHertz, b.SlowOhmsAtOneHertz), Stress(a, b), Effort(a, b)));

    public static IComparer<GatePattern> ByStress { get; } = Comparer<GatePattern>.Create((a, b) =>
        First(Stress(a, b), Ohms(a.FastOhms, b.FastOhms), Ohms(a.SlowOhmsAtOneHertz, b.SlowOhmsAtOneHertz), Effort(a, b)));

    private static int First(params ReadOnlySpan<int> orders)
    {
        foreach (int order in orders)
        {
            if (order != 0)
            {
                return order;
            }
        }

        return 0;
    }

    private static int Ohms(double a, double b) => Math.Abs(a - b) <= Rounding * Math.Max(a, b) ? 0 : a.CompareTo(b);

    private static int Stress(GatePattern a, GatePattern b)
    {
        int order = a.UndeterminedSwitchCount.CompareTo(b.UndeterminedSwitchCount);
        return order != 0 || !a.PeakBlocking.IsDetermined || !b.PeakBlocking.IsDetermined
            ? order
            : QuantityMagnitude.Compare(a.PeakBlocking, b.PeakBlocking);
    }

    private static int Effort(GatePattern a, GatePattern b)
    {
        int order = a.ClosingCount.CompareTo(b.ClosingCount);
        return order != 0 ? order : string.CompareOrdinal(a.ToString(), b.ToString());
    }
}
