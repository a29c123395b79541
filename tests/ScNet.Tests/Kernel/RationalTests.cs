using System.Numerics;
using CsCheck;
using Fractions;
using ScNet.Kernel;

namespace ScNet.Tests.Kernel;

[Trait("Kind", "Law")]
public class RationalTests
{
    private static readonly Gen<Rational<BigInteger>> s_big =
        Gen.Select(Gen.Long, Gen.Long[1, long.MaxValue], (n, d) => Rational<BigInteger>.Of(n, d));

    private static readonly Gen<Rational<long>> s_small =
        Gen.Select(Gen.Long[-1000, 1000], Gen.Frequency((1, Gen.Long[1, 1000]), (1, Gen.Long[-1000, -1])), Rational<long>.Of);

    // many values on the edges of the machine's range
    private static readonly Gen<long> s_edge = Gen.Frequency(
        (3, Gen.Long[-9, 9]), (1, Gen.Long), (1, Gen.Long[long.MinValue, long.MinValue + 3]), (1, Gen.Long[long.MaxValue - 3, long.MaxValue]));

    private static Fraction F<T>(Rational<T> value)
        where T : struct, IBinaryInteger<T> => new(BigInteger.CreateChecked(value.Numerator), BigInteger.CreateChecked(value.Denominator));

    private static void IsReduced<T>(Rational<T> value)
        where T : struct, IBinaryInteger<T>
    {
        Assert.True(value.Denominator > T.Zero);
        Assert.Equal(BigInteger.One, BigInteger.GreatestCommonDivisor(BigInteger.CreateChecked(value.Numerator), BigInteger.CreateChecked(value.Denominator)));
    }

    private static void Agrees<T>(Fraction expected, Rational<T> actual)
        where T : struct, IBinaryInteger<T>
    {
        Assert.Equal(expected, F(actual));
        IsReduced(actual);
    }

    private static void OperationsAgree<T>(Rational<T> a, Rational<T> b, T whole)
        where T : struct, IBinaryInteger<T>
    {
        Fraction w = new(BigInteger.CreateChecked(whole));
        Agrees(F(a) + F(b), a + b);
        Agrees(F(a) - F(b), a - b);
        Agrees(F(a) * F(b), a * b);
        Agrees(-F(a), -a);
        Agrees(F(a) * w, a * whole);
        if (!T.IsZero(whole))
        {
            Agrees(F(a) / w, a / whole);
        }

        Assert.Equal(F(a) == F(b), a.Equals(b));
        Assert.Equal(a.IsZero, F(a).IsZero);
    }

    [Fact]
    public void Operations_on_machine_integers_agree_with_the_fraction_package() =>
        Gen.Select(s_small, s_small, Gen.Long[-50, 50]).Holds(OperationsAgree);

    [Fact]
    public void Operations_on_big_integers_agree_with_the_fraction_package() =>
        Gen.Select(s_big, s_big, Gen.Long).Holds((a, b, whole) => OperationsAgree(a, b, whole));

    [Fact]
    public void An_operation_on_machine_integers_is_right_or_throws_an_overflow()
    {
        int right = 0, overflown = 0;
        Gen.Select(s_edge, s_edge, s_edge, s_edge, s_edge).Holds(drawn =>
        {
            (long a, long b, long c, long d, long whole) = drawn;
            if (b == 0 || d == 0)
            {
                return;
            }

            try
            {
                OperationsAgree(Rational<long>.Of(a, b), Rational<long>.Of(c, d), whole);
                Interlocked.Increment(ref right);
            }
            catch (OverflowException)
            {
                Interlocked.Increment(ref overflown);
            }
        });
        Assert.True(right > 5 && overflown > 5, $"{right} right, {overflown} overflown");
    }

    [Fact]
    public void Fractions_form_a_field() => Gen.Select(s_big, s_big, s_big).Holds((a, b, c) =>
    {
        Assert.Equal(a + b, b + a);
        Assert.Equal(a * b, b * a);
        Assert.Equal((a + b) + c, a + (b + c));
        Assert.Equal((a * b) * c, a * (b * c));
        Assert.Equal(a * (b + c), (a * b) + (a * c));
        Assert.Equal(a, a + Rational<BigInteger>.Zero);
        Assert.Equal(a, a * Rational<BigInteger>.One);
        Assert.Equal(Rational<BigInteger>.Zero, a - a);
        if (!a.IsZero)
        {
            Assert.Equal(Rational<BigInteger>.One, a * Rational<BigInteger>.Of(a.Denominator, a.Numerator));
        }
    });

    [Fact]
    public void Equal_values_have_equal_hashes_however_they_were_made() => Gen.Select(Gen.Long[-99, 99], Gen.Long[1, 99], Gen.Long[1, 99]).Holds((n, d, k) =>
    {
        Rational<long> plain = Rational<long>.Of(n, d), scaled = Rational<long>.Of(-n * k, -d * k);
        Assert.Equal(plain, scaled);
        Assert.Equal(plain.GetHashCode(), scaled.GetHashCode());
        Assert.True(plain.Equals((object)scaled));
    });

    [Fact]
    public void A_square_is_the_product_with_itself()
    {
        Rational<long> third = Rational<long>.Of(-2, 3);
        Assert.Equal(third * third, third.Squared());
        Assert.Throws<OverflowException>(() => Rational<long>.Of(1L << 32, 3).Squared());
    }

    [Fact]
    public void The_default_value_is_zero()
    {
        Rational<long> zero = default;
        Assert.Equal(Rational<long>.Zero, zero);
        Assert.Equal(1, zero.Denominator);
        Assert.Equal("0/1", zero.ToString());
        Assert.Equal(Quantity.Zero, zero.ToQuantity());
    }

    [Fact]
    public void Negating_the_smallest_machine_integer_overflows()
    {
        Rational<long> smallest = Rational<long>.Of(long.MinValue);
        Assert.Throws<OverflowException>(() => -smallest);
        Assert.Throws<OverflowException>(() => Rational<long>.Of(1, long.MinValue));
        Assert.Throws<OverflowException>(() => smallest + smallest);
        Assert.Throws<OverflowException>(() => smallest * Rational<long>.Of(3));
        Assert.Equal(long.MinValue, (smallest * 1).Numerator);
    }

    [Fact]
    public void Conversions_keep_the_value() => Gen.Select(Gen.Long, Gen.Long[1, long.MaxValue]).Holds((n, d) =>
    {
        Fraction value = new(n, d);
        Assert.Equal(Quantity.Exact(value), Rational<BigInteger>.Of(value).ToQuantity());
        Assert.Equal(value, Rational<long>.Of(value).ToQuantity().ToFraction());
        Assert.Equal(value.ToDouble(), Rational<long>.Of(value).ToDouble(), Math.Abs(value.ToDouble()) * 4e-16);
    });

    [Fact]
    public void A_fraction_too_long_for_machine_integers_overflows_on_entry() =>
        Assert.Throws<OverflowException>(() => Rational<long>.Of(new Fraction(BigInteger.Pow(10, 30), 7)));
}
