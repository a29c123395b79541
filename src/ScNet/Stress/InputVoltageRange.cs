using System.Globalization;
using Fractions;
using ScNet.Netlists;

namespace ScNet.Stress;

/// <summary>The input voltages at which a converter, or one mode of it, runs.</summary>
public sealed class InputVoltageRange
{
    /// <summary>Creates a range.</summary>
    /// <param name="minimumVolts">The lowest input voltage in volts (V), positive.</param>
    /// <param name="maximumVolts">The highest input voltage in volts (V), at least the lowest.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not positive, not from 1e-60 to 1e60, or the highest is below the lowest.</exception>
    public InputVoltageRange(double minimumVolts, double maximumVolts)
    {
        MinimumVolts = Guard.InRange(minimumVolts, allowZero: false, nameof(minimumVolts));
        MaximumVolts = Guard.InRange(maximumVolts, allowZero: false, nameof(maximumVolts));
        ArgumentOutOfRangeException.ThrowIfLessThan(maximumVolts, minimumVolts);
        ExactMinimum = ExactDecimal.Of(minimumVolts);
        ExactMaximum = ExactDecimal.Of(maximumVolts);
    }

    /// <summary>The lowest input voltage in volts (V).</summary>
    public double MinimumVolts { get; }

    /// <summary>The highest input voltage in volts (V).</summary>
    public double MaximumVolts { get; }

    /// <summary>The lowest voltage as the decimal written.</summary>
    internal Fraction ExactMinimum { get; }

    /// <summary>The highest voltage as the decimal written, so that a third of 3.6 V is 1.2 V and no more.</summary>
    internal Fraction ExactMaximum { get; }

    /// <summary>
    /// The voltages at which a mode of this range can follow one of the other: those common to both, or
    /// those between them where none is.
    /// </summary>
    internal InputVoltageRange Between(InputVoltageRange other)
    {
        double low = Math.Max(MinimumVolts, other.MinimumVolts), high = Math.Min(MaximumVolts, other.MaximumVolts);
        return new InputVoltageRange(Math.Min(low, high), Math.Max(low, high));
    }

    /// <summary>"2.8 V to 4.2 V", in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{MinimumVolts} V to {MaximumVolts} V");
}
