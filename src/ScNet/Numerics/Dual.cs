namespace ScNet.Numerics;

/// <summary>
/// A number with its derivative by one parameter: every operation carries both, so that a routine gives the exact
/// derivative of what it computes. Source: W. K. Clifford 1873; R. E. Wengert, Communications of the ACM 7, 1964 (from
/// memory).
/// </summary>
internal readonly struct Dual<T>(T value, T slope) : IReal<Dual<T>>
    where T : struct, IReal<T>
{
    public static double Rounding => T.Rounding;

    public T Value { get; } = value;

    public T Slope { get; } = slope;

    public double Nearest => Value.Nearest;

    public bool IsZero => Value.IsZero && Slope.IsZero;

    public static Dual<T> Of(double value) => new(T.Of(value), default);

    public static Dual<T> Sqrt(Dual<T> value)
    {
        T root = T.Sqrt(value.Value);
        return new(root, value.Slope / (root + root));
    }

    public static Dual<T> operator +(Dual<T> left, Dual<T> right) => new(left.Value + right.Value, left.Slope + right.Slope);

    public static Dual<T> operator -(Dual<T> left, Dual<T> right) => new(left.Value - right.Value, left.Slope - right.Slope);

    public static Dual<T> operator -(Dual<T> value) => new(-value.Value, -value.Slope);

    public static Dual<T> operator *(Dual<T> left, Dual<T> right) =>
        new(left.Value * right.Value, (left.Value * right.Slope) + (left.Slope * right.Value));

    public static Dual<T> operator /(Dual<T> left, Dual<T> right)
    {
        T quotient = left.Value / right.Value;
        return new(quotient, (left.Slope - (quotient * right.Slope)) / right.Value);
    }
}
