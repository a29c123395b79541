using Fractions;

namespace ScNet.Stress;

/// <summary>
/// The order in which a converter goes through all its modes with the smallest peak stress at a
/// change; among those with the smallest, one with the smallest sum.
/// </summary>
/// <remarks>
/// Exact, by dynamic programming over subsets (M. Held and R. M. Karp, J. SIAM 10, 1962, from memory):
/// first the smallest bottleneck, then the smallest sum over the changes within it. Time 2ⁿ·n², space 2ⁿ·n.
/// </remarks>
public sealed class ModeOrder
{
    /// <summary>The largest count of modes that are put in order.</summary>
    public const int MaximumModes = 14;

    private ModeOrder(ModeOrderCriterion criterion, bool isCycle, IReadOnlyList<Mode> modes, IReadOnlyList<ModeChange> changes, double? peakVolts)
    {
        Criterion = criterion;
        IsCycle = isCycle;
        Modes = modes;
        Changes = changes;
        PeakVolts = peakVolts;
    }

    /// <summary>What is kept small.</summary>
    public ModeOrderCriterion Criterion { get; }

    /// <summary>Whether the last mode leads back to the first.</summary>
    public bool IsCycle { get; }

    /// <summary>The modes in their order.</summary>
    public IReadOnlyList<Mode> Modes { get; }

    /// <summary>The changes in their order; in a cycle the last one leads back to the first mode.</summary>
    public IReadOnlyList<ModeChange> Changes { get; }

    /// <summary>The peak voltage in volts (V) of all changes; null where every order has an undetermined one.</summary>
    public double? PeakVolts { get; }

    /// <summary>"1/3, 1/2, 2/3: 0.6 V".</summary>
    public override string ToString() =>
        $"{string.Join(", ", Modes)}{(IsCycle ? ", and back" : string.Empty)}: {(PeakVolts is { } volts ? FormattableString.Invariant($"{volts:G6} V") : "?")}";

    /// <summary>Finds the order.</summary>
    /// <param name="modes">The modes.</param>
    /// <param name="change">The change between two of them, by index.</param>
    /// <param name="criterion">What is kept small.</param>
    /// <param name="isCycle">Whether the last mode leads back to the first.</param>
    internal static ModeOrder Of(IReadOnlyList<Mode> modes, Func<int, int, ModeChange> change, ModeOrderCriterion criterion, bool isCycle)
    {
        int n = modes.Count;
        var costs = new Fraction?[n, n];
        foreach (int a in Enumerable.Range(0, n))
        {
            foreach (int b in Enumerable.Range(0, n).Where(b => b != a))
            {
                costs[a, b] = change(a, b).Cost(criterion);
            }
        }

        int[] order = OrderSearch.Of(costs, isCycle);
        int count = isCycle && n > 1 ? n : n - 1;
        (int From, int To)[] pairs = [.. Enumerable.Range(0, count).Select(k => (order[k], order[(k + 1) % n]))];
        Fraction? largest = pairs.Aggregate(
            (Fraction?)Fraction.Zero, (worst, p) => costs[p.From, p.To] is { } cost && worst is { } known ? (cost > known ? cost : known) : null);
        return new ModeOrder(
            criterion, isCycle, [.. order.Select(m => modes[m])], [.. pairs.Select(p => change(p.From, p.To))], largest?.ToDouble());
    }
}
