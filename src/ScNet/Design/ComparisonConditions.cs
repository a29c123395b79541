using Fractions;

namespace ScNet.Design;

/// <summary>
/// The common ground on which converters are compared: the same input voltage, device rating, total
/// capacitance, total switch conductance and switching frequency for each.
/// </summary>
/// <remarks>
/// With the default totals and frequency, both limits read as pure numbers: 1 / (C f) and 1 / G are 1 Ω.
/// </remarks>
public sealed class ComparisonConditions
{
    /// <summary>Total capacitance where none is given: 1 µF.</summary>
    public const double DefaultTotalCapacitanceFarads = 1e-6;

    /// <summary>Total switch conductance where none is given: 1 S.</summary>
    public const double DefaultTotalConductanceSiemens = 1;

    /// <summary>Switching frequency where none is given: 1 MHz.</summary>
    public const double DefaultFrequencyHz = 1e6;

    /// <summary>Creates the conditions.</summary>
    /// <param name="inputVoltageVolts">Input voltage in volts (V).</param>
    /// <param name="deviceRatingVolts">The voltage in volts (V) that each switch and each capacitor withstands.</param>
    /// <param name="totalCapacitanceFarads">The sum of all capacitances in farads (F).</param>
    /// <param name="totalConductanceSiemens">The sum of all switches' on-conductances in siemens (S).</param>
    /// <param name="frequencyHz">Switching frequency in hertz (Hz), at which the slow-switching limit is given.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not positive, or not from 1e-60 to 1e60.</exception>
    public ComparisonConditions(
        double inputVoltageVolts,
        double deviceRatingVolts,
        double totalCapacitanceFarads = DefaultTotalCapacitanceFarads,
        double totalConductanceSiemens = DefaultTotalConductanceSiemens,
        double frequencyHz = DefaultFrequencyHz)
    {
        InputVoltageVolts = Positive(inputVoltageVolts, nameof(inputVoltageVolts));
        DeviceRatingVolts = Positive(deviceRatingVolts, nameof(deviceRatingVolts));
        TotalCapacitanceFarads = Positive(totalCapacitanceFarads, nameof(totalCapacitanceFarads));
        TotalConductanceSiemens = Positive(totalConductanceSiemens, nameof(totalConductanceSiemens));
        FrequencyHz = Positive(frequencyHz, nameof(frequencyHz));
        ExactInputVoltage = ExactDecimal.Of(inputVoltageVolts);
    }

    /// <summary>Input voltage in volts (V).</summary>
    public double InputVoltageVolts { get; }

    /// <summary>The voltage in volts (V) that each switch and each capacitor withstands.</summary>
    public double DeviceRatingVolts { get; }

    /// <summary>The sum of all capacitances in farads (F).</summary>
    public double TotalCapacitanceFarads { get; }

    /// <summary>The sum of all switches' on-conductances in siemens (S).</summary>
    public double TotalConductanceSiemens { get; }

    /// <summary>Switching frequency in hertz (Hz).</summary>
    public double FrequencyHz { get; }

    /// <summary>All conditions.</summary>
    public override string ToString() =>
        $"{UnitText.Of(InputVoltageVolts, "V")} input, {UnitText.Of(DeviceRatingVolts, "V")} rating, {UnitText.Of(TotalCapacitanceFarads, "F")} of capacitance, {UnitText.Of(TotalConductanceSiemens, "S")} of switch conductance, {UnitText.Of(FrequencyHz, "Hz")}";

    /// <summary>The input voltage as the decimal written, so that a third of 3.6 V is 1.2 V and does not exceed 1.2 V by rounding.</summary>
    internal Fraction ExactInputVoltage { get; }

    /// <summary>A voltage per volt of input in volts; null where it is undetermined.</summary>
    internal double? Volts(Quantity perVoltOfInput) =>
        perVoltOfInput.TryGetFraction(out Fraction exact) ? (exact * ExactInputVoltage).ToDouble()
        : perVoltOfInput.IsDetermined ? perVoltOfInput.ToDouble() * InputVoltageVolts
        : null;

    private static double Positive(double value, string parameterName) => Guard.IsInRange(value, allowZero: false)
        ? value
        : throw new ArgumentOutOfRangeException(parameterName, value, $"Expected a positive value from {Guard.MinimumValue} to {Guard.MaximumValue}.");
}
