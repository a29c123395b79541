namespace ScNet.SteadyState;

/// <summary>The conditions under which a converter runs.</summary>
public sealed class OperatingPoint
{
    /// <summary>Creates an operating point.</summary>
    /// <param name="inputVoltageVolts">Input voltage in volts (V), positive.</param>
    /// <param name="loadCurrentAmperes">
    /// Average current out of the output node in amperes (A): positive, zero, or negative for a load on a
    /// negative output voltage.
    /// </param>
    /// <param name="frequencyHz">Switching frequency in hertz (Hz), positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public OperatingPoint(double inputVoltageVolts, double loadCurrentAmperes, double frequencyHz)
    {
        InputVoltageVolts = Guard.InRange(inputVoltageVolts, allowZero: false, nameof(inputVoltageVolts));
        LoadCurrentAmperes = Guard.IsInRange(Math.Abs(loadCurrentAmperes), allowZero: true)
            ? loadCurrentAmperes
            : throw new ArgumentOutOfRangeException(
                nameof(loadCurrentAmperes), loadCurrentAmperes, $"Expected zero, or a value of either sign from {Guard.MinimumValue} to {Guard.MaximumValue}.");
        FrequencyHz = Guard.InRange(frequencyHz, allowZero: false, nameof(frequencyHz));
    }

    /// <summary>Input voltage in volts (V).</summary>
    public double InputVoltageVolts { get; }

    /// <summary>Average current out of the output node into the load in amperes (A).</summary>
    public double LoadCurrentAmperes { get; }

    /// <summary>Switching frequency, one period per cycle, in hertz (Hz).</summary>
    public double FrequencyHz { get; }

    /// <summary>The input voltage, the load current and the frequency.</summary>
    public override string ToString() => $"{UnitText.Of(InputVoltageVolts, "V")} input, {UnitText.Of(LoadCurrentAmperes, "A")} load, {UnitText.Of(FrequencyHz, "Hz")}";
}
