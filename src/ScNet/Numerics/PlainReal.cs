namespace ScNet.Numerics;

/// <summary>A double as an <see cref="IReal{T}"/>.</summary>
internal readonly struct PlainReal(double value) : IReal<PlainReal>
{
    private readonly double _value = value;

    public static double Rounding => 1.1102230246251565e-16;

    public double Nearest => _value;

    public bool IsZero => _value == 0;

    public static PlainReal Of(double value) => new(value);

    public static PlainReal Sqrt(PlainReal value) => new(Math.Sqrt(value._value));

    public static PlainReal operator +(PlainReal left, PlainReal right) => new(left._value + right._value);

    public static PlainReal operator -(PlainReal left, PlainReal right) => new(left._value - right._value);

    public static PlainReal operator -(PlainReal value) => new(-value._value);

    public static PlainReal operator *(PlainReal left, PlainReal right) => new(left._value * right._value);

    public static PlainReal operator /(PlainReal left, PlainReal right) => new(left._value / right._value);
}
