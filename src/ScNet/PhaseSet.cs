using System.Collections;
using System.Runtime.CompilerServices;

namespace ScNet;

/// <summary>
/// The phases in which a switch is closed, by number from 1, ascending and without repeats. A single
/// number converts by itself; several are written <c>[1, 3]</c>. The default is no phase at all.
/// </summary>
[CollectionBuilder(typeof(PhaseSet), nameof(Of))]
[ShownAsText("A few numbers fit in a line.")]
public readonly struct PhaseSet : IEquatable<PhaseSet>, IReadOnlyList<int>
{
    private readonly int[]? _numbers;

    private PhaseSet(int[] numbers) => _numbers = numbers;

    /// <summary>No phase: the switch stays open.</summary>
    public static PhaseSet None => default;

    /// <summary>How many phases the set holds.</summary>
    public int Count => _numbers?.Length ?? 0;

    /// <summary>The phase number at a position of the ascending order.</summary>
    /// <param name="index">From 0 to <see cref="Count"/> - 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such position.</exception>
    public int this[int index] => (uint)index < (uint)Count ? _numbers![index] : throw new ArgumentOutOfRangeException(nameof(index), index, $"Expected a position below {Count}.");

    /// <summary>The set of the given phase numbers; order and repeats do not matter.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number is below 1.</exception>
    public static PhaseSet Of(params ReadOnlySpan<int> numbers)
    {
        int[] sorted = numbers.ToArray();
        Array.Sort(sorted);
        if (sorted.Length > 0 && sorted[0] < 1)
        {
            throw new ArgumentOutOfRangeException(nameof(numbers), sorted[0], "Expected phase numbers from 1.");
        }

        int count = 0;
        foreach (int number in sorted)
        {
            if (count == 0 || sorted[count - 1] != number)
            {
                sorted[count++] = number;
            }
        }

        return new PhaseSet(sorted[..count]);
    }

    /// <summary>The set of one phase.</summary>
    public static implicit operator PhaseSet(int number) => Of(number);

    /// <summary>The set of one phase.</summary>
    public static PhaseSet FromInt32(int number) => Of(number);

    /// <summary>Whether the phase is in the set.</summary>
    /// <param name="number">A phase number, from 1.</param>
    public bool Contains(int number) => Array.BinarySearch(_numbers ?? [], number) >= 0;

    /// <inheritdoc/>
    public bool Equals(PhaseSet other) => (_numbers ?? []).AsSpan().SequenceEqual(other._numbers ?? []);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is PhaseSet other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        HashCode hash = default;
        foreach (int number in _numbers ?? [])
        {
            hash.Add(number);
        }

        return hash.ToHashCode();
    }

    /// <summary>Whether two sets hold the same phases.</summary>
    public static bool operator ==(PhaseSet left, PhaseSet right) => left.Equals(right);

    /// <summary>Whether two sets differ.</summary>
    public static bool operator !=(PhaseSet left, PhaseSet right) => !left.Equals(right);

    /// <summary>The numbers in brackets: "[1, 3]".</summary>
    public override string ToString() => $"[{string.Join(", ", _numbers ?? [])}]";

    /// <inheritdoc/>
    public IEnumerator<int> GetEnumerator() => ((IEnumerable<int>)(_numbers ?? [])).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
