using System.Collections;

namespace ScNet;

/// <summary>
/// One value per phase of one element, found by phase number, from 1, or by phase name; they come in the
/// order of the period. A view: it copies nothing.
/// </summary>
/// <remarks>It is no list, since a list counts positions from 0 and phases count from 1.</remarks>
public readonly struct PhaseValues : IEnumerable<Quantity>, IEquatable<PhaseValues>, INamed
{
    private static readonly NameIndex s_none = new(string.Empty, "phase", []);

    private readonly Quantity[]? _values;
    private readonly int _offset;
    private readonly NameIndex? _phases;

    internal PhaseValues(Quantity[] values, int offset, NameIndex phases)
    {
        _values = values;
        _offset = offset;
        _phases = phases;
    }

    NameIndex INamed.Names => _phases ?? s_none;

    /// <summary>The number of phases.</summary>
    public int PhaseCount => _phases?.Count ?? 0;

    /// <summary>The value in a phase.</summary>
    /// <param name="number">The phase number, from 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no phase of this number.</exception>
    public Quantity this[int number] => number >= 1 && number <= PhaseCount
        ? _values![_offset + number - 1]
        : throw new ArgumentOutOfRangeException(nameof(number), number, $"Expected a phase number from 1 to {PhaseCount}.");

    /// <summary>The value in a phase.</summary>
    /// <param name="phase">The name of the phase; its number as text where it was given none.</param>
    /// <exception cref="ArgumentException">There is no phase of this name.</exception>
    public Quantity this[string phase] => _phases is { } phases
        ? _values![_offset + phases.Require(phase, nameof(phase))]
        : throw new ArgumentException($"There is no phase '{phase}'.", nameof(phase));

    /// <summary>The values themselves, phase 1 at index 0.</summary>
    internal ReadOnlySpan<Quantity> AsSpan() => _values.AsSpan(_offset, PhaseCount);

    /// <summary>The value of the largest magnitude, the positive one on a tie; undetermined if any phase is.</summary>
    /// <remarks>An exact and a numeric value compare as doubles.</remarks>
    public Quantity Peak() => QuantityMagnitude.Peak(AsSpan());

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

    /// <summary>The values from phase 1 on.</summary>
    public IEnumerator<Quantity> GetEnumerator()
    {
        for (int j = 0; j < PhaseCount; j++)
        {
            yield return _values![_offset + j];
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
