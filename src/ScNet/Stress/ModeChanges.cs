using System.Collections;

namespace ScNet.Stress;

/// <summary>The changes of every ordered pair of different modes, by old mode, then by new one, each found when it is first asked for.</summary>
internal sealed class ModeChanges : IReadOnlyList<ModeChange>
{
    private readonly IReadOnlyList<ModeStress> _modes;
    private readonly Lazy<ModeChange>[] _changes;

    public ModeChanges(IReadOnlyList<ModeStress> modes)
    {
        _modes = modes;
        int n = modes.Count;
        _changes = [.. Enumerable.Range(0, n * (n - 1)).Select(k => new Lazy<ModeChange>(() => Find(k)))];
    }

    public int Count => _changes.Length;

    public ModeChange this[int index] => _changes[index].Value;

    /// <summary>The change between two different modes, by position.</summary>
    public ModeChange Between(int from, int to) => this[(from * (_modes.Count - 1)) + to - (to > from ? 1 : 0)];

    /// <summary>How many were asked for.</summary>
    public int FoundCount => _changes.Count(c => c.IsValueCreated);

    /// <summary>Finds all of them, on as many threads as there are.</summary>
    public void FindAll(IProgress<double>? progress, CancellationToken cancellationToken)
    {
        int found = 0;
        ParallelLoop.Run(() => Parallel.ForEach(_changes, new ParallelOptions { CancellationToken = cancellationToken }, change =>
        {
            _ = change.Value;
            progress?.Report(Interlocked.Increment(ref found) / (double)_changes.Length);
        }));
    }

    public IEnumerator<ModeChange> GetEnumerator() => _changes.Select(c => c.Value).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    private ModeChange Find(int index)
    {
        (int from, int to) = Math.DivRem(index, _modes.Count - 1);
        return ModeChange.Of(_modes[from], _modes[to >= from ? to + 1 : to]);
    }
}
