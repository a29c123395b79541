using ScNet.Derivations.Snapshots;

namespace ScNet.Derivations;

/// <summary>
/// What changed between two snapshots: fractions are compared exactly, numbers within a relative tolerance.
/// A mode or an element that is new or gone is one change, not one per value.
/// </summary>
public sealed class AnalysisDifference : IEquatable<AnalysisDifference>
{
    /// <summary>The relative tolerance for numbers, where none is given.</summary>
    public const double DefaultTolerance = 1e-9;

    private readonly AnalysisSnapshot _before;
    private readonly AnalysisSnapshot _after;
    private readonly List<SnapshotChange> _changes = [];

    private AnalysisDifference(AnalysisSnapshot before, AnalysisSnapshot after, double relativeTolerance)
    {
        _before = before;
        _after = after;
        RelativeTolerance = relativeTolerance;
    }

    /// <summary>The changes, mode after mode.</summary>
    public IReadOnlyList<SnapshotChange> Changes => _changes.AsReadOnly();

    /// <summary>Whether nothing changed.</summary>
    public bool IsEmpty => _changes.Count == 0;

    /// <summary>The relative tolerance within which numbers count as equal.</summary>
    public double RelativeTolerance { get; }

    /// <summary>The names of the converters before and after.</summary>
    internal (string Before, string After) Converters => (_before.Converter, _after.Converter);

    /// <summary>Compares two snapshots.</summary>
    /// <param name="before">The earlier one.</param>
    /// <param name="after">The later one.</param>
    /// <param name="relativeTolerance">Numbers that differ by no more than this share of the larger one count as equal.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is not from 0 to below 1.</exception>
    public static AnalysisDifference Between(AnalysisSnapshot before, AnalysisSnapshot after, double relativeTolerance = DefaultTolerance)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        if (relativeTolerance is not (>= 0 and < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(relativeTolerance), relativeTolerance, "Expected a relative tolerance from 0 to below 1.");
        }

        AnalysisDifference difference = new(before, after, relativeTolerance);
        difference.Compare();
        return difference;
    }

    /// <inheritdoc/>
    public bool Equals(AnalysisDifference? other) => other is not null && _after.Converter == other._after.Converter && _changes.SequenceEqual(other._changes);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as AnalysisDifference);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(_after.Converter, _changes.Count);

    /// <summary>How much changed, then every change, mode after mode.</summary>
    public override string ToString()
    {
        List<string> lines = [$"{_after.Converter}: {(IsEmpty ? "no change" : _changes.Count == 1 ? "1 change" : $"{_changes.Count} changes")}"];
        string? mode = null;
        foreach (SnapshotChange change in _changes)
        {
            if (change.Mode is not null && change.Mode != mode)
            {
                lines.Add($"  mode {change.Mode}");
            }

            mode = change.Mode;
            lines.Add(change.Mode is null ? $"  {change}" : $"    {change}");
        }

        return string.Join('\n', lines);
    }

    private void Compare()
    {
        if (_before.Converter != _after.Converter)
        {
            _changes.Add(new SnapshotChange(null, null, "converter", _before.Converter, _after.Converter, Quantity.Undetermined));
        }

        Dictionary<string, SnapshotMode> earlier = _before.Modes.ToDictionary(m => m.Name);
        foreach (SnapshotMode mode in _after.Modes)
        {
            if (!earlier.Remove(mode.Name, out SnapshotMode? before))
            {
                _changes.Add(Word(mode.Name, null, "mode", null, string.Empty));
            }
            else if (before.HasResult && mode.HasResult)
            {
                if (before.DeterminedBy != mode.DeterminedBy)
                {
                    _changes.Add(Word(mode.Name, null, "flow decided by", before.DeterminedBy, mode.DeterminedBy));
                }

                CompareValues(mode.Name, before.Entries, mode.Entries);
            }
            else if (before.HasResult != mode.HasResult)
            {
                _changes.Add(Word(mode.Name, null, "result", before.HasResult ? string.Empty : null, mode.HasResult ? string.Empty : null));
            }
        }

        _changes.AddRange(earlier.Values.Select(m => Word(m.Name, null, "mode", string.Empty, null)));
    }

    private void CompareValues(string mode, IReadOnlyList<SnapshotEntry> before, IReadOnlyList<SnapshotEntry> after)
    {
        HashSet<string> oldElements = Elements(before), elements = Elements(after);
        _changes.AddRange(oldElements.Except(elements).Select(e => Word(mode, e, e, string.Empty, null)));
        _changes.AddRange(elements.Except(oldElements).Select(e => Word(mode, e, e, null, string.Empty)));
        Dictionary<SnapshotKey, SnapshotEntry> old = before.DistinctBy(e => e.Key).ToDictionary(e => e.Key);
        foreach (SnapshotEntry entry in after.DistinctBy(e => e.Key))
        {
            bool isOld = old.Remove(entry.Key, out SnapshotEntry earlier);
            if (isOld && !AreEqual(earlier.Value, entry.Value))
            {
                _changes.Add(SnapshotChange.Of(mode, earlier, entry));
            }
            else if (!isOld && (entry.Key.Element is null || oldElements.Contains(entry.Key.Element)))
            {
                _changes.Add(Word(mode, entry.Key.Element, entry.Key.Description, null, entry.Text));
            }
        }

        _changes.AddRange(old.Values.Where(e => e.Key.Element is null || elements.Contains(e.Key.Element))
            .Select(e => Word(mode, e.Key.Element, e.Key.Description, e.Text, null)));
    }

    private static HashSet<string> Elements(IEnumerable<SnapshotEntry> entries) => [.. entries.Select(e => e.Key.Element).OfType<string>()];

    private static SnapshotChange Word(string mode, string? element, string description, string? before, string? after) =>
        new(mode, element, description, before, after, Quantity.Undetermined);

    private bool AreEqual(Quantity before, Quantity after)
    {
        if (!before.IsDetermined || !after.IsDetermined || (before.IsExact && after.IsExact))
        {
            return before == after;
        }

        double a = before.ToDouble(), b = after.ToDouble();
        return Math.Abs(a - b) <= RelativeTolerance * Math.Max(Math.Abs(a), Math.Abs(b));
    }
}
