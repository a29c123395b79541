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

        Guard.InRange(inputVolts.Low, allowZero: false, parameterName);
        Guard.InRange(inputVolts.High, allowZero: false, parameterName);
        return inputVolts;
    }

    /// <summary>Both ends as the decimals written, so that a third of 3.6 V is 1.2 V and no more.</summary>
    public static Interval<Fraction> Exact(Interval<double> inputVolts) => new(ExactDecimal.Of(inputVolts.Low), ExactDecimal.Of(inputVolts.High));

    /// <summary>
    /// The voltages at which a mode of one interval can follow one of the other: those common to both, or
    /// those between them where none is.
    /// </summary>
    public static Interval<double> Between(Interval<double> left, Interval<double> right)
    {
        double a = Math.Max(left.Low, right.Low), b = Math.Min(left.High, right.High);
        return new(Math.Min(a, b), Math.Max(a, b));
    }

    /// <summary>All products of a voltage per volt of input with an input voltage.</summary>
    public static Interval<Fraction> Scale(Interval<Fraction> perVoltOfInput, Interval<Fraction> input) => !perVoltOfInput.IsDetermined
        ? default
        : new(
            perVoltOfInput.Low * (perVoltOfInput.Low.IsNegative ? input.High : input.Low),
            perVoltOfInput.High * (perVoltOfInput.High.IsNegative ? input.Low : input.High));
}
