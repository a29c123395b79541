namespace ScNet.Reconfiguration;

/// <summary>The orders by which the best pattern is chosen; every one ends in the pattern itself, so that ties are broken the same way always.</summary>
internal sealed class PatternOrder
{
    // Impedances that differ by rounding only count as equal.
    private const double Rounding = 1e-12;

    private readonly Converter _converter;

    public PatternOrder(Converter converter)
    {
        _converter = converter;
        BySlowLimit = Comparer<PatternMeasure>.Create((a, b) => Slow(a, b) is not 0 and int slow ? slow : Fast(a, b) is not 0 and int fast ? fast
            : Stress(a, b) is not 0 and int stress ? stress : Effort(a, b));
        ByFastLimit = Comparer<PatternMeasure>.Create((a, b) => Fast(a, b) is not 0 and int fast ? fast : Slow(a, b) is not 0 and int slow ? slow
            : Stress(a, b) is not 0 and int stress ? stress : Effort(a, b));
        ByStress = Comparer<PatternMeasure>.Create((a, b) => Stress(a, b) is not 0 and int stress ? stress : Fast(a, b) is not 0 and int fast ? fast
            : Slow(a, b) is not 0 and int slow ? slow : Effort(a, b));
    }

    public IComparer<PatternMeasure> BySlowLimit { get; }

    public IComparer<PatternMeasure> ByFastLimit { get; }

    public IComparer<PatternMeasure> ByStress { get; }

    private static int Slow(in PatternMeasure a, in PatternMeasure b) => Ohms(a.SlowOhmsAtOneHertz, b.SlowOhmsAtOneHertz);

    private static int Fast(in PatternMeasure a, in PatternMeasure b) => Ohms(a.FastOhms, b.FastOhms);

    private static int Ohms(double a, double b) => Math.Abs(a - b) <= Rounding * Math.Max(a, b) ? 0 : a.CompareTo(b);

    private static int Stress(in PatternMeasure a, in PatternMeasure b)
    {
        int order = a.UndeterminedSwitchCount.CompareTo(b.UndeterminedSwitchCount);
        return order != 0 ? order : a.PeakBlocking.CompareTo(b.PeakBlocking);
    }

    private int Effort(in PatternMeasure a, in PatternMeasure b)
    {
        int order = a.ClosingCount.CompareTo(b.ClosingCount);
        return order != 0 || (a.First == b.First && a.Second == b.Second)
            ? order
            : string.CompareOrdinal(GatePattern.Text(_converter, a.First, a.Second), GatePattern.Text(_converter, b.First, b.Second));
    }
}
