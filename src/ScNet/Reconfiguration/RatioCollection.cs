using Fractions;

namespace ScNet.Reconfiguration;

/// <summary>Gathers patterns by ratio from many threads. Which pattern is kept does not depend on the order in which they come.</summary>
internal sealed class RatioCollection
{
    private readonly Dictionary<Fraction, Entry> _entries = [];

    public void Add(Fraction ratio, long count, IEnumerable<GatePattern> patterns)
    {
        GatePattern[] own = [.. patterns];
        lock (_entries)
        {
            if (!_entries.TryGetValue(ratio, out Entry? entry))
            {
                _entries.Add(ratio, entry = new Entry(own[0]));
            }

            entry.Count += count;
            foreach (GatePattern pattern in own)
            {
                entry.Offer(pattern);
            }
        }
    }

    public ReachableRatio[] ToArray() =>
        [.. _entries.OrderBy(e => e.Key).Select(e => new ReachableRatio(e.Key, e.Value.Count, e.Value.Slow, e.Value.Fast, e.Value.Stress))];

    private sealed class Entry(GatePattern first)
    {
        public long Count { get; set; }

        public GatePattern Slow { get; private set; } = first;

        public GatePattern Fast { get; private set; } = first;

        public GatePattern Stress { get; private set; } = first;

        public void Offer(GatePattern pattern)
        {
            Slow = PatternOrder.BySlowLimit.Compare(pattern, Slow) < 0 ? pattern : Slow;
            Fast = PatternOrder.ByFastLimit.Compare(pattern, Fast) < 0 ? pattern : Fast;
            Stress = PatternOrder.ByStress.Compare(pattern, Stress) < 0 ? pattern : Stress;
        }
    }
}
