using Fractions;

namespace ScNet;

/// <summary>Intervals made of others. Sums with an undetermined one are undetermined, those with an empty one are empty.</summary>
internal static class Intervals
{
    /// <summary>The interval that holds nothing: a hull starts from it.</summary>
    public static Interval<T> Empty<T>()
        where T : struct, IComparable<T>, IEquatable<T> => new(default, default, IntervalState.Empty);

    /// <summary>The interval of one value.</summary>
    public static Interval<T> Point<T>(T value)
        where T : struct, IComparable<T>, IEquatable<T> => new(value, value, IntervalState.Determined);

    /// <summary>All sums of a value of the one and a value of the other.</summary>
    public static Interval<Fraction> Plus(this Interval<Fraction> left, Interval<Fraction> right) =>
        left.IsDetermined && right.IsDetermined
            ? new(left.Minimum!.Value + right.Minimum!.Value, left.Maximum!.Value + right.Maximum!.Value, IntervalState.Determined)
            : left.IsEmpty || right.IsEmpty ? Empty<Fraction>() : default;

    /// <summary>All differences of a value of the one and a value of the other.</summary>
    public static Interval<Fraction> Minus(this Interval<Fraction> left, Interval<Fraction> right) =>
        left.Plus(right.IsDetermined ? new(-right.Maximum!.Value, -right.Minimum!.Value, IntervalState.Determined) : right);

    /// <summary>The interval moved by a value.</summary>
    public static Interval<Fraction> Plus(this Interval<Fraction> interval, Fraction value) =>
        interval.IsDetermined ? new(interval.Minimum!.Value + value, interval.Maximum!.Value + value, IntervalState.Determined) : interval;

    /// <summary>The interval moved by a value the other way.</summary>
    public static Interval<Fraction> Minus(this Interval<Fraction> interval, Fraction value) => interval.Plus(-value);

    /// <summary>The nearest doubles to both ends.</summary>
    public static Interval<double> ToDouble(this Interval<Fraction> interval) =>
        interval.IsDetermined ? new(interval.Minimum!.Value.ToDouble(), interval.Maximum!.Value.ToDouble()) : default;
}
