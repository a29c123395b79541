using Fractions;

namespace ScNet;

/// <summary>
/// Arithmetic that keeps the three outcomes apart: exact with exact stays exact, undetermined with
/// anything stays undetermined, everything else is a number.
/// </summary>
internal static class QuantityArithmetic
{
    public static Quantity Abs(Quantity value) => value.IsDetermined && value.Sign < 0 ? -value : value;

    public static Quantity Add(Quantity left, Quantity right) =>
        left.TryGetFraction(out Fraction a) && right.TryGetFraction(out Fraction b) ? Quantity.Exact(a + b)
        : left.IsDetermined && right.IsDetermined ? Quantity.Numeric(left.ToDouble() + right.ToDouble())
        : Quantity.Undetermined;

    /// <summary>The product. Zero times an undetermined value is zero: every finite value gives that.</summary>
    public static Quantity Multiply(Quantity left, Quantity right) =>
        IsZero(left) || IsZero(right) ? Quantity.Zero
        : left.TryGetFraction(out Fraction a) && right.TryGetFraction(out Fraction b) ? Quantity.Exact(a * b)
        : left.IsDetermined && right.IsDetermined ? Quantity.Numeric(left.ToDouble() * right.ToDouble())
        : Quantity.Undetermined;

    /// <summary>The quotient; undetermined where the divisor is zero.</summary>
    public static Quantity Divide(Quantity left, Quantity right) =>
        IsZero(right) ? Quantity.Undetermined
        : left.TryGetFraction(out Fraction a) && right.TryGetFraction(out Fraction b) ? Quantity.Exact(a / b)
        : left.IsDetermined && right.IsDetermined ? Quantity.Numeric(left.ToDouble() / right.ToDouble())
        : Quantity.Undetermined;

    private static bool IsZero(Quantity value) => value.IsDetermined && value.Sign == 0;
}
