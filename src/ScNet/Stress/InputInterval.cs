using Fractions;

namespace ScNet.Stress;

/// <summary>Intervals of the input voltage in volts (V).</summary>
internal static class InputInterval
{
    /// <summary>Gives an interval of input voltages back, or throws where an end is not positive, not from 1e-60 to 1e60, or missing.</summary>
    public static Interval<double> Check(Interval<double> inputVolts, string parameterName)
    {
        if (!inputVolts.IsDetermined)
        {
            throw new ArgumentOutOfRangeException(parameterName, inputVolts, "Expected an interval with two ends.");
        }

        Guard.InRange(inputVolts.Minimum!.Value, allowZero: false, parameterName);
        Guard.InRange(inputVolts.Maximum!.Value, allowZero: false, parameterName);
        return inputVolts;
    }

    /// <summary>Both ends as the decimals written, so that a third of 3.6 V is 1.2 V and no more.</summary>
    public static Interval<Fraction> Exact(Interval<double> inputVolts) => new(ExactDecimal.Of(inputVolts.Minimum!.Value), ExactDecimal.Of(inputVolts.Maximum!.Value));

    /// <summary>
    /// The voltages at which a mode of one interval can follow one of the other: those common to both, or
    /// those between them where none is.
    /// </summary>
    public static Interval<double> Between(Interval<double> left, Interval<double> right)
    {
        double a = Math.Max(left.Minimum!.Value, right.Minimum!.Value), b = Math.Min(left.Maximum!.Value, right.Maximum!.Value);
        return new(Math.Min(a, b), Math.Max(a, b));
    }

    /// <summary>All products of a voltage per volt of input with an input voltage.</summary>
    public static Interval<Fraction> Scale(Interval<Fraction> perVoltOfInput, Interval<Fraction> input) => !perVoltOfInput.IsDetermined
        ? default
        : new(
            perVoltOfInput.Minimum!.Value * (perVoltOfInput.Minimum!.Value.IsNegative ? input.Maximum!.Value : input.Minimum!.Value),
            perVoltOfInput.Maximum!.Value * (perVoltOfInput.Maximum!.Value.IsNegative ? input.Minimum!.Value : input.Maximum!.Value));
}
