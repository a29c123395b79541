using System.Collections;
using System.Diagnostics.CodeAnalysis;

namespace ScNet;

/// <summary>A list that cannot be changed, whose entries are found by position, from 0, and by name.</summary>
/// <remarks>By position in constant time; by name in constant time too, after the first search of a long list.</remarks>
/// <typeparam name="T">What an entry is.</typeparam>
public sealed class NamedList<T> : IReadOnlyList<T>, INamed
{
    private readonly T[] _items;
    private readonly NameIndex _names;

    /// <summary>Takes over the entries: nobody else may keep the array.</summary>
    internal NamedList(T[] items, NameIndex names)
    {
        _items = items;
        _names = names;
    }

    /// <summary>The number of entries.</summary>
    public int Count => _items.Length;

    /// <summary>The entry at a position, from 0.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such position.</exception>
    public T this[int position] => (uint)position < (uint)_items.Length
        ? _items[position]
        : throw new ArgumentOutOfRangeException(nameof(position), position, $"Expected a position from 0 to {_items.Length - 1}.");

    /// <summary>The entry of a name.</summary>
    /// <exception cref="ArgumentException">There is no such name; the message says which one comes near.</exception>
    public T this[string name] => _items[_names.Require(name, nameof(name))];

    /// <summary>The names that the other lists over the same elements share.</summary>
    internal NameIndex Names => _names;

    NameIndex INamed.Names => _names;

    /// <summary>The entry of a name, where there is one.</summary>
    /// <param name="name">The name.</param>
    /// <param name="item">The entry, or the default where there is none.</param>
    /// <returns>Whether there is an entry of this name.</returns>
    public bool TryGet(string name, [MaybeNullWhen(false)] out T item)
    {
        int position = _names.Find(name);
        item = position >= 0 ? _items[position] : default;
        return position >= 0;
    }

    /// <summary>The position of a name, from 0.</summary>
    /// <exception cref="ArgumentException">There is no such name; the message says which one comes near.</exception>
    public int PositionOf(string name) => _names.Require(name, nameof(name));

    /// <summary>The entries in their order, without a copy.</summary>
    public ReadOnlySpan<T> AsSpan() => _items;

    /// <inheritdoc/>
    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)_items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>The entries in brackets.</summary>
    public override string ToString() => $"[{string.Join(", ", _items)}]";
}
