using System.Numerics;

namespace ScNet.Kernel;

/// <summary>Vectors of fractions that matter but for a factor, as whole numbers without a common divisor.</summary>
internal static class WholeNumbers
{
    /// <summary>The vector times a positive number.</summary>
    /// <exception cref="OverflowException">A machine integer does not hold an entry.</exception>
    public static Rational<T>[] Of<T>(Rational<T>[] values)
        where T : struct, IBinaryInteger<T>
    {
        bool hasOverflown = false;
        T common = T.One, content = T.Zero;
        foreach (Rational<T> value in values)
        {
            if (value.Denominator != T.One)
            {
                common = Integers.Multiply(common, value.Denominator / Integers.Gcd(common, value.Denominator), ref hasOverflown);
            }
        }

        var whole = new Rational<T>[values.Length];
        for (int k = 0; k < whole.Length; k++)
        {
            if (!values[k].IsZero)
            {
                whole[k] = Rational<T>.Multiply(values[k], common, ref hasOverflown);
                content = T.IsZero(content) ? T.Abs(whole[k].Numerator) : Integers.Gcd(content, whole[k].Numerator);
            }
        }

        for (int k = 0; k < whole.Length && content > T.One; k++)
        {
            whole[k] = Rational<T>.Of(whole[k].Numerator / content);
        }

        Integers.Demand(!hasOverflown);
        return whole;
    }

    /// <summary>Adds the vector so scaled as a row.</summary>
    /// <exception cref="OverflowException">A machine integer does not hold an entry.</exception>
    public static void AddTo<T>(SparseRows<T> rows, Rational<T>[] values)
        where T : struct, IBinaryInteger<T>
    {
        int row = rows.AddRow();
        Rational<T>[] whole = Of(values);
        for (int k = 0; k < whole.Length; k++)
        {
            if (!whole[k].IsZero)
            {
                rows.Append(row, k, whole[k].Numerator);
            }
        }
    }
}
