using System.Numerics;
using Fractions;
using ScNet.Kernel;

namespace ScNet;

/// <summary>Exact numbers of the kernel as users see them.</summary>
internal static class RationalQuantities
{
    extension<T>(Rational<T> value)
        where T : struct, IBinaryInteger<T>
    {
        /// <summary>The same number as a quantity.</summary>
        public Quantity ToQuantity() => typeof(T) == typeof(long)
            ? Quantity.OfReduced(long.CreateTruncating(value.Numerator), long.CreateTruncating(value.Denominator))
            : Quantity.Exact(new Fraction(BigInteger.CreateChecked(value.Numerator), BigInteger.CreateChecked(value.Denominator), false));

        /// <summary>The nearest double.</summary>
        public double ToDouble() => value.ToQuantity().ToDouble();
    }
}
