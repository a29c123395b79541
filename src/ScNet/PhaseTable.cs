using System.Collections;

namespace ScNet;

/// <summary>The values of every element (or node) in every phase: index by element first, then by phase.</summary>
public sealed class PhaseTable : IReadOnlyList<PhaseValues>
{
    private readonly Quantity[] _values;
    private readonly int _phaseCount;

    // values[element · phaseCount + phase]
    internal PhaseTable(Quantity[] values, int elementCount, int phaseCount)
    {
        _values = values;
        Count = elementCount;
        _phaseCount = phaseCount;
    }

    /// <summary>The number of elements.</summary>
    public int Count { get; }

    /// <summary>The values of one element, in the order of the converter's list.</summary>
    public PhaseValues this[int index]
    {
        get
        {
            ArgumentOutOfRangeException.ThrowIfNegative(index);
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, Count);
            return new PhaseValues(_values, index * _phaseCount, _phaseCount);
        }
    }

    /// <inheritdoc/>
    public IEnumerator<PhaseValues> GetEnumerator()
    {
        for (int i = 0; i < Count; i++)
        {
            yield return this[i];
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>The values of every element in braces: "{[1/2, -1/2], [0, 1]}".</summary>
    public override string ToString() => $"{{{string.Join(", ", this)}}}";
}
