namespace ScNet.Devices;

/// <summary>
/// The gate levels of a stack of devices in series: all on at one source potential, all off with the
/// blocked voltage shared equally.
/// </summary>
/// <remarks>
/// Off, each gate is held at its own source, which is an inner node of the stack for all but the outer
/// device: device k (from 0, counted from the source side) needs the source side's potential plus
/// (p-type: minus) k shares. On, every gate needs the source potential plus (p-type: minus) the drive
/// voltage. Three p-type devices of 1.8 V from a cell thus need rails 1.8 V and 3.6 V below it (common
/// practice, no source).
/// </remarks>
public sealed class StackGateLevels
{
    private const int MostDevices = 10_000;
    private const double SameLevel = 1e-9;

    private StackGateLevels(double onVolts, IReadOnlyList<double> offVolts, IReadOnlyList<double> rails)
    {
        OnVolts = onVolts;
        OffVolts = offVolts;
        RailsFromSourceVolts = rails;
    }

    /// <summary>The level of every gate while the stack is on, against the reference, in volts (V).</summary>
    public double OnVolts { get; }

    /// <summary>The level of each gate while it is off, in volts (V), the device at the source side first.</summary>
    public IReadOnlyList<double> OffVolts { get; }

    /// <summary>
    /// How far in volts (V) the levels lie from the outer source, the source's own level left out,
    /// ascending and each one once: below it for p-type devices, above it for n-type ones.
    /// </summary>
    public IReadOnlyList<double> RailsFromSourceVolts { get; }

    /// <summary>The levels of a stack.</summary>
    /// <param name="device">Its devices.</param>
    /// <param name="count">The devices in series, from 1 to 10,000.</param>
    /// <param name="sourceVolts">The potential in volts (V) of the outer source, on and off: the upper end of a p-type stack, the lower end of an n-type one.</param>
    /// <param name="blockedVolts">The voltage in volts (V) that the stack blocks while it is off, zero or positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public static StackGateLevels Of(SwitchDevice device, int count, double sourceVolts, double blockedVolts)
    {
        ArgumentNullException.ThrowIfNull(device);
        _ = Guard.Count(count, 1, MostDevices, nameof(count));
        Guard.InRange(Math.Abs(sourceVolts), allowZero: true, nameof(sourceVolts));
        Guard.InRange(blockedVolts, allowZero: true, nameof(blockedVolts));
        int sign = device.Polarity == DevicePolarity.NType ? 1 : -1;
        double[] off = [.. Enumerable.Range(0, count).Select(k => sourceVolts + (sign * k * blockedVolts / count))];
        double on = sourceVolts + (sign * device.GateDriveVolts);
        List<double> rails = [];
        foreach (double distance in off.Append(on).Select(v => Math.Abs(v - sourceVolts)).Order())
        {
            if (distance - (rails.Count > 0 ? rails[^1] : 0) > SameLevel * Math.Max(1, distance))
            {
                rails.Add(distance);
            }
        }

        return new StackGateLevels(on, [.. off], [.. rails]);
    }

    /// <summary>The levels on and off.</summary>
    public override string ToString() =>
        $"on {UnitText.Of(OnVolts, "V")}; off {string.Join(", ", OffVolts.Select(v => UnitText.Of(v, "V")))}";
}
