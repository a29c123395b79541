using Fractions;

namespace ScNet.Stress;

/// <summary>A closed interval of fractions, the empty one (the default), or the unbounded one.</summary>
internal readonly struct Interval : IEquatable<Interval>
{
    private readonly State _state;

    private Interval(State state, Fraction low, Fraction high)
    {
        _state = state;
        Low = low;
        High = high;
    }

    private enum State : byte
    {
        Empty,
        Bounded,
        Unbounded,
    }

    public static Interval Unbounded { get; } = new(State.Unbounded, Fraction.Zero, Fraction.Zero);

    public bool IsBounded => _state == State.Bounded;

    public Fraction Low { get; }

    public Fraction High { get; }

    public static Interval Point(Fraction value) => new(State.Bounded, value, value);

    public static Interval Of(Fraction low, Fraction high) => new(State.Bounded, low, high);

    /// <summary>The smallest interval that holds both.</summary>
    public Interval Hull(Interval other) =>
        _state == State.Unbounded || other._state == State.Empty ? this
        : _state == State.Empty || other._state == State.Unbounded ? other
        : Of(Low < other.Low ? Low : other.Low, High > other.High ? High : other.High);

    public static Interval operator +(Interval left, Interval right) =>
        left.IsBounded && right.IsBounded ? Of(left.Low + right.Low, left.High + right.High)
        : left._state == State.Empty || right._state == State.Empty ? default : Unbounded;

    public static Interval operator -(Interval value) => value.IsBounded ? Of(-value.High, -value.Low) : value;

    public static Interval operator -(Interval left, Interval right) => left + (-right);

    public static Interval operator +(Interval left, Fraction right) => left + Point(right);

    public static Interval operator -(Interval left, Fraction right) => left + Point(-right);

    public bool Equals(Interval other) =>
        _state == other._state && (_state != State.Bounded || (Low == other.Low && High == other.High));

    public override bool Equals(object? obj) => obj is Interval other && Equals(other);

    public override int GetHashCode() => HashCode.Combine(_state, Low, High);
}
