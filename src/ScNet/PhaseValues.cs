using System.Collections;

namespace ScNet;

/// <summary>One value per phase of one element: phase 1 at index 0. A view; it copies nothing.</summary>
public readonly struct PhaseValues : IReadOnlyList<Quantity>, IEquatable<PhaseValues>
{
    private readonly Quantity[]? _values;
    private readonly int _offset;

    internal PhaseValues(Quantity[] values, int offset, int count)
    {
        _values = values;
        _offset = offset;
        Count = count;
    }

    /// <summary>The number of phases.</summary>
    public int Count { get; }

    /// <summary>The value in the phase of number <paramref name="index"/> + 1.</summary>
    public Quantity this[int index]
    {
        get
        {
            ArgumentOutOfRangeException.ThrowIfNegative(index);
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, Count);
            return _values![_offset + index];
        }
    }

    /// <summary>The value in a phase.</summary>
    /// <param name="number">The phase number, from 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no phase of this number.</exception>
    public Quantity InPhase(int number) => number >= 1 && number <= Count
        ? this[number - 1]
        : throw new ArgumentOutOfRangeException(nameof(number), number, $"Expected a phase number from 1 to {Count}.");

    /// <summary>The values themselves, phase 1 first.</summary>
    public ReadOnlySpan<Quantity> AsSpan() => _values.AsSpan(_offset, Count);

    /// <summary>The value of the largest magnitude, the positive one on a tie; undetermined if any phase is.</summary>
    /// <remarks>An exact and a numeric value compare as doubles.</remarks>
    public Quantity Peak()
    {
        Quantity peak = Quantity.Zero;
        foreach (Quantity value in AsSpan())
        {
            if (!value.IsDetermined)
            {
                return Quantity.Undetermined;
            }

            int order = QuantityMagnitude.Compare(value, peak);
            if (order > 0 || (order == 0 && value.Sign > 0))
            {
                peak = value;
            }
        }

        return peak;
    }

    /// <inheritdoc/>
    public bool Equals(PhaseValues other) => AsSpan().SequenceEqual(other.AsSpan());

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is PhaseValues other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        HashCode hash = default;
        foreach (Quantity value in AsSpan())
        {
            hash.Add(value);
        }

        return hash.ToHashCode();
    }

    /// <summary>Whether the values of every phase are equal.</summary>
    public static bool operator ==(PhaseValues left, PhaseValues right) => left.Equals(right);

    /// <summary>Whether the values of some phase differ.</summary>
    public static bool operator !=(PhaseValues left, PhaseValues right) => !left.Equals(right);

    /// <summary>The values in brackets: "[1/2, -1/2]".</summary>
    public override string ToString() => $"[{string.Join(", ", this)}]";

    /// <inheritdoc/>
    public IEnumerator<Quantity> GetEnumerator()
    {
        for (int j = 0; j < Count; j++)
        {
            yield return _values![_offset + j];
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
