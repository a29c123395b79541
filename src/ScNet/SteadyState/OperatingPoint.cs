namespace ScNet.SteadyState;

/// <summary>The conditions under which a converter runs.</summary>
public sealed class OperatingPoint
{
    /// <summary>Creates an operating point.</summary>
    /// <param name="inputVoltageVolts">Input voltage in volts (V), positive.</param>
    /// <param name="loadCurrentAmperes">Average load current in amperes (A), zero or positive.</param>
    /// <param name="frequencyHz">Switching frequency in hertz (Hz), positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public OperatingPoint(double inputVoltageVolts, double loadCurrentAmperes, double frequencyHz)
    {
        InputVoltageVolts = Guard.InRange(inputVoltageVolts, allowZero: false, nameof(inputVoltageVolts));
        LoadCurrentAmperes = Guard.InRange(loadCurrentAmperes, allowZero: true, nameof(loadCurrentAmperes));
        FrequencyHz = Guard.InRange(frequencyHz, allowZero: false, nameof(frequencyHz));
    }

    /// <summary>Input voltage in volts (V).</summary>
    public double InputVoltageVolts { get; }

    /// <summary>Average load current in amperes (A).</summary>
    public double LoadCurrentAmperes { get; }

    /// <summary>Switching frequency, one period per cycle, in hertz (Hz).</summary>
    public double FrequencyHz { get; }
}
