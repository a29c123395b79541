using Fractions;

namespace ScNet;

/// <summary>Comparison of quantities by magnitude.</summary>
internal static class QuantityMagnitude
{
    /// <summary>The order of two determined magnitudes: exact where both are exact, as doubles otherwise.</summary>
    public static int Compare(Quantity left, Quantity right)
    {
        if (left.Sign == 0 || right.Sign == 0)
        {
            // the frequent case, a closed switch, needs no fractions
            return Math.Abs(left.Sign) - Math.Abs(right.Sign);
        }

        return left.TryGetFraction(out Fraction a) && right.TryGetFraction(out Fraction b)
            ? a.Abs().CompareTo(b.Abs())
            : Math.Abs(left.ToDouble()).CompareTo(Math.Abs(right.ToDouble()));
    }
}
