using Fractions;

namespace ScNet.Reconfiguration;

/// <summary>Gathers patterns by ratio from many threads. Which pattern is kept does not depend on the order in which they come.</summary>
internal sealed class RatioCollection(Converter converter)
{
    private readonly Dictionary<Fraction, Entry> _entries = [];
    private readonly PatternOrder _order = new(converter);

    public void Add(Fraction ratio, long count, List<PatternMeasure> patterns)
    {
        lock (_entries)
        {
            if (!_entries.TryGetValue(ratio, out Entry? entry))
            {
                _entries.Add(ratio, entry = new Entry(_order, patterns[0]));
            }

            entry.Count += count;
            foreach (PatternMeasure pattern in patterns)
            {
                entry.Offer(pattern);
            }
        }
    }

    public ReachableRatio[] ToArray() =>
        [.. _entries.OrderBy(e => e.Key).Select(e => e.Value.ToRatio(converter, e.Key))];

    private sealed class Entry(PatternOrder order, PatternMeasure first)
    {
        private PatternMeasure _slow = first;
        private PatternMeasure _fast = first;
        private PatternMeasure _stress = first;

        public long Count { get; set; }

        public void Offer(in PatternMeasure pattern)
        {
            _slow = order.BySlowLimit.Compare(pattern, _slow) < 0 ? pattern : _slow;
            _fast = order.ByFastLimit.Compare(pattern, _fast) < 0 ? pattern : _fast;
            _stress = order.ByStress.Compare(pattern, _stress) < 0 ? pattern : _stress;
        }

        public ReachableRatio ToRatio(Converter converter, Fraction ratio) => new(
            ratio,
            Count,
            Best(converter, _slow, order.BySlowLimit),
            Best(converter, _fast, order.ByFastLimit),
            Best(converter, _stress, order.ByStress));

        private static GatePattern Best(Converter converter, in PatternMeasure pattern, IComparer<PatternMeasure> by) =>
            GatePattern.Of(converter, pattern.First, pattern.Second).Thinned(by);
    }
}
