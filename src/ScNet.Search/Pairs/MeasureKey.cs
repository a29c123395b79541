using System.Runtime.Intrinsics;
using Fractions;

namespace ScNet.Search.Pairs;

/// <summary>The eight measures of a network as doubles that stand for fractions, in the order of <see cref="NetworkMeasures"/>.</summary>
/// <remarks>
/// Each is one correctly rounded quotient of whole numbers below 2^26. Two such fractions that differ do so by more
/// than 2^-52 of their value, so that their doubles are equal, smaller or larger just as the fractions are.
/// </remarks>
/// <param name="Upper">The first four.</param>
/// <param name="Lower">The last four.</param>
internal readonly record struct MeasureKey(Vector256<double> Upper, Vector256<double> Lower)
{
    /// <summary>The largest numerator or denominator.</summary>
    public const long Limit = 1 << 26;

    /// <summary>The measures of a network.</summary>
    public static MeasureKey Of(NetworkMeasures measures) => new(
        Vector256.Create(
            Quotient(measures.CapacitorChargeVoltage),
            Quotient(measures.SwitchChargeVoltage),
            measures.SwitchCount,
            Quotient(measures.HighestCapacitorVoltage)),
        Vector256.Create(
            Quotient(measures.HighestSwitchVoltage),
            Quotient(measures.PlateSwing),
            Quotient(measures.CapacitorCharge),
            Quotient(measures.SwitchCharge)));

    /// <summary>A quotient.</summary>
    public static double Quotient(long numerator, long denominator) =>
        numerator < Limit && denominator < Limit ? (double)numerator / denominator : throw new OverflowException("A measure is out of the range in which doubles stand for fractions.");

    private static double Quotient(Fraction fraction) => Quotient((long)fraction.Numerator, (long)fraction.Denominator);

    /// <summary>No measure is above the other's.</summary>
    public bool IsWithin(in MeasureKey other) => Vector256.LessThanOrEqualAll(Upper, other.Upper) && Vector256.LessThanOrEqualAll(Lower, other.Lower);

    /// <summary>A measure by its position.</summary>
    public double this[int measure] => measure < 4 ? Upper[measure] : Lower[measure - 4];
}
