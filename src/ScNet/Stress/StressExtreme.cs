using System.Globalization;
using Fractions;

namespace ScNet.Stress;

/// <summary>One extreme voltage across an element, and where it occurs.</summary>
public sealed class StressExtreme
{
    internal StressExtreme(Fraction perVoltOfInput, Interval<double> inputVolts, Fraction exactMaximumInput, Mode mode, Mode? from, int? phase, VoltageBasis basis)
    {
        PerVoltOfInput = Quantity.Exact(perVoltOfInput);
        ExactVolts = perVoltOfInput * exactMaximumInput;
        Volts = ExactVolts.ToDouble();
        InputVoltageVolts = inputVolts.Maximum!.Value;
        Mode = mode;
        From = from;
        Phase = phase;
        Basis = basis;
    }

    /// <summary>The voltage per volt of input, first terminal minus second.</summary>
    public Quantity PerVoltOfInput { get; }

    /// <summary>The voltage in volts (V).</summary>
    public double Volts { get; }

    /// <summary>The input voltage in volts (V) at which it occurs: the maximum of the interval, as every voltage is in proportion to it.</summary>
    public double InputVoltageVolts { get; }

    /// <summary>The mode in which it occurs; at a change of mode, the new one.</summary>
    public Mode Mode { get; }

    /// <summary>At a change of mode, the old one; else null.</summary>
    public Mode? From { get; }

    /// <summary>The phase number from 1 in which it occurs; null for a capacitor, whose voltage is the same in all.</summary>
    public int? Phase { get; }

    /// <summary>What it rests on: <see cref="VoltageBasis.Fixed"/>, or a bound.</summary>
    public VoltageBasis Basis { get; }

    /// <summary>The voltage in volts, with the input voltage as the decimal written: what is compared.</summary>
    internal Fraction ExactVolts { get; }

    /// <summary>"2.4 V (2/3) at 3.6 V, mode 1/3, phase 2".</summary>
    public override string ToString()
    {
        string basis = Basis switch
        {
            VoltageBasis.Idle => ", idle",
            VoltageBasis.Floating => ", floating",
            VoltageBasis.Surge => ", surge",
            _ => string.Empty,
        };
        return string.Create(CultureInfo.InvariantCulture, $"{Volts:G6} V ({PerVoltOfInput}) at {InputVoltageVolts:G6} V, {StressPlace.Text(Mode, From, Phase)}{basis}");
    }
}
