using ScNet.Devices;

namespace ScNet.Design.Sizing;

/// <summary>What an element may be made of.</summary>
/// <typeparam name="T">The sort of device.</typeparam>
/// <param name="Device">The kind.</param>
/// <param name="Count">The devices in series.</param>
/// <param name="HeldVolts">The voltage at which a capacitor with a table against bias has its capacitance; null where there is none.</param>
internal readonly record struct ElementOption<T>(T Device, int Count, double? HeldVolts = null);

/// <summary>What follows of a kind and a stack.</summary>
internal static class ElementOption
{
    /// <summary>The capacitance per active area of each capacitor of a stack where it is held.</summary>
    public static double FaradsPerSquareMetre(this ElementOption<CapacitorDevice> option) =>
        option.HeldVolts is { } volts ? option.Device.FaradsPerSquareMetreAt(volts / option.Count) : option.Device.FaradsPerSquareMetre;
}
