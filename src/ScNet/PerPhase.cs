using System.Collections;

namespace ScNet;

/// <summary>One entry per phase, found by phase number, from 1, or by phase name; they come in the order of the period.</summary>
/// <remarks>It is no list, since a list counts positions from 0 and phases count from 1.</remarks>
/// <typeparam name="T">What an entry is.</typeparam>
public sealed class PerPhase<T> : IEnumerable<T>, INamed
{
    private readonly T[] _items;
    private readonly NameIndex _phases;

    /// <summary>Takes over the entries, phase 1 first: nobody else may keep the array.</summary>
    internal PerPhase(T[] items, NameIndex phases)
    {
        _items = items;
        _phases = phases;
    }

    /// <summary>The number of phases.</summary>
    public int PhaseCount => _items.Length;

    /// <summary>The entry of a phase.</summary>
    /// <param name="number">The phase number, from 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no phase of this number.</exception>
    public T this[int number] => number >= 1 && number <= _items.Length
        ? _items[number - 1]
        : throw new ArgumentOutOfRangeException(nameof(number), number, $"Expected a phase number from 1 to {_items.Length}.");

    /// <summary>The entry of a phase.</summary>
    /// <param name="phase">The name of the phase; its number as text where it was given none.</param>
    /// <exception cref="ArgumentException">There is no phase of this name.</exception>
    public T this[string phase] => _items[_phases.Require(phase, nameof(phase))];

    /// <summary>The entries without a copy, phase 1 at index 0.</summary>
    internal ReadOnlySpan<T> AsSpan() => _items;

    NameIndex INamed.Names => _phases;

    /// <summary>The entries from phase 1 on.</summary>
    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)_items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>The entries in brackets.</summary>
    public override string ToString() => $"[{string.Join(", ", _items)}]";
}
