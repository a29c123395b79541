namespace ScNet.Devices;

/// <summary>A corner of the process: factors on what its devices are typically.</summary>
/// <param name="Name">The name, for people.</param>
/// <param name="ResistanceFactor">Factor on every on-resistance and series resistance, without a unit.</param>
/// <param name="CapacitanceFactor">Factor on every capacitance, plates included, without a unit.</param>
/// <param name="ThresholdFactor">Factor on every threshold voltage, without a unit: the on-resistance follows by drive minus threshold.</param>
public sealed record Corner(string Name, double ResistanceFactor = 1, double CapacitanceFactor = 1, double ThresholdFactor = 1)
{
    /// <summary>Everything as it is typically.</summary>
    public static Corner Typical { get; } = new("typical");

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}
