using System.Globalization;
using Fractions;

namespace ScNet;

/// <summary>A closed interval, from a minimum to a maximum. The default is the undetermined one: nothing bounds it.</summary>
/// <remarks>What it is an interval of, and its unit, is in the name of the member that holds it. Ends are compared exactly.</remarks>
/// <typeparam name="T">The type of the ends: <see cref="double"/> for what has a unit, <see cref="Fraction"/> for what is exact.</typeparam>
[ShownAsText("Two ends fit in a line.")]
public readonly struct Interval<T> : IEquatable<Interval<T>>
    where T : struct, IComparable<T>, IEquatable<T>
{
    private readonly T _minimum;
    private readonly T _maximum;
    private readonly IntervalState _state;

    /// <summary>Creates an interval with two ends.</summary>
    /// <param name="minimum">The smallest value in it.</param>
    /// <param name="maximum">The largest value in it, at least the smallest.</param>
    /// <exception cref="ArgumentOutOfRangeException">An end is no finite number, or the maximum is below the minimum.</exception>
    public Interval(T minimum, T maximum)
        : this(Finite(minimum, nameof(minimum)), Finite(maximum, nameof(maximum)), IntervalState.Determined)
    {
        if (maximum.CompareTo(minimum) < 0)
        {
            throw new ArgumentOutOfRangeException(nameof(maximum), maximum, $"Expected at least the minimum, {Text(minimum)}.");
        }
    }

    internal Interval(T minimum, T maximum, IntervalState state)
    {
        _minimum = minimum;
        _maximum = maximum;
        _state = state;
    }

    /// <summary>Whether there are ends.</summary>
    public bool IsDetermined => _state == IntervalState.Determined;

    /// <summary>Whether it holds one value only.</summary>
    public bool IsPoint => IsDetermined && _minimum.Equals(_maximum);

    /// <summary>The smallest value; null where the interval is undetermined.</summary>
    public T? Minimum => IsDetermined ? _minimum : null;

    /// <summary>The largest value; null where the interval is undetermined.</summary>
    public T? Maximum => IsDetermined ? _maximum : null;

    /// <summary>Whether nothing is in it: where a hull starts from.</summary>
    internal bool IsEmpty => _state == IntervalState.Empty;

    /// <summary>Whether a value is in it; false where it is undetermined.</summary>
    /// <param name="value">The value.</param>
    public bool Contains(T value) => IsDetermined && value.CompareTo(_minimum) >= 0 && value.CompareTo(_maximum) <= 0;

    /// <summary>The smallest interval that holds both; undetermined where one of them is.</summary>
    /// <param name="other">The other interval.</param>
    public Interval<T> Hull(Interval<T> other) =>
        IsEmpty ? other
        : other.IsEmpty ? this
        : !IsDetermined || !other.IsDetermined ? default
        : new(_minimum.CompareTo(other._minimum) < 0 ? _minimum : other._minimum,
            _maximum.CompareTo(other._maximum) > 0 ? _maximum : other._maximum,
            IntervalState.Determined);

    /// <inheritdoc/>
    public bool Equals(Interval<T> other) =>
        _state == other._state && (!IsDetermined || (_minimum.Equals(other._minimum) && _maximum.Equals(other._maximum)));

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Interval<T> other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => IsDetermined ? HashCode.Combine(_minimum, _maximum) : (int)_state;

    /// <summary>Whether both are the same interval.</summary>
    public static bool operator ==(Interval<T> left, Interval<T> right) => left.Equals(right);

    /// <summary>Whether they are different intervals.</summary>
    public static bool operator !=(Interval<T> left, Interval<T> right) => !left.Equals(right);

    /// <summary>"1.75 to 1.79" in six digits and the invariant culture, "1/3" where it is one value, "?" where it is undetermined.</summary>
    public override string ToString() => ToString(string.Empty);

    /// <summary>The same with a unit after each end: "1.75 V to 1.79 V".</summary>
    /// <param name="unit">The unit, or an empty text.</param>
    internal string ToString(string unit)
    {
        string after = unit.Length > 0 ? $" {unit}" : string.Empty;
        return !IsDetermined ? "?" : IsPoint ? $"{Text(_minimum)}{after}" : $"{Text(_minimum)}{after} to {Text(_maximum)}{after}";
    }

    private static string Text(T value) => value switch
    {
        Fraction fraction => Quantity.Exact(fraction).ToString(),
        IFormattable formattable => formattable.ToString("G6", CultureInfo.InvariantCulture),
        _ => $"{value}",
    };

    private static T Finite(T value, string name) => value is double number && !double.IsFinite(number)
        ? throw new ArgumentOutOfRangeException(name, value, "Expected a finite number.")
        : value;
}
