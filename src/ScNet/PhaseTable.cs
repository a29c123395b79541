using System.Collections;

namespace ScNet;

/// <summary>The values of every element (or node) in every phase: elements by position, from 0, or by name; then by phase.</summary>
public sealed class PhaseTable : IReadOnlyList<PhaseValues>, INamed
{
    private readonly Quantity[] _values;
    private readonly NameIndex _elements;
    private readonly NameIndex _phases;

    // values[element · phases + phase]
    internal PhaseTable(Quantity[] values, NameIndex elements, NameIndex phases)
    {
        _values = values;
        _elements = elements;
        _phases = phases;
    }

    NameIndex INamed.Names => _elements;

    /// <summary>The number of elements.</summary>
    public int Count => _elements.Count;

    /// <summary>The values of one element, in the order of the converter's list.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such position.</exception>
    public PhaseValues this[int position] => (uint)position < (uint)Count
        ? new PhaseValues(_values, position * _phases.Count, _phases)
        : throw new ArgumentOutOfRangeException(nameof(position), position, $"Expected a position from 0 to {Count - 1}.");

    /// <summary>The values of the element of a name.</summary>
    /// <exception cref="ArgumentException">There is no such name; the message says which one comes near.</exception>
    public PhaseValues this[string name] => this[_elements.Require(name, nameof(name))];

    /// <summary>The values of the element of a name, where there is one.</summary>
    /// <param name="name">The name.</param>
    /// <param name="values">The values, none where there is no such element.</param>
    /// <returns>Whether there is an element of this name.</returns>
    public bool TryGet(string name, out PhaseValues values)
    {
        int position = _elements.Find(name);
        values = position >= 0 ? this[position] : default;
        return position >= 0;
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
