using Fractions;

namespace ScNet;

/// <summary>Comparison of quantities by magnitude.</summary>
internal static class QuantityMagnitude
{
    /// <summary>The value of the largest magnitude, the positive one on a tie; undetermined if any is, zero if there is none.</summary>
    public static Quantity Peak(ReadOnlySpan<Quantity> values)
    {
        Quantity peak = Quantity.Zero;
        foreach (Quantity value in values)
        {
            if (!value.IsDetermined)
            {
                return Quantity.Undetermined;
            }

            int order = Compare(value, peak);
            if (order > 0 || (order == 0 && value.Sign > 0))
            {
                peak = value;
            }
        }

        return peak;
    }

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
