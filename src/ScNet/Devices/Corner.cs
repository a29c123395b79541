namespace ScNet.Devices;

/// <summary>A corner of the process: factors on what its devices are typically. <see cref="Process.At"/> applies them.</summary>
/// <param name="Name">The name, for people.</param>
/// <param name="ResistanceFactor">Factor on every on-resistance, series resistance and wire, without a unit.</param>
/// <param name="CapacitanceFactor">Factor on every capacitance, without a unit: plates, gates and junctions included.</param>
/// <param name="ThresholdFactor">Factor on every threshold voltage, without a unit: the on-resistance follows by drive minus threshold.</param>
/// <exception cref="ArgumentOutOfRangeException">A factor is not positive.</exception>
public sealed record Corner(string Name, double ResistanceFactor = 1, double CapacitanceFactor = 1, double ThresholdFactor = 1)
{
    /// <summary>The name, for people.</summary>
    public string Name { get; init => field = Guard.Named(value, nameof(Name)); } = Guard.Named(Name, nameof(Name));

    /// <summary>Factor on every on-resistance, series resistance and wire, without a unit.</summary>
    public double ResistanceFactor { get; init => field = SwitchDevice.Positive(value, nameof(ResistanceFactor)); } = SwitchDevice.Positive(ResistanceFactor, nameof(ResistanceFactor));

    /// <summary>Factor on every capacitance, without a unit: plates, gates and junctions included.</summary>
    public double CapacitanceFactor { get; init => field = SwitchDevice.Positive(value, nameof(CapacitanceFactor)); } = SwitchDevice.Positive(CapacitanceFactor, nameof(CapacitanceFactor));

    /// <summary>Factor on every threshold voltage, without a unit: the on-resistance follows by drive minus threshold.</summary>
    public double ThresholdFactor { get; init => field = SwitchDevice.Positive(value, nameof(ThresholdFactor)); } = SwitchDevice.Positive(ThresholdFactor, nameof(ThresholdFactor));

    /// <summary>Everything as it is typically.</summary>
    public static Corner Typical { get; } = new("typical");

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}
