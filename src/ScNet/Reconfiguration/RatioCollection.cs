using Fractions;

namespace ScNet.Reconfiguration;

/// <summary>Gathers patterns by ratio from many threads. Which pattern is kept does not depend on the order in which they come.</summary>
internal sealed class RatioCollection
{
    private readonly Dictionary<Fraction, Entry> _entries = [];

    public void Add(Fraction ratio, long count, List<GatePattern> patterns)
    {
        lock (_entries)
        {
            if (!_entries.TryGetValue(ratio, out Entry? entry))
            {
                _entries.Add(ratio, entry = new Entry(patterns[0]));
            }

            entry.Count += count;
            foreach (GatePattern pattern in patterns)
            {
                entry.Offer(pattern);
            }
        }
    }

    public ReachableRatio[] ToArray() =>
        [.. _entries.OrderBy(e => e.Key).Select(e => e.Value.ToRatio(e.Key))];

    private sealed class Entry(GatePattern first)
    {
        private GatePattern _slow = first;
        private GatePattern _fast = first;
        private GatePattern _stress = first;

        public long Count { get; set; }

        public void Offer(GatePattern pattern)
        {
            _slow = PatternOrder.BySlowLimit.Compare(pattern, _slow) < 0 ? pattern : _slow;
            _fast = PatternOrder.ByFastLimit.Compare(pattern, _fast) < 0 ? pattern : _fast;
            _stress = PatternOrder.ByStress.Compare(pattern, _stress) < 0 ? pattern : _stress;
        }

        public ReachableRatio ToRatio(Fraction ratio) => new(
            ratio,
            Count,
            _slow.Thinned(PatternOrder.BySlowLimit),
            _fast.Thinned(PatternOrder.ByFastLimit),
            _stress.Thinned(PatternOrder.ByStress));
    }
}
